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
    public void A_meal_that_is_over_promises_no_table_time_any_more() =>
        Assert.DoesNotContain("Main course", Show(Over, Maren).Find("header").TextContent, StringComparison.Ordinal);

    [Fact]
    public void Once_everything_is_done_a_phone_says_so_and_the_host_ends_the_meal()
    {
        var host = Render<MePart>(parts => parts.Add(part => part.View, View(AllDone, Maren)));

        Assert.Empty(host.FindAll(".room"));
        Assert.Equal("Everything is done", host.Find(".moment h2").TextContent);
        Assert.Equal(/*lang=json*/ """{"kind":"endRun"}""", Button(host, ".moment", "End the meal").GetAttribute("data-tap"));
        Assert.Empty(Show(AllDone, Ivo).FindAll(".moment button"));
    }

    [Fact]
    public void What_is_done_before_the_table_waits_for_it_whatever_the_oven_is_to_do_first() =>
        Assert.Equal(
            "It waits for the table, at 16:10.",
            Show(
                AllDone with
                {
                    At = At(15, 50),
                    Calls =
                    [
                        Call("dial:oven:1600", At(16, 0), CallKind.Dial, CallPriority.Medium, dial: new(Min(16, 0), 0)),
                        Call("table:pudding", At(16, 10), CallKind.Table, CallPriority.Low, course: new("pudding")),
                    ],
                },
                Maren).Find(".moment p").TextContent);

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

    [Fact]
    public void What_nobody_need_stand_by_is_to_be_started_not_taken()
    {
        var part = Show(Busy with { Now = [SampleKitchen.Card(Stock, CardState.Due, At(13, 24), At(14, 24), isFree: true)], Next = [SampleKitchen.Card(Pudding, CardState.Waiting, At(13, 40), At(16, 10), isFree: true)] }, Maren);

        Assert.Equal(/*lang=json*/ """{"kind":"startStep","step":"gravy-stock"}""", Button(part, "main", "Start: Simmer the giblet stock").GetAttribute("data-tap"));
        Assert.Contains("13:40", Section(part, "For whoever is near").TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("I’ll take it", part.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void What_cooks_by_itself_and_what_starts_later_than_soon_is_nobodys_yet()
    {
        var part = Show(Busy with { Now = [SampleKitchen.Card(Stock, CardState.Running, At(13, 0), At(14, 0), isFree: true)], Next = [SampleKitchen.Card(Pudding, CardState.Waiting, At(13, 50), At(16, 10), isFree: true)] }, Maren);

        Assert.DoesNotContain("Simmer", part.Find("main").TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("Steam the pudding", part.Find("main").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_hot_tray_that_is_nobodys_calls_whoever_is_near() =>
        Assert.Equal(
            /*lang=json*/ """{"kind":"acknowledge","call":"out:goose-roast"}""",
            Show(Busy with { Now = [SampleKitchen.Card(RoastGoose, CardState.Over, At(10, 54), At(13, 24), isFree: true, call: GooseOut)] }, Maren).Find("article.call button").GetAttribute("data-tap"));

    [Fact]
    public void Work_of_somebody_who_has_not_joined_is_free_and_says_whose_it_was()
    {
        var board = Busy with { Next = [SampleKitchen.Card(Peel, CardState.Waiting, At(13, 35), At(13, 47), [Ivo], isFree: true)] };

        Assert.Contains("planned for Ivo, who has not joined", Section(Show(board, Maren), "Free to take").TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("Peel", Show(board, Tobi).Find("main").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void What_somebody_without_a_screen_is_doing_is_not_offered() =>
        Assert.DoesNotContain("Peel", Show(Busy with { Now = [SampleKitchen.Card(Peel, CardState.Running, At(13, 20), At(13, 32), [Ivo], isFree: true)] }, Maren).Find("main").TextContent, StringComparison.Ordinal);

    [Fact]
    public void At_most_six_are_shown_the_soonest_first_and_the_rest_behind_a_word()
    {
        var part = Show(Busy with { Next = [.. Enumerable.Range(1, 9).Reverse().Select(minute => Free(minute, At(13, 24 + minute)))] }, Maren);

        Assert.Equal(["Job 1", "Job 2", "Job 3", "Job 4", "Job 5", "Job 6"], Lines(part, "section > ul"));
        Assert.Equal(["Job 7", "Job 8", "Job 9"], Lines(part, ".later"));
        Assert.Equal("3 more, later", part.Find(".later summary").TextContent);
    }

    [Fact]
    public void When_nothing_is_soon_two_are_shown()
    {
        var part = Show(Busy with { Next = [.. Enumerable.Range(1, 4).Select(hour => Free(hour, At(13 + hour, 0)))] }, Maren);

        Assert.Equal(["Job 1", "Job 2"], Lines(part, "section > ul"));
    }

    static BoardCard Free(int number, DateTimeOffset starts) =>
        SampleKitchen.Card(Mash with { Text = $"Job {number}" }, CardState.Waiting, starts, starts.AddMinutes(10), isFree: true);

    static AngleSharp.Dom.IElement Section(IRenderedComponent<MePart> part, string heading) =>
        part.FindAll("section.jobs").Single(section => section.QuerySelector("h2")!.TextContent == heading);

    static IEnumerable<string> Lines(IRenderedComponent<MePart> part, string within) =>
        part.FindAll($"{within} .what").Select(what => what.FirstChild!.TextContent.Trim()).Where(text => text.StartsWith("Job", StringComparison.Ordinal));

    IRenderedComponent<MePart> Show(Board board, HelperId me) =>
        Render<MePart>(parts => parts.Add(part => part.View, View(board, me, Role.Helper)));

    static AngleSharp.Dom.IElement Button(IRenderedComponent<MePart> part, string within, string name) =>
        part.FindAll($"{within} button").Single(button => button.TextContent.Trim() == name);
}
