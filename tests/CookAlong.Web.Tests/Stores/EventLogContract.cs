using System.Text.Json;
using CookAlong.Domain;
using CookAlong.Domain.Runs;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Live.Runs;
using CookAlong.Web.Tests.Live;
using CsCheck;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Web.Tests.Stores;

public sealed class EventLogOnSqlite() : EventLogContract(Store.Sqlite);

public sealed class EventLogOnPostgres() : EventLogContract(Store.Postgres);

/// <summary>The log arbitrates: whoever decides, on whichever server, there is one order of what happened.</summary>
public abstract class EventLogContract(Store store)
{
    enum Way { First, Second, Both, FirstTwice }

    static readonly Gen<(int Ask, StepId Step, Way Way)[]> Taps = Gen.Select(
        Gen.Int[0, 4], Gen.OneOf(Stuff, Roast, Roll, Boil, Trim), Gen.Enum<Way>()).Array[1, 25];

    static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_number_or_a_command_that_was_written_is_not_written_again_nor_any_event_beside_it()
    {
        await using var kitchen = await store.KitchenAsync();
        var log = kitchen.House.Get<EventLog>();
        var run = await kitchen.LoadAsync();
        var (first, second) = (new CommandId(LiveKitchen.NewCommand()), new CommandId(LiveKitchen.NewCommand()));
        Assert.True(await log.AppendAsync(run, [Timed(run.Sequence + 1, first), Timed(run.Sequence + 2, first)]));

        Assert.False(await log.AppendAsync(run, [Timed(run.Sequence + 2, second)]));
        Assert.False(await log.AppendAsync(run, [Timed(run.Sequence + 3, first)]));
        Assert.False(await log.AppendAsync(run, [Timed(run.Sequence + 3, second), Timed(run.Sequence + 2, second)]));

        Assert.Equal(run.Sequence + 2, (await kitchen.LoadAsync()).Sequence);
    }

    [Fact]
    public async Task A_run_that_has_ended_is_not_gone_on_with()
    {
        await using var kitchen = await store.KitchenAsync();
        var log = kitchen.House.Get<EventLog>();
        Assert.Equal([kitchen.Run], (await log.UnfinishedAsync(Stop)).Select(id => id.Value));

        Assert.True((await kitchen.TapAsync(kitchen.Host, new { kind = "endRun" })).Accepted);

        Assert.Empty(await log.UnfinishedAsync(Stop));
        Assert.Null(await log.UnfinishedAsync(LiveKitchen.MealRow, isRehearsal: false, Stop));
    }

    [Fact]
    public async Task Any_order_of_taps_to_either_of_two_servers_gives_one_log_and_one_board()
    {
        await using var kitchen = await store.KitchenAsync();
        await using var other = await kitchen.RestartedAsync();
        await Taps.SampleAsync(async taps =>
        {
            // Of a meal of its own: one that is being cooked is not begun again.
            var start = await kitchen.House.Get<LiveRuns>().StartAsync(LiveKitchen.NewCommand(), Meal, Plan, Host, "Maren");
            var id = start.Current.Id;
            LiveRun[] servers = [start, (await other.House.Get<LiveRuns>().FindAsync(id))!];
            var answers = new List<(CommandId Id, Decision Answer)>();
            foreach (var (ask, step, way) in taps)
            {
                var tap = new Tap(new CommandId(LiveKitchen.NewCommand()), Host, CommandOf(ask, step));
                LiveRun[] to = way switch
                {
                    Way.First => [servers[0]],
                    Way.Second => [servers[1]],
                    Way.Both => servers,
                    Way.FirstTwice => [servers[0], servers[0]],
                    _ => throw new System.Diagnostics.UnreachableException(),
                };
                answers.AddRange((await Task.WhenAll(to.Select(server => server.SendAsync(tap)))).Select(answer => (tap.Id, answer)));
            }

            var log = kitchen.House.Get<EventLog>();
            var written = new List<Logged>();
            await foreach (var (_, logged) in log.ReadAsync(id, Stop))
            {
                written.Add(logged);
            }

            Assert.Equal(Enumerable.Range(1, written.Count).Select(number => (long)number), written.Select(logged => logged.Sequence));
            Assert.All(
                answers.Where(one => one.Answer is Decision.Accepted { Events.IsEmpty: false }).Select(one => one.Id).Distinct(),
                command => Assert.Contains(written, logged => logged.Command == command));

            // A tap that writes makes a server see what the other wrote; then both show what the log gives back.
            await servers[0].SendAsync(new Tap(new CommandId(LiveKitchen.NewCommand()), Host, new RunCommand.AddTime(Carve, 1)));
            await servers[1].SendAsync(new Tap(new CommandId(LiveKitchen.NewCommand()), Host, new RunCommand.AddTime(Carve, 1)));
            await servers[0].SendAsync(new Tap(new CommandId(LiveKitchen.NewCommand()), Host, new RunCommand.AddTime(Carve, 1)));
            await servers[1].SendAsync(new Tap(new CommandId(LiveKitchen.NewCommand()), Host, new RunCommand.EndRun()));
            await servers[0].SendAsync(new Tap(new CommandId(LiveKitchen.NewCommand()), Host, new RunCommand.AddTime(Carve, 1)));
            var replayed = (await log.LoadAsync(id, Stop))!;
            Assert.All(servers, server => Assert.Equal(Describe(replayed), Describe(server.Current)));
        }, iter: 25, threads: 1);
    }

    [Fact]
    public async Task A_meal_that_is_begun_on_two_servers_at_once_is_one_run()
    {
        await using var kitchen = await store.KitchenAsync();
        await using var other = await kitchen.RestartedAsync();
        var meal = LiveKitchen.NewCommand();

        var runs = await Task.WhenAll(new[] { kitchen, other, kitchen, other }.Select(server =>
            Task.Run(() => server.House.Get<LiveRuns>().StartAsync(meal, Meal, Plan, Host, "Maren"))));

        Assert.Single(runs.Select(run => run.Current.Id).Distinct());
    }

    [Fact]
    public async Task A_copy_of_a_refused_tap_that_comes_late_is_still_refused()
    {
        await using var kitchen = await store.KitchenAsync();
        var id = LiveKitchen.NewCommand();
        Assert.False((await kitchen.TapAsync(kitchen.Host, new { kind = "startStep", step = "roast" }, id)).Accepted);
        Assert.True((await kitchen.TapAsync(kitchen.Host, new { kind = "finishStep", step = "stuff" })).Accepted);
        Assert.False((await kitchen.TapAsync(kitchen.Host, new { kind = "startStep", step = "roast" }, id)).Accepted);
        Assert.True((await kitchen.TapAsync(kitchen.Host, new { kind = "startStep", step = "roast" })).Accepted);
    }

    static Logged Timed(long sequence, CommandId command) => new(sequence, command, Host, Clock(12, 21), new RunEvent.TimeAdded(Carve, 1));

    static string Describe(Run run) => JsonSerializer.Serialize(Board.Of(run, Clock(14, 30)));

    static RunCommand CommandOf(int ask, StepId step) => ask switch
    {
        0 => new RunCommand.StartStep(step),
        1 => new RunCommand.FinishStep(step),
        2 => new RunCommand.TakeBack(step),
        3 => new RunCommand.HoldEverything(),
        _ => new RunCommand.GoOn(),
    };
}
