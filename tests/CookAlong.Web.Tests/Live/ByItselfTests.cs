using CookAlong.Domain;
using CookAlong.Domain.Planning;
using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Live.Line;
using CookAlong.Web.Features.Live.Runs;
using Microsoft.AspNetCore.SignalR.Client;
using Microsoft.Extensions.DependencyInjection;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Web.Tests.Live;

/// <summary>What the clock's loop does though nobody taps.</summary>
public sealed class ByItselfTests
{
    static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_step_that_was_taken_and_not_begun_is_free_again_and_the_log_says_so()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var ivo = await kitchen.JoinAsync("Ivo");
        await using var phone = await EnterAsync(kitchen, ivo);
        await kitchen.TapAsync(ivo, new { kind = "letGoStep", step = "trim" });
        await kitchen.TapAsync(ivo, new { kind = "claimStep", step = "trim" });
        var freed = new TaskCompletionSource();
        var live = await LiveAsync(kitchen);
        phone.On<ChangedNews>("Changed", _ =>
        {
            if (live.Current.HoldersOf(Trim).IsEmpty)
            {
                freed.TrySetResult();
            }
        });
        await CookUntilTrimmingAsync(kitchen);
        kitchen.House.Clock.LeapTo(Clock(14, 24).AddSeconds(58));
        await kitchen.TickUntilAsync(freed.Task);
        Assert.True(kitchen.House.Clock.GetUtcNow() >= Clock(14, 25));
        Assert.True((await kitchen.TapAsync(kitchen.Host, new { kind = "claimStep", step = "trim" })).Accepted);
        Assert.Contains("“trim” is free to take: Ivo had not begun it", System.Net.WebUtility.HtmlDecode(await ivo.ReadAsync($"/cook/{kitchen.Run}/log")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_meal_that_nobody_ended_is_over_a_day_after_its_table_and_is_let_go_of_later()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        await ActAsync(kitchen, Clock(15).AddDays(1));
        Assert.Null((await kitchen.LoadAsync()).Ended);
        await ActAsync(kitchen, Clock(15, 1).AddDays(1));
        Assert.NotNull((await kitchen.LoadAsync()).Ended);
        Assert.Contains("The kitchen ended the meal", await kitchen.Host.ReadAsync($"/cook/{kitchen.Run}/log"), StringComparison.Ordinal);

        var live = await LiveAsync(kitchen);
        Assert.False(kitchen.House.Get<LiveRuns>().Forget(live));
        kitchen.House.Clock.Leap(TimeSpan.FromMinutes(10));
        kitchen.House.Get<LiveRuns>().Forget(live);
        Assert.DoesNotContain(live, kitchen.House.Get<LiveRuns>().Known);
    }

    [Fact]
    public async Task Two_who_start_at_once_cook_in_one_kitchen()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        await kitchen.TapAsync(kitchen.Host, new { kind = "endRun" });
        var both = await Task.WhenAll(kitchen.StartAsync(), kitchen.StartAsync());
        Assert.Equal(both[0], both[1]);
        Assert.NotEqual(kitchen.Run, both[0]);
    }

