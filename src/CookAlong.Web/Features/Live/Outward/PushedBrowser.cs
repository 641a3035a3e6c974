using System.Net;
using System.Text.Json;
using CookAlong.Web.Data;
using Lib.Net.Http.WebPush;
using Lib.Net.Http.WebPush.Authentication;

namespace CookAlong.Web.Features.Live.Outward;

/// <summary>One browser, by way of its push service (Web Push, RFC 8030, encrypted by RFC 8291).</summary>
public sealed class PushedBrowser(PushSubscriptionRow subscription, PushKeys keys, string contact, IHttpClientFactory clients) : IWayOut
{
    public const string Client = "push";

    /// <summary>A call that is ten minutes old helps nobody who unlocks a phone then, in seconds.</summary>
    const int GoodFor = 600;

    public string Id => PushSubscriptions.WayOf(subscription.Id);

    public async Task SendAsync(IReadOnlyList<OutwardCall> calls, CancellationToken stop)
    {
        var pair = await keys.OfAsync(stop);
        using var vapid = new VapidAuthentication(pair.Public, pair.Private) { Subject = contact };
        var receiver = new PushSubscription { Endpoint = subscription.Endpoint };
        receiver.SetKey(PushEncryptionKeyName.P256DH, subscription.P256dh);
        receiver.SetKey(PushEncryptionKeyName.Auth, subscription.Auth);
        var isUrgent = calls.Any(call => call.Priority == "high");
        var message = new PushMessage(JsonSerializer.Serialize(new
        {
            title = OutwardJson.Say(calls),
            run = subscription.Run,
            call = calls[0].Call,
        }))
        {
            TimeToLive = GoodFor,
            Urgency = isUrgent ? PushMessageUrgency.High : PushMessageUrgency.Normal,
        };
        try
        {
            await new PushServiceClient(clients.CreateClient(Client)).RequestPushMessageDeliveryAsync(receiver, message, vapid, stop);
        }
        catch (PushServiceClientException refused)
        {
            throw new NotReachedException($"The push service answered {(int)refused.StatusCode}.", refused)
            {
                IsGone = refused.StatusCode is HttpStatusCode.NotFound or HttpStatusCode.Gone,
            };
        }
        catch (HttpRequestException failed)
        {
            throw new NotReachedException($"The push service could not be reached: {failed.Message}", failed);
        }
        catch (TaskCanceledException late) when (!stop.IsCancellationRequested)
        {
            throw new NotReachedException("The push service did not answer in time.", late);
        }
    }
}
