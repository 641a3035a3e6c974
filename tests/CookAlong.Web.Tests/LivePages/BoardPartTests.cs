using Bunit;
using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Live;
using CookAlong.Web.Features.Live.Tablet;
using static CookAlong.Web.Tests.LivePages.SampleKitchen;

namespace CookAlong.Web.Tests.LivePages;

public sealed class BoardPartTests : BunitContext
{
    [Fact]
    public void A_pause_that_costs_table_time_says_how_much()
    {
        var page = Render<BoardPart>(with => with.Add(part => part.View, View(Crowded with { Pause = Paused.Pause })));
        Assert.Contains("Pause here", page.Find("#pause").TextContent, StringComparison.Ordinal);
        Assert.Equal("6 min late", page.Find("#slip h2").TextContent);
    }

    [Fact]
    public void Once_everything_is_done_nobody_is_told_how_little_time_there_is()
    {
        var page = Show(AllDone);

        Assert.Empty(page.FindAll(".room"));
        Assert.Empty(page.FindAll(".brake"));
        Assert.Contains("Everything is done", page.Find(".moment").TextContent, StringComparison.Ordinal);
        Assert.Equal(/*lang=json*/ """{"kind":"endRun"}""", Button(page.Find(".moment"), "End the meal").GetAttribute("data-tap"));
        Assert.Empty(page.FindAll(".end-early"));
    }

    [Fact]
    public void What_is_done_before_the_table_waits_for_it_and_takes_two_taps_to_end()
    {
        var page = Show(AllDone with { At = At(15, 50), Calls = [Call("table:pudding", At(16, 10), CallKind.Table, CallPriority.Low, course: new("pudding"))] });

        Assert.Empty(page.FindAll(".room"));
        Assert.Contains("16:10", page.Find(".moment").TextContent, StringComparison.Ordinal);
        Assert.Empty(page.FindAll(".moment button"));
        Assert.NotEmpty(page.FindAll(".end-early"));
    }

    [Fact]
    public void The_clock_and_every_table_time_stand_at_the_top()
    {
        var bar = Show(Busy).Find("header").TextContent;

        Assert.Contains("13:24", bar, StringComparison.Ordinal);
        Assert.Contains("15:00", bar, StringComparison.Ordinal);
        Assert.Contains("16:10", bar, StringComparison.Ordinal);
        Assert.Contains("9 min", bar, StringComparison.Ordinal);
    }

