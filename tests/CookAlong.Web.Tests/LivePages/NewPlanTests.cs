using Bunit;
using CookAlong.Domain;
using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Live.Phone;
using CookAlong.Web.Features.Live.Tablet;
using CookAlong.Web.Features.Live.Wording;
using static CookAlong.Web.Tests.LivePages.SampleKitchen;

namespace CookAlong.Web.Tests.LivePages;

public sealed class NewPlanTests : BunitContext
{
    static readonly Words Words = new(SampleKitchen.Meal, People);

    [Fact]
    public void The_tablet_says_whose_next_step_changed_and_how() =>
        Assert.Equal(
            ["Maren instead of Ivo: “Peel the celeriac” now at 13:30 (was 13:35)", "Maren: “Potatoes and squash into the oven” now at 13:34 (was 13:31)"],
            Lines(Render<BoardPart>(parts => parts.Add(part => part.View, View(Taken)))));

    [Fact]
    public void A_phone_says_its_own_first() =>
        Assert.Equal(
            ["Not yours any more: “Peel the celeriac”; Maren will do it", "Maren: “Potatoes and squash into the oven” now at 13:34 (was 13:31)"],
            Lines(Phone(Ivo)));

    [Fact]
    public void The_next_step_is_called_so() =>
        Assert.Equal(
            ["New for you: “Peel the celeriac” now at 13:30 (was 13:35)", "Your next step: “Potatoes and squash into the oven” now at 13:34 (was 13:31)"],
            Lines(Phone(Maren)));

    [Fact]
    public void Who_is_not_touched_is_told_so_and_a_child_nothing_else() =>
        Assert.Equal(["Nothing changes for you."], Lines(Phone(Tobi)));

    [Fact]
    public void A_host_without_hands_in_the_plan_reads_of_everybody() =>
        Assert.Equal(3, Lines(Phone(null)).Count());

    [Fact]
    public void A_plan_that_changes_nobodys_next_step_says_so() =>
        Assert.Equal(["Nobody’s next step changes."], Lines(Render<BoardPart>(parts => parts.Add(part => part.View, View(Taken with { Taken = new PlanTaken(At(13, 23), []) })))));

    [Fact]
    public void Without_news_there_is_no_banner() => Assert.Empty(Render<BoardPart>(parts => parts.Add(part => part.View, View(Busy))).FindAll("#taken"));

    [Fact]
    public void A_plan_that_is_still_late_says_so_and_one_that_is_not_says_nothing()
    {
        var late = Taken with { Courses = Crowded.Courses };
        Assert.Contains("Main course at 15:06 instead of 15:00", News(late), StringComparison.Ordinal);
        Assert.DoesNotContain("instead of 15:00", News(Taken), StringComparison.Ordinal);

        string News(Board board) => Render<BoardPart>(parts => parts.Add(part => part.View, View(board))).Find("#taken").TextContent;
    }

    [Fact]
    public void A_step_that_only_changes_hands_keeps_its_time() =>
        Assert.Equal("New for you: “Peel the celeriac” at 13:35, as before", Words.Taken(Offer.Changes[0] with { Becomes = Min(13, 35) }, Maren, isNext: false));

    IRenderedComponent<MePart> Phone(HelperId? me) => Render<MePart>(parts => parts.Add(part => part.View, View(Taken, me, me is null ? Role.Host : Role.Helper)));

    static IEnumerable<string> Lines<T>(IRenderedComponent<T> part)
        where T : Microsoft.AspNetCore.Components.IComponent => part.FindAll("[aria-label='New plan taken'] li").Select(line => line.TextContent.Trim());
}
