using Microsoft.Playwright;

namespace CookAlong.BrowserTests;

/// <summary>The script that every device rings by, with the clock in the test's hand and no server asked.</summary>
[Collection(Browsers.Name)]
public sealed class CallsScriptTests(Household house) : IClassFixture<Household>
{
    /// <summary>A schedule of one device: what it plays and shows is kept, and "at" moves the server's clock.</summary>
    const string Device =
        """
        const { schedule } = await import("/js/calls.js");
        const { forget, sample } = await import("/js/clock.js");
        const heard = [];
        let shown = [];
        const calls = schedule({
          concerns: (call) => call.step !== "other",
          joinsIn: () => joins,
          sound: (priority, texts) => heard.push(`${priority}: ${texts.join(" + ")}`),
          show: (ringing) => { shown = ringing.map((call) => `${call.callId}${call.unanswered ? " unanswered" : ""}${call.quiet ? " quiet" : ""}`); },
          came: () => {},
        });
        const call = (callId, due, more = {}) => ({
          callId, dueUtc: due, kind: "out", priority: "high", text: callId, step: null, everybodyUtc: due + 30_000, acknowledged: false, ...more,
        });
        // With nothing else known, this is the server's time from here on.
        const at = (ms) => { const here = Date.now(); forget(); sample(here, ms, here); calls.tick(); };
        at(900_000);
        """;

    [Fact]
    public async Task Calls_due_within_five_seconds_are_one_ringing() =>
        Assert.Equal(["high: a + b"], await HeardAsync("""
            calls.set([call("a", 1_000_000, { priority: "medium" }), call("b", 1_004_000)]);
            at(1_004_500);
            """));

    [Fact]
    public async Task An_unanswered_call_of_another_rings_here_after_half_a_minute_and_sounds_again() =>
        Assert.Equal(["high: a", "high: a"], await HeardAsync("""
            calls.set([call("a", 1_000_000, { step: "other" })]);
            at(1_000_000); at(1_029_000); at(1_030_500); at(1_035_000); at(1_041_000);
            """));

    [Theory]
    [InlineData("high")]
    [InlineData("medium")]
    public async Task What_came_while_the_page_was_open_rings_until_somebody_answers(string priority) =>
        Assert.Equal(["a unanswered"], await HeardAsync($$"""
            calls.set([call("a", 1_000_000, { priority: "{{priority}}" })]);
            at(1_000_000); at(1_000_000 + 3 * 3_600_000);
            heard.splice(0, heard.length, ...shown);
            """));

    [Fact]
    public async Task Of_what_was_old_when_the_page_was_opened_only_the_urgent_rings() =>
        Assert.Equal(["urgent unanswered", "new"], await HeardAsync("""
            at(1_000_000 + 11 * 60_000);
            calls.set([call("urgent", 1_000_000), call("due", 1_000_000, { priority: "medium" })]);
            calls.set([call("urgent", 1_000_000), call("due", 1_000_000, { priority: "medium" }), call("new", 1_000_000 + 11 * 60_000, { priority: "medium" })]);
            heard.splice(0, heard.length, ...shown);
            """));

    [Fact]
    public async Task Information_for_others_never_rings_here() =>
        Assert.Empty(await HeardAsync("""
            calls.set([call("a", 1_000_000, { step: "other", priority: "low", everybodyUtc: null })]);
            at(1_000_000); at(1_500_000);
            """));

    [Fact]
    public async Task A_child_s_phone_joins_in_with_nothing_that_is_not_its_own() =>
        Assert.Empty(await HeardAsync("""
            calls.set([call("a", 1_000_000, { step: "other" })]);
            at(1_060_000);
            """, joinsIn: false));

    [Fact]
    public async Task Quiet_here_is_no_answer_and_the_call_comes_back_when_it_reaches_everybody() =>
        Assert.Equal(["high: a", "high: a"], await HeardAsync("""
            calls.set([call("a", 1_000_000)]);
            at(1_000_000);
            calls.quiet();
            at(1_015_000); at(1_025_000); at(1_030_500);
            """));

    [Fact]
    public async Task What_is_quiet_is_still_shown() =>
        Assert.Equal(["a quiet"], await HeardAsync("""
            calls.set([call("a", 1_000_000)]);
            at(1_000_000);
            calls.quiet();
            heard.splice(0, heard.length, ...shown);
            """));

    [Fact]
    public async Task An_acknowledged_call_is_neither_heard_nor_shown() =>
        Assert.Equal(["high: a"], await HeardAsync("""
            calls.set([call("a", 1_000_000)]);
            at(1_000_000);
            calls.silence("a");
            at(1_100_000);
            heard.push(...shown);
            """));

    [Fact]
    public async Task A_call_whose_answer_is_taken_back_rings_anew() =>
        Assert.Equal(["high: a", "high: a"], await HeardAsync("""
            calls.set([call("a", 1_000_000)]);
            at(1_000_000);
            calls.silence("a");
            calls.set([]);
            at(1_020_000);
            calls.set([call("a", 1_000_000)]);
            """));

    [Fact]
    public async Task What_was_answered_before_its_time_and_taken_back_rings_at_its_time() =>
        Assert.Equal(["high: a"], await HeardAsync("""
            calls.set([call("a", 1_000_000)]);
            calls.silence("a");
            calls.set([call("a", 1_000_000, { acknowledged: true })]);
            at(1_000_000);
            calls.set([call("a", 1_000_000)]);
            """));

    [Fact]
    public async Task A_new_schedule_that_does_not_know_of_the_answer_yet_keeps_it() =>
        Assert.Equal(["high: a"], await HeardAsync("""
            calls.set([call("a", 1_000_000)]);
            at(1_000_000);
            calls.silence("a");
            calls.set([call("a", 1_000_000)]);
            at(1_050_000);
            """));

    async Task<string[]> HeardAsync(string script, bool joinsIn = true)
    {
        await using var screen = await house.OpenAsync("script", ScreenSize.Phone);
        await screen.GoToAsync("/sign-in");
        return await screen.Page.EvaluateAsync<string[]>($"async (joins) => {{ {Device}\n{script}\nreturn heard; }}", joinsIn);
    }
}
