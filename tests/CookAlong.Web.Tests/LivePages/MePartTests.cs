using Bunit;
using CookAlong.Domain;
using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Live.Phone;
using static CookAlong.Web.Tests.LivePages.SampleKitchen;

namespace CookAlong.Web.Tests.LivePages;

public sealed class MePartTests : BunitContext
{
    [Fact]
    public void The_own_job_comes_first_and_its_done_button_lies_under_the_thumb()
    {
        var part = Show(Busy, Maren);

        Assert.Equal("Rough up the boiled potatoes", part.Find("article.job h2").TextContent);
        Assert.Equal(/*lang=json*/ """{"kind":"finishStep","step":"potatoes-rough"}""", Button(part, "nav", "Done").GetAttribute("data-tap"));
        Assert.Equal(/*lang=json*/ """{"kind":"addTime","step":"potatoes-rough","minutes":5}""", Button(part, "nav", "+ 5 min").GetAttribute("data-tap"));
    }

    [Fact]
    public void A_call_for_whoever_is_near_stands_above_and_leaves_the_own_job_in_place()
    {
        var part = Show(Busy, Maren);

        Assert.Contains("Goose out, then cover it with foil", part.Find("article").TextContent, StringComparison.Ordinal);
        Assert.Equal("Done", part.Find("nav button.main").TextContent);
    }

    [Fact]
    public void What_is_free_can_be_taken() =>
        Assert.Equal(/*lang=json*/ """{"kind":"claimStep","step":"celeriac-slice"}""", Button(Show(Busy, Maren), "main", "I’ll take it: Slice the celeriac thinly for the gratin").GetAttribute("data-tap"));

    [Fact]
    public void A_host_the_plan_does_not_know_may_take_what_is_free() =>
        Assert.NotNull(Button(Render<MePart>(parts => parts.Add(part => part.View, View(Busy))), "main", "I’ll take it: Slice the celeriac thinly for the gratin"));

    [Fact]
    public void A_child_is_offered_only_child_safe_jobs_and_no_urgent_call()
    {
        var part = Show(Busy, Tobi);

        Assert.Contains("Wash the kale", part.Markup, StringComparison.Ordinal);
        Assert.DoesNotContain("Slice the celeriac", part.Markup, StringComparison.Ordinal);
        Assert.DoesNotContain("Urgent", part.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void Other_peoples_jobs_are_named_to_the_script_so_that_they_do_not_ring_here()
    {
        Assert.Equal("dumplings-roll celeriac-peel table-set", Show(Busy, Maren).Find("#part").GetAttribute("data-others"));
        Assert.Contains("goose-roast", Show(Busy, Tobi).Find("#part").GetAttribute("data-others"), StringComparison.Ordinal);
    }

    [Fact]
    public void Somebody_who_comes_later_is_told_when_they_are_expected() =>
        Assert.Contains("until you are here, at 13:30", Show(Calm, Ivo).Find("main").TextContent, StringComparison.Ordinal);

    [Fact]
    public void With_nothing_in_hand_the_next_job_can_be_started_early() =>
        Assert.Equal(/*lang=json*/ """{"kind":"startStep","step":"potatoes-roast"}""", Button(Show(Calm, Maren), "main", "Start “Potatoes and squash into the oven” early").GetAttribute("data-tap"));

    [Fact]
    public void Own_finished_steps_can_be_taken_back() =>
        Assert.NotNull(Button(Show(Busy, Maren), "main", "Take back: Boil the potatoes"));

    IRenderedComponent<MePart> Show(Board board, HelperId me) =>
        Render<MePart>(parts => parts.Add(part => part.View, View(board, me, Role.Helper)));

    static AngleSharp.Dom.IElement Button(IRenderedComponent<MePart> part, string within, string name) =>
        part.FindAll($"{within} button").Single(button => button.TextContent.Trim() == name);
}
