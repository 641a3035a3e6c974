using Bunit;
using CookAlong.Domain;
using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Live.Line;
using CookAlong.Web.Features.Live.Phone;
using CookAlong.Web.Features.Live.Tablet;
using static CookAlong.Web.Tests.LivePages.SampleKitchen;

namespace CookAlong.Web.Tests.LivePages;

/// <summary>Whose a job is and for how long, as their phone and the tablet say it.</summary>
public sealed class HeldTests : BunitContext
{
    [Fact]
    public void Whoever_took_a_job_reads_until_when_it_is_theirs_and_can_keep_it()
    {
        var held = Phone(Held, Maren).Find(".held");
        Assert.StartsWith("Yours until 13:27, unless you start: 3:00", Text(held), StringComparison.Ordinal);
        Assert.Equal(/*lang=json*/ """{"kind":"keepStep","step":"celeriac-peel"}""", held.QuerySelector("button")!.GetAttribute("data-tap"));
    }

    [Fact]
    public void The_tablet_says_whose_it_is_for_how_long() =>
        Assert.StartsWith("Stays with Maren until 13:27", Text(Tablet(Held).Find(".held")), StringComparison.Ordinal);

    [Fact]
    public void A_planned_job_has_no_end_while_the_phone_is_heard_of()
    {
        var board = Held with { Now = [Held.Now[0] with { IsClaimed = false }] };
        Assert.Empty(Phone(board, Maren).FindAll(".held"));
        Assert.NotEmpty(Phone(board, Maren, Silent).FindAll(".held"));
    }

    [Fact]
    public void A_helper_hands_a_job_to_those_who_are_here_and_may_have_it()
    {
        var part = Phone(Held, Maren);
        Assert.Equal(["To Ivo"], part.FindAll(".hand-over button").Select(Text));
        Assert.Equal(/*lang=json*/ """{"kind":"giveStep","step":"celeriac-peel","to":"ivo"}""", part.Find(".hand-over button").GetAttribute("data-tap"));
    }

    [Fact]
    public void The_host_takes_over_what_somebody_else_has()
    {
        var menu = Tablet(Held, Ivo).Find("#card-celeriac-peel .more");
        Assert.Equal(/*lang=json*/ """{"kind":"takeOver","step":"celeriac-peel"}""", menu.QuerySelectorAll("button").Single(button => button.TextContent == "Take it over").GetAttribute("data-tap"));
        Assert.DoesNotContain("Take it over", Tablet(Held, Maren).Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void A_child_reads_kind_words_and_nothing_late()
    {
        var page = Phone(ChildDue, Tobi);
        var job = page.Find("article.job");
        Assert.Contains("Your turn! Begin when you are ready.", job.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("late", page.Markup, StringComparison.OrdinalIgnoreCase);
        Assert.Empty(job.QuerySelectorAll(".count"));
        Assert.DoesNotContain("call", job.ClassList);
        Assert.Equal("Well done: one job finished!", page.Find(".praise").TextContent);
    }

    [Fact]
    public void A_child_s_time_that_runs_over_is_not_counted()
    {
        var over = ChildDue with { Now = [SampleKitchen.Card(Dumplings, CardState.Over, At(13, 0), At(13, 15), [Tobi])] };
        var job = Phone(over, Tobi).Find("article.job");
        Assert.Contains("Take the time it needs.", job.TextContent, StringComparison.Ordinal);
        Assert.Empty(job.QuerySelectorAll(".count"));
        Assert.DoesNotContain("over", job.ClassList);
    }

    [Fact]
    public void The_board_says_what_of_the_tending_was_late_or_left_out()
    {
        var rail = Tablet(Untended).Find("aside").TextContent;
        Assert.Contains("Turn the tin round: skipped", rail, StringComparison.Ordinal);
        Assert.Contains("Turn the tin round: 12 min late", rail, StringComparison.Ordinal);
    }

    /// <summary>Nothing is heard of anybody since ten past.</summary>
    static ScreensHere Silent { get; } = new([], _ => At(13, 10));

    static string Text(AngleSharp.Dom.IElement element) => string.Join(' ', element.TextContent.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    IRenderedComponent<MePart> Phone(Board board, HelperId me, ScreensHere? screens = null) =>
        Render<MePart>(parts => parts.Add(part => part.View, View(board, me, Role.Helper, screens: screens ?? Heard)));

    IRenderedComponent<BoardPart> Tablet(Board board, HelperId? me = null) => Render<BoardPart>(parts => parts.Add(part => part.View, View(board, me, screens: Heard)));

    static ScreensHere Heard { get; } = new([], _ => At(13, 23));
}