    [Fact]
    public void On_the_evening_before_the_hours_of_the_day_itself_are_said_with_their_day()
    {
        var page = Show(Calm with { At = At(16, 30).AddDays(-1) });

        Assert.Contains("Sun 15:00", page.Find("header").TextContent, StringComparison.Ordinal);
        Assert.Contains("here from Sun 13:30", page.Find(".people").TextContent, StringComparison.Ordinal);
        Assert.Contains("Sun 13:31", page.Find(".rail .next").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_job_shows_who_what_how_and_what_can_hurt()
    {
        var card = Card(Show(Busy), "Rough up the boiled potatoes");

        Assert.Contains("Maren", card.TextContent, StringComparison.Ordinal);
        Assert.Contains("Toss them in the colander", card.TextContent, StringComparison.Ordinal);
        Assert.Contains("smoking hot", card.TextContent, StringComparison.Ordinal);
        Assert.Contains("2:40", card.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void The_done_button_carries_the_command_for_its_step() =>
        Assert.Equal(/*lang=json*/ """{"kind":"finishStep","step":"potatoes-rough"}""", Button(Card(Show(Busy), "Rough up the boiled potatoes"), "Done").GetAttribute("data-tap"));

    [Fact]
    public void A_call_is_answered_first_and_finished_after()
    {
        var card = Card(Show(Busy), "Goose out, then cover it with foil");

        Assert.Contains("Urgent: tray out", card.TextContent, StringComparison.Ordinal);
        Assert.Contains("75\u00A0°C in the thickest", card.TextContent, StringComparison.Ordinal);
        Assert.Equal(/*lang=json*/ """{"kind":"acknowledge","call":"out:goose-roast"}""", Button(card, "I have it").GetAttribute("data-tap"));
    }

    [Fact]
    public void Beginning_answers_a_call_to_begin()
    {
        var call = Call("begin:celeriac-peel", At(13, 24), CallKind.Begin, CallPriority.Low, Peel.Id);
        var card = Card(Show(Busy with { Now = [SampleKitchen.Card(Peel, CardState.Due, At(13, 24), At(13, 36), [Maren], call: call)] }), "Peel the celeriac");

        Assert.Equal(/*lang=json*/ """{"kind":"startStep","step":"celeriac-peel"}""", Button(card, "Start").GetAttribute("data-tap"));
        Assert.DoesNotContain(card.QuerySelectorAll("button"), button => button.TextContent == "I have it");
    }

    [Fact]
    public void Ending_early_says_what_it_means_before_it_is_done()
    {
        var end = Show(Busy).Find("#end-early");

        Assert.Contains("jobs are not done", end.TextContent, StringComparison.Ordinal);
        Assert.Contains("Still on the heat: Goose (in the oven), Nut roast (in the oven), Gravy (on a ring) and Steamed pudding (on a ring)", end.TextContent, StringComparison.Ordinal);
        Assert.Contains("can be started again", end.TextContent, StringComparison.Ordinal);
        Assert.Equal(/*lang=json*/ """{"kind":"endRun"}""", Button(end, "End the meal now").GetAttribute("data-tap"));
    }

    [Fact]
    public void Only_a_host_can_end_early() =>
        Assert.Empty(Render<BoardPart>(parts => parts.Add(part => part.View, View(Busy, Ivo, Role.Helper))).FindAll("#end-early"));

    [Fact]
    public void A_meal_that_ended_early_says_what_was_left_on_the_heat_and_promises_no_table_time()
    {
        var over = Show(Over).Find("main").TextContent;

        Assert.Contains("Still on the heat when it ended: Goose (in the oven)", over, StringComparison.Ordinal);
        Assert.Contains("not finished", over, StringComparison.Ordinal);
        Assert.DoesNotContain("as promised", over, StringComparison.Ordinal);
    }

    [Fact]
    public void What_merely_cooks_is_seen_in_the_oven_and_on_its_ring_and_not_among_the_jobs()
    {
        var part = Show(Calm);

        Assert.Contains("Nothing due until 13:29", part.Find("[aria-label=Now]").TextContent, StringComparison.Ordinal);
        Assert.Contains("Nut roast", part.Find("[aria-label=Oven]").TextContent, StringComparison.Ordinal);
        Assert.Contains("Gravy", part.Find("[aria-label='Rings and grill']").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void The_oven_shows_each_shelf_its_heat_and_what_goes_in_next()
    {
        var oven = Show(Busy).Find("[aria-label=Oven]");

        Assert.Contains("180°", oven.TextContent, StringComparison.Ordinal);
        Assert.Contains("then 200° at 13:29", oven.TextContent, StringComparison.Ordinal);
        Assert.Equal(3, oven.QuerySelectorAll("ol > li").Length);
        Assert.Matches(@"goes in at\s+13:31", oven.TextContent);
    }

    [Fact]
    public void A_tall_thing_on_two_shelves_is_one_tray()
    {
        var oven = Busy.Ovens[0];
        var part = Show(Busy with { Ovens = [oven with { Shelves = [oven.Shelves[0], oven.Shelves[0], null] }] });

        Assert.Equal(2, part.FindAll("[aria-label=Oven] ol > li").Count);
    }

    [Fact]
    public void Turning_the_dial_is_among_what_comes_next() =>
        Assert.Contains("Turn the oven to 200", Show(Busy).Find("aside").TextContent, StringComparison.Ordinal);

    [Fact]
    public void A_dial_whose_time_has_come_is_a_card() =>
        Assert.Contains("Turn the oven to 200", Show(Crowded).Find("[aria-label=Now]").TextContent, StringComparison.Ordinal);

    [Fact]
    public void A_late_helper_is_shown_apart_with_the_hour_they_come() =>
        Assert.Matches(@"Ivo,?\s+here from 13:30", Show(Busy).Find("[aria-label=People]").TextContent);

    [Fact]
    public void A_slip_says_its_cost_and_the_host_can_take_the_new_plan()
    {
        var slip = Show(Crowded, Offer).Find("[aria-label='Table time slips']");

        Assert.Contains("Main course at 15:06 instead of 15:00", slip.TextContent, StringComparison.Ordinal);
        Assert.Contains("Maren instead of Ivo", slip.TextContent, StringComparison.Ordinal);
        Assert.Contains(Offer.Id.ToString(), Button(slip, "Take the new plan").GetAttribute("data-tap"), StringComparison.Ordinal);
    }

    [Fact]
    public void While_everyone_waits_the_brake_gives_way_to_going_on()
    {
        var part = Show(Paused);

        Assert.NotNull(Button(part.Find("[aria-label=Pause]"), "Go on"));
        Assert.DoesNotContain("Hold everything", part.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void Done_steps_stay_and_can_be_taken_back() =>
        Assert.Equal(/*lang=json*/ """{"kind":"takeBack","step":"potatoes-boil"}""", Button(Show(Busy).Find("#done"), "Take back: Boil the potatoes").GetAttribute("data-tap"));

    [Fact]
    public void A_watcher_sees_everything_and_can_touch_nothing() =>
        Assert.Empty(Render<BoardPart>(parts => parts.Add(part => part.View, View(Busy, role: Role.Watcher))).FindAll("[data-tap]"));

    [Fact]
    public void When_the_meal_is_over_nothing_can_be_changed()
    {
        var part = Show(Over);

        Assert.Contains("is over", part.Find("h1").TextContent, StringComparison.Ordinal);
        Assert.Empty(part.FindAll("[data-tap]"));
    }

    IRenderedComponent<BoardPart> Show(Board board, OfferedPlan? offer = null) =>
        Render<BoardPart>(parts => parts.Add(part => part.View, View(board, offer: offer)));

    static AngleSharp.Dom.IElement Card(IRenderedComponent<BoardPart> part, string headline) =>
        part.FindAll("article").Single(card => card.QuerySelector("h3")!.TextContent == headline);

    static AngleSharp.Dom.IElement Button(AngleSharp.Dom.IElement within, string name) =>
        within.QuerySelectorAll("button").Single(button => button.TextContent.Trim() == name);
}