    [Fact]
    public async Task A_planned_step_of_somebody_whose_phone_is_silent_is_free_too()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        await kitchen.JoinAsync("Ivo");
        await CookUntilTrimmingAsync(kitchen);
        await ActAsync(kitchen, Clock(14, 25));
        Assert.Empty((await kitchen.LoadAsync()).HoldersOf(Trim));
    }

    [Fact]
    public async Task A_planned_step_of_somebody_whose_phone_is_there_stays_theirs()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        await using var phone = await EnterAsync(kitchen, await kitchen.JoinAsync("Ivo"));
        await kitchen.JoinAsync("Tobi");
        await CookUntilTrimmingAsync(kitchen);

        // Tobi, of whom nothing is heard, loses serving; the same look leaves Ivo his part of it.
        await kitchen.TapAsync(kitchen.Host, new { kind = "finishStep", step = "trim" });
        kitchen.House.Clock.LeapTo(Clock(14, 44));
        await kitchen.TapAsync(kitchen.Host, new { kind = "finishStep", step = "boil" });
        await kitchen.TapAsync(kitchen.Host, new { kind = "goOn" });
        await ActAsync(kitchen, Clock(14, 50));
        Assert.Equal([Ivo], (await kitchen.LoadAsync()).HoldersOf(Serve));
    }

    [Fact]
    public async Task By_the_host_s_rule_a_small_change_is_taken_by_itself()
    {
        await using var kitchen = await LiveKitchen.StartedAsync(services => services.AddSingleton<IMealPlanner>(new FewMinutesLater()));
        Assert.True((await kitchen.TapAsync(kitchen.Host, new { kind = "setPlanRule", minutes = 5 })).Accepted);
        await kitchen.TapAsync(kitchen.Host, new { kind = "moveTable", course = "main", minutes = 15 });
        var run = (await LiveAsync(kitchen)).Current;
        await kitchen.House.Get<ReplanOffers>().Look(run, Board.Of(run, Clock(12, 20)));
        await ActAsync(kitchen, Clock(12, 21));
        Assert.Equal(At(14, 23), (await kitchen.LoadAsync()).Plan.Step(Trim).Start);
        Assert.Contains("The kitchen took a new plan", await kitchen.Host.ReadAsync($"/cook/{kitchen.Run}/log"), StringComparison.Ordinal);
    }

    /// <summary>Moves trimming, Ivo's next, by three minutes.</summary>
    sealed class FewMinutesLater : IMealPlanner
    {
        public Plan Plan(PlanRequest request, IProgress<PlanProgress>? progress = null, CancellationToken stop = default)
        {
            var current = request.So!.Current;
            return current with { Steps = [.. current.Steps.Select(step => step.Step == Trim ? step with { Start = At(14, 23), End = At(14, 33) } : step)] };
        }
    }

    /// <summary>All goes as planned until a minute before trimming, not begun, is free.</summary>
    static async Task CookUntilTrimmingAsync(LiveKitchen kitchen)
    {
        var live = await LiveAsync(kitchen);
        var host = live.Current.People.Values.Single(person => person.Role == Role.Host).Person;
        foreach (var (at, command) in new (DateTimeOffset, RunCommand)[]
        {
            (Clock(12, 40), new RunCommand.FinishStep(Stuff)), (Clock(12, 40), new RunCommand.StartStep(Roast)), (Clock(14, 10), new RunCommand.FinishStep(Roast)),
            (Clock(14, 15), new RunCommand.FinishStep(Roll)), (Clock(14, 15), new RunCommand.StartStep(Boil)),
        })
        {
            kitchen.House.Clock.LeapTo(at);
            Assert.IsType<Decision.Accepted>(await live.SendAsync(new Tap(new CommandId(LiveKitchen.NewCommand()), host, command)));
        }

        kitchen.House.Clock.LeapTo(Clock(14, 24));
    }

    static async Task<HubConnection> EnterAsync(LiveKitchen kitchen, Browser screen)
    {
        var phone = kitchen.Connect(screen);
        await phone.StartAsync(Stop);
        await phone.InvokeAsync<Entered>("Enter", kitchen.Run, Stop);
        return phone;
    }

    /// <summary>As the clock's loop does at every beat.</summary>
    static async Task ActAsync(LiveKitchen kitchen, DateTimeOffset at)
    {
        kitchen.House.Clock.LeapTo(at);
        var live = await LiveAsync(kitchen);
        await kitchen.House.Get<ByItself>().ActAsync(live, Board.Of(live.Current, at));
    }

    static async Task<LiveRun> LiveAsync(LiveKitchen kitchen) => (await kitchen.House.Get<LiveRuns>().FindAsync(new RunId(kitchen.Run)))!;
}
