using CookAlong.Domain.Planning;
using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Live;
using CookAlong.Web.Features.Live.Line;
using CookAlong.Web.Features.Live.Runs;
using CookAlong.Web.Tests.Live;
using Microsoft.AspNetCore.SignalR;
using Microsoft.AspNetCore.SignalR.Client;
using Microsoft.Extensions.DependencyInjection;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Web.Tests.Stores;

/// <summary>Two servers of one household on one PostgreSQL, joined by Redis where it says so.</summary>
public sealed class TwoNodesTests
{
    // Only for a test that fails: a busy machine may take its time.
    static readonly TimeSpan Patience = TimeSpan.FromMinutes(1);

    static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_one_decided_stands_on_the_board_of_the_other()
    {
        await using var kitchen = await Store.Postgres.KitchenAsync();
        await using var other = await kitchen.RestartedAsync();
        await other.Host.ReadAsync($"/cook/{kitchen.Run}/board");

        Assert.True((await kitchen.TapAsync(kitchen.Host, new { kind = "finishStep", step = "stuff" })).Accepted);
        var last = await other.TapAsync(other.Host, new { kind = "startStep", step = "roast" });
        Assert.True(last.Accepted, last.Reason);

        var seen = await kitchen.House.Get<LiveRuns>().FindAsync(new RunId(kitchen.Run));
        Assert.Equal(last.Sequence, seen!.Current.Sequence);
    }

    [Fact]
    public async Task Without_Redis_the_others_screens_are_told_at_the_next_beat()
    {
        await using var kitchen = await Store.Postgres.KitchenAsync();
        await using var other = await kitchen.RestartedAsync();
        var (line, heard) = await ListenAsync(other);
        await using (line)
        {
            var tap = await kitchen.TapAsync(kitchen.Host, new { kind = "finishStep", step = "stuff" });
            await other.TickUntilAsync(heard(tap.Sequence));
        }
    }

    [Fact]
    public async Task With_Redis_they_are_told_at_once()
    {
        await using var kitchen = await LiveKitchen.StartedAsync(settings: await JoinedAsync());
        await using var other = await kitchen.RestartedAsync();
        await Task.WhenAll(kitchen.House.Get<LineOverRedis>().Joined, other.House.Get<LineOverRedis>().Joined);
        var (line, heard) = await ListenAsync(other);
        await using (line)
        {
            // The clock stands still: nobody looks by himself.
            var tap = await kitchen.TapAsync(kitchen.Host, new { kind = "finishStep", step = "stuff" });
            await heard(tap.Sequence).WaitAsync(Patience, Stop);
        }
    }

    [Fact]
    public async Task A_phone_that_the_other_holds_is_not_silent_until_that_server_is_gone()
    {
        await using var kitchen = await LiveKitchen.StartedAsync(settings: await JoinedAsync());
        var other = await kitchen.RestartedAsync();
        var (line, _) = await ListenAsync(other);
        var (here, run) = (kitchen.House.Get<OpenScreens>(), new RunId(kitchen.Run));
        await SecondsUntilAsync(() => here.Of(run).All.Length == 1);

        await line.DisposeAsync();
        await other.DisposeAsync();

        await SecondsUntilAsync(() => here.Of(run).All.IsEmpty);

        async Task SecondsUntilAsync(Func<bool> isSo)
        {
            var seen = Task.Run(
                async () =>
                {
                    while (!isSo())
                    {
                        await Task.Delay(20, Stop);
                    }
                },
                Stop);
            for (var second = 0; second < 300 && !seen.IsCompleted; second++)
            {
                other.House.Clock.Advance(TimeSpan.FromSeconds(1));
                kitchen.House.Clock.Advance(TimeSpan.FromSeconds(1));
                await Task.WhenAny(seen, Task.Delay(100, Stop));
            }

            Assert.True(isSo());
        }
    }

    [Fact]
    public async Task Redis_carries_the_live_line_and_no_other()
    {
        await using var kitchen = await LiveKitchen.StartedAsync(settings: await JoinedAsync());

        Assert.IsType<LineOverRedis>(kitchen.House.Get<HubLifetimeManager<LiveHub>>());
        Assert.IsType<DefaultHubLifetimeManager<AnotherHub>>(kitchen.House.Get<HubLifetimeManager<AnotherHub>>());
    }

    [Fact]
    public async Task With_Redis_away_taps_are_taken_and_known_to_both()
    {
        var settings = await Store.Postgres.NewAsync();
        // Port 1 of this machine has no listener.
        settings["redis"] = "127.0.0.1:1,connectTimeout=200";
        await using var kitchen = await LiveKitchen.StartedAsync(settings: settings);
        await using var other = await kitchen.RestartedAsync();

        var tap = await kitchen.TapAsync(kitchen.Host, new { kind = "finishStep", step = "stuff" });

        Assert.True(tap.Accepted, tap.Reason);
        Assert.True((await other.House.Get<LiveRuns>().FindAsync(new RunId(kitchen.Run)))!.Current.Sequence >= tap.Sequence);
    }

    [Fact]
    public async Task A_new_plan_that_a_lost_server_offered_is_looked_for_again_and_offered_by_the_other()
    {
        await using var kitchen = await LiveKitchen.StartedAsync(services => services.AddSingleton<IMealPlanner>(new ReplanOffersTests.FixedPlanner(At(15, 10))), settings: await Store.Postgres.NewAsync());
        var other = await kitchen.RestartedAsync();
        var lost = await OfferedAsync(other);
        await other.DisposeAsync();

        var found = await OfferedAsync(kitchen);

        var late = await kitchen.TapAsync(kitchen.Host, new { kind = "acceptPlan", plan = lost.Id });
        Assert.False(late.Accepted);
        Assert.Contains("plan", late.Reason, StringComparison.Ordinal);
        Assert.True((await kitchen.TapAsync(kitchen.Host, new { kind = "acceptPlan", plan = found.Id })).Accepted);
        Assert.Equal(At(15, 10), (await kitchen.LoadAsync()).Plan.TableTime(Main));

        // By the server's own beat: nobody asks it. By 12:50 nobody has stuffed the goose.
        static async Task<OfferedPlan> OfferedAsync(LiveKitchen server)
        {
            server.House.Clock.SetUtcNow(Clock(12, 50));
            var run = (await server.House.Get<LiveRuns>().FindAsync(new RunId(server.Run)))!.Current;
            var offers = server.House.Get<ReplanOffers>();
            await server.TickUntilAsync(UntilAsync());
            return offers.Of(run)!;

            async Task UntilAsync()
            {
                while (offers.Of(run) is null)
                {
                    await Task.Delay(20, Stop);
                }
            }
        }
    }

    static async Task<Dictionary<string, string>> JoinedAsync()
    {
        var settings = await Store.Postgres.NewAsync();
        settings["redis"] = (await StorePrograms.RedisAsync()).NewLine();
        return settings;
    }

    static async Task<(HubConnection Line, Func<long, Task> Heard)> ListenAsync(LiveKitchen kitchen)
    {
        var line = kitchen.Connect(kitchen.Host);
        var news = System.Threading.Channels.Channel.CreateUnbounded<long>();
        line.On<ChangedNews>("Changed", changed => news.Writer.TryWrite(changed.Sequence));
        await line.StartAsync(Stop);
        await line.InvokeAsync<Entered>("Enter", kitchen.Run, Stop);
        return (line, async wanted =>
        {
            while (await news.Reader.ReadAsync(Stop) < wanted)
            {
                // Something older.
            }
        }
        );
    }

    public sealed class AnotherHub : Hub;
}
