using System.Text.Json;
using Microsoft.AspNetCore.SignalR;
using Microsoft.Extensions.Options;
using StackExchange.Redis;

namespace CookAlong.Web.Features.Live.Line;

/// <summary>
/// What is said to a run's screens is said to those of this server at once, and by Redis to those of the others. Nobody waits
/// for Redis: what it does not carry, the others read in the log at their next beat (<see cref="LiveScreens.TellOfOthers"/>).
/// What is said to all is this server's own affair: another does not restart because this one does.
/// </summary>
sealed class LineOverRedis(HeardElsewhere elsewhere, IOptions<JsonHubProtocolOptions> json, TimeProvider time, ILogger<DefaultHubLifetimeManager<LiveHub>> log)
    : DefaultHubLifetimeManager<LiveHub>(log)
{
    static readonly RedisChannel Channel = RedisChannel.Literal("cookalong:line");

    readonly ILogger own = log;
    readonly Guid me = Guid.CreateVersion7(time.GetUtcNow());
    readonly TaskCompletionSource joined = new(TaskCreationOptions.RunContinuationsAsynchronously);
    volatile ISubscriber? redis;

    JsonSerializerOptions Json => json.Value.PayloadSerializerOptions;

    /// <summary>Done once this server hears the others.</summary>
    public Task Joined => joined.Task;

    /// <exception cref="RedisException">It went away meanwhile.</exception>
    public async Task JoinAsync(ISubscriber line)
    {
        // One after the other, as they were said.
        (await line.SubscribeAsync(Channel)).OnMessage(said => Hear(said.Message!));
        redis = line;
        joined.TrySetResult();
    }

    public override Task SendGroupAsync(string groupName, string methodName, object?[] args, CancellationToken cancellationToken = default)
    {
        if (redis is { Multiplexer.IsConnected: true } line)
        {
            TellOthers(line, new Said(me, groupName, methodName, [.. args.Select(one => JsonSerializer.SerializeToElement(one, Json))]));
        }

        return base.SendGroupAsync(groupName, methodName, args, cancellationToken);
    }

    void TellOthers(ISubscriber line, Said said)
    {
        try
        {
            line.Publish(Channel, JsonSerializer.Serialize(said, Json), CommandFlags.FireAndForget);
        }
        catch (RedisException away)
        {
            own.LogWarning("Other servers could not be told: {Why}", away.Message);
        }
    }

    void Hear(string text)
    {
        var said = JsonSerializer.Deserialize<Said>(text, Json)!;
        if (said.Server == me)
        {
            return;
        }

        elsewhere.Note(said.Group, said.What, said.News);
        base.SendGroupAsync(said.Group, said.What, [.. said.News]).ContinueWith(
            sent => own.LogWarning(sent.Exception, "Screens of {Group} could not be told what another server said.", said.Group),
            CancellationToken.None,
            TaskContinuationOptions.OnlyOnFaulted,
            TaskScheduler.Default);
    }

    sealed record Said(Guid Server, string Group, string What, JsonElement[] News);
}
