using System.Collections.Concurrent;
using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Telemetry;

namespace CookAlong.Web.Features.Live.Outward;

/// <summary>Every receiver of a run's calls beyond the page, and how it went last.</summary>
public sealed class WaysOut(HouseSettings settings, PushSubscriptions subscriptions, PushKeys keys, IHttpClientFactory clients, TimeProvider time)
{
    readonly ConcurrentDictionary<string, WayState> states = new();

    /// <summary>The household's own: they belong to no run.</summary>
    public IReadOnlyList<IWayOut> OfHouse { get; } =
    [
        .. settings.Webhook is { } webhook ? [new Webhook(webhook, settings.WebhookSecret, clients, time)] : Array.Empty<IWayOut>(),
        .. settings.Broker is { } broker ? [new Broker(broker, settings.WebhookSecret, time)] : Array.Empty<IWayOut>(),
    ];

    /// <summary>A way by the name that deliveries have for it; null when it is there no more.</summary>
    public async Task<IWayOut?> FindAsync(RunId run, string id, CancellationToken stop) =>
        OfHouse.FirstOrDefault(way => way.Id == id)
        ?? (await subscriptions.OfAsync(run, stop)).Where(one => PushSubscriptions.WayOf(one.Id) == id).Select(one => Of(one)).FirstOrDefault();

    /// <summary>Browsers of this person that asked to be called.</summary>
    public async Task<IReadOnlyList<IWayOut>> OfAsync(RunId run, PersonId person, CancellationToken stop) =>
        [.. (await subscriptions.OfAsync(run, stop)).Where(one => one.Person == person.Value).Select(one => Of(one))];

    public WayState StateOf(string id) => states.GetValueOrDefault(id, WayState.Untried);

    /// <summary>What of the household's own could not be reached when it was last tried.</summary>
    public IEnumerable<IWayOut> NotReached => OfHouse.Where(way => StateOf(way.Id).Failure is not null);

    /// <returns>Null when it arrived.</returns>
    public async Task<NotReachedException?> TrySendAsync(IWayOut way, IReadOnlyList<OutwardCall> calls, CancellationToken stop)
    {
        try
        {
            await way.SendAsync(calls, stop);
            states[way.Id] = new WayState(time.GetUtcNow(), Failure: null);
            Measures.Delivered(KindOf(way), arrived: true);
            return null;
        }
        catch (NotReachedException failed)
        {
            states[way.Id] = StateOf(way.Id) with { Failure = failed.Message };
            Measures.Delivered(KindOf(way), arrived: false);
            return failed;
        }
    }

    // "push:" is followed by whose browser it is, which is nobody's to know.
    static string KindOf(IWayOut way) => way.Id.Split(':')[0];

    PushedBrowser Of(Data.PushSubscriptionRow one) => new(one, keys, settings.Contact, clients);
}

/// <param name="Reached">When it last was; null = never since the server started.</param>
/// <param name="Failure">Why it could not be reached when it was last tried; null when it could.</param>
public sealed record WayState(DateTimeOffset? Reached, string? Failure)
{
    public static WayState Untried { get; } = new(null, null);
}
