using CookAlong.Benchmarks.Kitchens;
using CookAlong.Web.Features.Live.Line;
using CookAlong.Web.Tests.Live;
using Microsoft.AspNetCore.SignalR.Client;

namespace CookAlong.Web.Tests.Stores;

/// <summary>Redis gone while two servers cook, and back: it carries news, and nothing but news waits for it.</summary>
public sealed class RedisLostTests
{
    // Only for a test that fails: a busy machine may take its time.
    static readonly TimeSpan Patience = TimeSpan.FromMinutes(1);

    static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Gone_in_the_middle_news_come_at_the_next_beat_and_back_again_at_once()
    {
        await using var redis = await StartAsync();
        await using var kitchen = await KitchenAsync(redis);
        await using var other = await kitchen.RestartedAsync();
        await JoinedAsync(kitchen);
        await JoinedAsync(other);
        await using var here = await Screen.OfAsync(kitchen);
        await using var there = await Screen.OfAsync(other);
        var tap = await TapAsync(kitchen);
        await Task.WhenAll(here.Until(tap), there.Until(tap)).WaitAsync(Patience, Stop);

        await redis.KillAsync();
        tap = await TapAsync(kitchen);
        // The clock stands still: this server's own screens wait for nobody.
        await here.Until(tap).WaitAsync(Patience, Stop);
        await AtTheNextBeatAsync(other, there, tap);
        tap = await TapAsync(other);
        await AtTheNextBeatAsync(kitchen, here, tap);
        // And a line can be opened.
        await using var late = await Screen.OfAsync(other);
        await AtTheNextBeatAsync(other, late, await TapAsync(kitchen));

        await redis.RestartAsync();
        await WithoutBeatsAsync(kitchen, late);
        await WithoutBeatsAsync(other, here);
    }

    [Fact]
    public async Task A_server_that_starts_while_it_is_away_starts_and_is_joined_when_it_comes()
    {
        await using var redis = await StartAsync();
        await redis.KillAsync();
        await using var kitchen = await KitchenAsync(redis);
        await using var other = await kitchen.RestartedAsync();
        await using var there = await Screen.OfAsync(other);
        await other.TickUntilAsync(there.Until(await TapAsync(kitchen)));
        Assert.False(Joined(kitchen).IsCompleted);

        await redis.RestartAsync();
        await JoinedAsync(kitchen);
        await JoinedAsync(other);
        await WithoutBeatsAsync(kitchen, there);
    }

    [Fact]
    public async Task A_server_that_goes_down_says_so_to_its_own_screens_alone()
    {
        await using var redis = await StartAsync();
        await using var kitchen = await KitchenAsync(redis);
        await using var other = await kitchen.RestartedAsync();
        await JoinedAsync(kitchen);
        await JoinedAsync(other);
        await using var here = await Screen.OfAsync(kitchen);
        await using var there = await Screen.OfAsync(other);

        await other.DisposeAsync();

        await there.Restarting.WaitAsync(Patience, Stop);
        await here.Until(await TapAsync(kitchen)).WaitAsync(Patience, Stop);
        Assert.False(here.Restarting.IsCompleted);
    }

    static async Task<OwnRedis> StartAsync()
    {
        Assert.SkipWhen(OwnRedis.Missing is not null, OwnRedis.Missing ?? "");
        return await OwnRedis.StartAsync();
    }

    static async Task<LiveKitchen> KitchenAsync(OwnRedis redis)
    {
        var settings = await Store.Postgres.NewAsync();
        settings["redis"] = $"{redis.NewLine()},connectTimeout=500";
        return await LiveKitchen.StartedAsync(settings: settings);
    }

    /// <summary>On a busy machine the first try may take too long; the next is made at a beat.</summary>
    static Task JoinedAsync(LiveKitchen kitchen) => kitchen.TickUntilAsync(Joined(kitchen));

    static Task Joined(LiveKitchen kitchen) => kitchen.House.Get<LineOverRedis>().Joined;

    static async Task<long> TapAsync(LiveKitchen kitchen)
    {
        var tap = await kitchen.TapAsync(kitchen.Host, new { kind = "addTime", step = "carve", minutes = 1 });
        Assert.True(tap.Accepted, tap.Reason);
        return tap.Sequence;
    }

    static async Task AtTheNextBeatAsync(LiveKitchen server, Screen screen, long tap)
    {
        Assert.True(screen.Last < tap);
        server.House.Clock.Advance(TimeSpan.FromSeconds(1));
        await screen.Until(tap).WaitAsync(Patience, Stop);
    }

    /// <summary>Taps here until one is heard there, with both clocks standing still: Redis is tried again by real time.</summary>
    static async Task WithoutBeatsAsync(LiveKitchen taps, Screen hears)
    {
        var patience = Task.Delay(Patience, Stop);
        while (await Task.WhenAny(hears.Until(await TapAsync(taps)), Task.Delay(500, Stop), patience) is var first)
        {
            Assert.NotSame(patience, first);
            if (hears.Last >= (await taps.LoadAsync()).Sequence)
            {
                return;
            }
        }
    }

    /// <summary>A host's screen: the last it was told of.</summary>
    sealed class Screen : IAsyncDisposable
    {
        readonly HubConnection line;
        readonly TaskCompletionSource restarting = new();
        long last;

        Screen(LiveKitchen kitchen)
        {
            line = kitchen.Connect(kitchen.Host);
            line.On<ChangedNews>("Changed", changed => Interlocked.Exchange(ref last, changed.Sequence));
            line.On("Restarting", () => restarting.TrySetResult());
        }

        public long Last => Interlocked.Read(ref last);

        public Task Restarting => restarting.Task;

        public static async Task<Screen> OfAsync(LiveKitchen kitchen)
        {
            var screen = new Screen(kitchen);
            await screen.line.StartAsync(Stop);
            await screen.line.InvokeAsync<Entered>("Enter", kitchen.Run, Stop);
            return screen;
        }

        public async Task Until(long sequence)
        {
            while (Last < sequence)
            {
                await Task.Delay(20, Stop);
            }
        }

        public ValueTask DisposeAsync() => line.DisposeAsync();
    }
}
