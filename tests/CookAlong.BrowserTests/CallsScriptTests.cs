using Microsoft.Playwright;

namespace CookAlong.BrowserTests;

/// <summary>The script that every device rings by, with the clock in the test's hand and no server asked.</summary>
[Collection(Browsers.Name)]
public sealed class CallsScriptTests(Household house) : IClassFixture<Household>
{
    /// <summary>A schedule of one device: what it plays and shows is kept, and "at" sets the server's clock.</summary>
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
        // The device's own clock stands still, so that this is the server's time until the next.
        const here = Date.now();
        Date.now = () => here;
        const at = (ms) => { forget(); sample(here, ms, here); calls.tick(); };
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

    // A kitchen of 24 hours: a device that sleeps, schedules that come again, early or late, people who answer here or elsewhere.
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public async Task In_a_day_of_trouble_each_call_rings_once_and_none_is_missed(int seed) =>
        Assert.Equal(["900 rang", "0 sounded twice", "0 rang early", "0 rang after they were answered"], await HeardAsync($$"""
            let state = Math.imul({{seed}}, 2654435761) >>> 0;
            const chance = () => (state = (Math.imul(state, 1664525) + 1013904223) >>> 0) / 2 ** 32;
            const day = 86_400_000, from = 1_000_000, all = [];
            for (let i = 0; i < 900; i++) {
              // Every tenth comes close after the one before and joins it.
              const due = i % 10 === 9 ? all[i - 1].dueUtc + 2_000 : Math.round(from + i * (day / 900) + chance() * 30_000);
              const priority = ["high", "medium", "low"][i % 3];
              all.push(call(`call-${i}`, due, { priority, everybodyUtc: priority === "low" ? null : due + 30_000 }));
            }
            const dueOf = new Map(all.map((one) => [one.callId, one.dueUtc])), answers = new Map(), answered = new Map();
            const rang = new Set(), sounded = new Set();
            let twice = 0, early = 0, after = 0, sleepsUntil = 0, tellAt = Infinity;
            const tell = () => calls.set(all.map((one) => ({ ...one, acknowledged: answered.has(one.callId) })));
            at(from - 1);
            tell();
            for (let time = from; time < from + day + 120_000; time += 1_000) {
              if (time < sleepsUntil) continue;
              if (shown.length === 0 && chance() < 0.002) {
                sleepsUntil = time + 60_000 * chance();
                continue;
              }
              for (const [id, when] of answers) if (when <= time) {
                answers.delete(id);
                answered.set(id, time);
                // Here it is known at once; of what was answered elsewhere the next schedule tells, up to two seconds later.
                if (chance() < 0.5) calls.silence(id);
                else tellAt = Math.min(tellAt, time + 2_000 * chance());
              }
              if (tellAt <= time || chance() < 0.02) {
                tell();
                tellAt = Infinity;
              }
              at(time);
              for (const text of heard.splice(0).flatMap((one) => one.slice(one.indexOf(": ") + 2).split(" + "))) {
                if (sounded.has(text)) twice++;
                sounded.add(text);
              }
              for (const id of shown.map((one) => one.split(" ")[0])) {
                if (time < dueOf.get(id)) early++;
                if (time - (answered.get(id) ?? time) > 3_000) after++;
                if (rang.has(id)) continue;
                rang.add(id);
                answers.set(id, time + 1_000 + 4_000 * chance());
              }
            }
            heard.push(`${rang.size} rang`, `${twice} sounded twice`, `${early} rang early`, `${after} rang after they were answered`);
            """));

    [Fact]
    public async Task The_three_priorities_sound_different_in_wave_in_rhythm_and_in_pitch() =>
        Assert.Equal(["3 waves", "3 rhythms", "3 first pitches", "all within their time"], await HeardAsync("""
            const { TONES, TONES_LAST } = await import("/js/arm.js");
            const tones = ["high", "medium", "low"].map((priority) => TONES[priority]);
            const kinds = (of) => new Set(tones.map((tone) => JSON.stringify(of(tone)))).size;
            heard.push(`${kinds((tone) => tone.wave)} waves`, `${kinds((tone) => tone.notes.map(([, start, length]) => [start, length]))} rhythms`, `${kinds((tone) => tone.notes[0][0])} first pitches`);
            heard.push(tones.every((tone) => tone.notes.every(([, start, length]) => (start + length) * 1000 <= TONES_LAST)) ? "all within their time" : "too long");
            """));

    async Task<string[]> HeardAsync(string script, bool joinsIn = true)
    {
        await using var screen = await house.OpenAsync("script", ScreenSize.Phone);
        await screen.GoToAsync("/sign-in");
        return await screen.Page.EvaluateAsync<string[]>($"async (joins) => {{ {Device}\n{script}\nreturn heard; }}", joinsIn);
    }
}
