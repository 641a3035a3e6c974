using CookAlong.Domain.Runs;
using CookAlong.Domain.Tests.Runs;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Live.Runs;
using Microsoft.EntityFrameworkCore;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Web.Tests.Live;

public sealed class RunOnDiskTests
{
    [Fact]
    public async Task Two_guests_join_and_claim_and_finish_and_take_back()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var tobi = await kitchen.JoinAsync("Tobi");
        var ivo = await kitchen.JoinAsync("ivo");
        Assert.True((await kitchen.TapAsync(kitchen.Host, new { kind = "finishStep", step = "stuff" })).Accepted);
        Assert.True((await kitchen.TapAsync(tobi, new { kind = "letGoStep", step = "roll" })).Accepted);
        Assert.True((await kitchen.TapAsync(ivo, new { kind = "claimStep", step = "roll" })).Accepted);
        var taken = await kitchen.TapAsync(tobi, new { kind = "claimStep", step = "roll" });
        Assert.False(taken.Accepted);
        Assert.Contains("Ivo", taken.Reason, StringComparison.Ordinal);
        Assert.True((await kitchen.TapAsync(ivo, new { kind = "finishStep", step = "roll" })).Accepted);
        Assert.True((await kitchen.TapAsync(ivo, new { kind = "takeBack", step = "roll" })).Accepted);

