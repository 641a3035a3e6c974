using System.Text.Json;
using CookAlong.Domain.Runs;
using StackExchange.Redis;

namespace CookAlong.Web.Features.Live.Line;

/// <summary>
/// Joins this server to the others of the household, however often Redis goes and comes back; tells them which screens are open
/// here, and hears it of theirs: a phone that another server holds is not silent.
/// </summary>
sealed class OtherServers(ConfigurationOptions address, LineOverRedis line, OpenScreens open, TimeProvider time, ILogger<OtherServers> log) : BackgroundService
{
    static readonly TimeSpan Beat = TimeSpan.FromSeconds(1);

    /// <summary>A server that died says nothing any more.</summary>
    static readonly TimeSpan GoneAfter = TimeSpan.FromSeconds(5);

    static readonly RedisChannel Channel = RedisChannel.Literal("cookalong:screens");

    readonly Guid me = Guid.CreateVersion7(time.GetUtcNow());

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        await using var redis = await ConnectionMultiplexer.ConnectAsync(address);
        var heard = redis.GetSubscriber();
        using var clock = new PeriodicTimer(Beat, time);
        var isJoined = false;
        do
        {
            // While Redis is away nothing is heard of anybody; that does not make phones silent.
            if (!redis.IsConnected)
            {
                continue;
            }

            try
            {
                if (!isJoined)
                {
                    await heard.SubscribeAsync(Channel, (_, said) => Hear(said!));
                    await line.JoinAsync(heard);
                    isJoined = true;
                }

                await heard.PublishAsync(Channel, JsonSerializer.Serialize(new Said(me, [.. open.Own.SelectMany(run => run.Select(screen => Line.Of(run.Key, screen)))])));
                open.DropSilent(GoneAfter);
            }
            catch (Exception away) when (away is RedisException or TimeoutException)
            {
                log.LogWarning("Other servers could not be told of the screens here: {Why}", away.Message);
            }
        }
        while (await clock.WaitForNextTickAsync(stoppingToken));
    }

    void Hear(string text)
    {
        var said = JsonSerializer.Deserialize<Said>(text)!;
        if (said.Server != me)
        {
            open.Hear(said.Server, said.Screens.ToLookup(line => new RunId(line.Run), line => new ScreenHere(new PersonId(line.Person), new ScreenState(line.IsBoard, line.IsArmed, line.IsAwake))));
        }
    }

    sealed record Said(Guid Server, Line[] Screens);

    sealed record Line(Guid Run, Guid Person, bool IsBoard, bool IsArmed, bool IsAwake)
    {
        public static Line Of(RunId run, ScreenHere screen) => new(run.Value, screen.Person.Value, screen.State.IsBoard, screen.State.IsArmed, screen.State.IsAwake);
    }
}