        var run = await kitchen.LoadAsync();
        Assert.True(run.StateOf(Roll).IsRunning);
        Assert.Equal([Ivo], run.HoldersOf(Roll));
        Assert.NotNull(run.StateOf(Stuff).Finished);
    }

    [Fact]
    public async Task A_meal_that_was_ended_early_can_be_started_again()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        Assert.Equal(kitchen.Run, await kitchen.StartAsync());
        await kitchen.TapAsync(kitchen.Host, new { kind = "finishStep", step = "stuff" });
        Assert.True((await kitchen.TapAsync(kitchen.Host, new { kind = "endRun" })).Accepted);

        Assert.NotEqual(kitchen.Run, await kitchen.StartAsync());
        var first = await kitchen.LoadAsync();
        Assert.NotNull(first.Ended);
        Assert.NotNull(first.StateOf(Stuff).Finished);
    }

    [Fact]
    public async Task The_same_tap_twice_is_written_once()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var command = LiveKitchen.NewCommand();
        var first = await kitchen.TapAsync(kitchen.Host, new { kind = "finishStep", step = "stuff" }, command);
        var again = await kitchen.TapAsync(kitchen.Host, new { kind = "finishStep", step = "stuff" }, command);
        Assert.Equal(first, again);
        Assert.Equal(first.Sequence, (await kitchen.LoadAsync()).Sequence);
    }

    [Fact]
    public async Task A_stale_tap_is_refused_in_words_and_changes_nothing()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        await kitchen.TapAsync(kitchen.Host, new { kind = "finishStep", step = "stuff" });
        var stale = await kitchen.TapAsync(kitchen.Host, new { kind = "startStep", step = "stuff" });
        Assert.False(stale.Accepted);
        Assert.Contains("12:20", stale.Reason, StringComparison.Ordinal);
        Assert.Equal(4, (await kitchen.LoadAsync()).Sequence);
    }

    [Theory]
    [InlineData("""{"kind":"join","person":"00000001-0000-0000-0000-000000000000"}""")]
    [InlineData("""{"kind":"finishStep"}""")]
    [InlineData("""{"kind":"addTime","step":"roll","minutes":"5"}""")]
    [InlineData("""[]""")]
    [InlineData("""{"kind":7}""")]
    public async Task Nonsense_is_refused_in_words(string command)
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var answer = await kitchen.TapAsync(kitchen.Host, System.Text.Json.JsonDocument.Parse(command).RootElement);
        Assert.False(answer.Accepted);
        Assert.NotEmpty(answer.Reason!);
    }

    [Fact]
    public async Task A_restart_shows_the_same_board_and_keeps_every_confirmed_tap()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var ivo = await kitchen.JoinAsync("Ivo");
        await kitchen.TapAsync(kitchen.Host, new { kind = "finishStep", step = "stuff" });
        await kitchen.TapAsync(ivo, new { kind = "startStep", step = "trim" });
        var before = await kitchen.House.Get<LiveRuns>().FindAsync(new RunId(kitchen.Run));

        await using var again = await kitchen.RestartedAsync();
        var after = await again.House.Get<LiveRuns>().FindAsync(new RunId(kitchen.Run));
        Assert.NotSame(before, after);
        Assert.Equal(Describe(Board.Of(before!.Current, Clock(12, 30))), Describe(Board.Of(after!.Current, Clock(12, 30))));

        // The phone's cookie is still good, and the same tap again is known.
        Assert.Equal(before.Current.Sequence, (await again.TapAsync(again.Host, new { kind = "acknowledge", call = "begin:stuff" })).Sequence);
    }

    [Fact]
    public async Task Two_servers_on_one_log_do_not_both_begin_a_step()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        await using var other = kitchen.House.Again();
        var here = (await kitchen.House.Get<LiveRuns>().FindAsync(new RunId(kitchen.Run)))!;
        var there = (await other.Get<LiveRuns>().FindAsync(new RunId(kitchen.Run)))!;
        var host = here.Current.People.Keys.Single();
        Assert.IsType<Decision.Accepted>(await here.SendAsync(new Tap(new CommandId(LiveKitchen.NewCommand()), host, new RunCommand.StartStep(Stuff))));
        Assert.Equal(
            new Decision.Refused(new Refusal.AlreadyStarted(Stuff, Clock(12, 20))),
            await there.SendAsync(new Tap(new CommandId(LiveKitchen.NewCommand()), host, new RunCommand.StartStep(Stuff))));
        Assert.IsType<Decision.Accepted>(await there.SendAsync(new Tap(new CommandId(LiveKitchen.NewCommand()), host, new RunCommand.FinishStep(Stuff))));
        Assert.Equal(5, (await kitchen.LoadAsync()).Sequence);
    }

    [Fact]
    public async Task Starting_a_meal_that_is_being_cooked_leads_to_its_kitchen()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        Assert.Equal(kitchen.Run, await kitchen.StartAsync());
        await kitchen.TapAsync(kitchen.Host, new { kind = "endRun" });
        Assert.NotEqual(kitchen.Run, await kitchen.StartAsync());
    }

    [Fact]
    public async Task A_plan_of_an_older_version_is_not_cooked()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        await kitchen.TapAsync(kitchen.Host, new { kind = "endRun" });
        await using (var db = kitchen.House.NewDb())
        {
            await db.Meals.ExecuteUpdateAsync(set => set.SetProperty(meal => meal.Version, 2), TestContext.Current.CancellationToken);
        }

        using var answer = await kitchen.Host.PostFormAsync($"/meals/{LiveKitchen.MealRow}/runs", [], page: "/sign-in");
        Assert.Equal($"/meals/{LiveKitchen.MealRow}/plan", answer.Headers.Location!.OriginalString);
    }

    [Fact]
    public async Task Every_live_page_shows_the_run_to_who_is_in_it()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var ivo = await kitchen.JoinAsync("Ivo");
        Assert.Contains("Small lunch", await kitchen.Host.ReadAsync($"/cook/{kitchen.Run}"), StringComparison.Ordinal);
        Assert.Contains("stuff", await ivo.ReadAsync($"/cook/{kitchen.Run}/board-part"), StringComparison.Ordinal);
        Assert.Contains("trim", await ivo.ReadAsync($"/cook/{kitchen.Run}/me"), StringComparison.Ordinal);
        Assert.Contains("trim", await ivo.ReadAsync($"/cook/{kitchen.Run}/me-part"), StringComparison.Ordinal);
        Assert.Contains("localhost/join", await kitchen.Host.ReadAsync($"/cook/{kitchen.Run}/invite"), StringComparison.Ordinal);
        using var nobody = await kitchen.House.NewBrowser().GetAsync($"/cook/{kitchen.Run}");
        Assert.StartsWith("/sign-in", nobody.Headers.Location!.PathAndQuery, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Fragments_are_sent_again_only_when_there_is_something_new()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        using var first = await kitchen.Host.GetAsync($"/cook/{kitchen.Run}/board-part");
        Assert.Equal(System.Net.HttpStatusCode.OK, first.StatusCode);
        Assert.Equal(System.Net.HttpStatusCode.NotModified, await AskAgainAsync());
        await kitchen.TapAsync(kitchen.Host, new { kind = "finishStep", step = "stuff" });
        Assert.Equal(System.Net.HttpStatusCode.OK, await AskAgainAsync());

        async Task<System.Net.HttpStatusCode> AskAgainAsync()
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, $"/cook/{kitchen.Run}/board-part");
            request.Headers.IfNoneMatch.Add(first.Headers.ETag!);
            using var answer = await kitchen.Host.Client.SendAsync(request, TestContext.Current.CancellationToken);
            return answer.StatusCode;
        }
    }

    static string Describe(Board board) => string.Join('\n', board.Now.Concat(board.Next).Concat(board.Done).Select(card => $"{card.Step.Id} {card.State} {card.Starts:O} {card.Ends:O} {string.Join(',', card.Helpers)} {card.Tend}"))
        + string.Join('\n', board.Calls) + string.Join('\n', board.People) + board.Sequence;
}
