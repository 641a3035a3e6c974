using System.Text;

namespace CookAlong.Web.Features.Live.Outward;

/// <summary>Posts calls as JSON to an address of the household; with a secret the headers of <see cref="Seal"/> sign it.</summary>
public sealed class Webhook(Uri address, string? secret, IHttpClientFactory clients, TimeProvider time) : IWayOut
{
    public const string Client = "webhook";

    public string Id => "webhook";

    public async Task SendAsync(IReadOnlyList<OutwardCall> calls, CancellationToken stop)
    {
        var now = time.GetUtcNow();
        var body = OutwardJson.Of(calls, now);
        using var request = new HttpRequestMessage(HttpMethod.Post, address) { Content = new StringContent(body, Encoding.UTF8, "application/json") };
        foreach (var (name, value) in Seal.Of(secret, body, now))
        {
            request.Headers.Add(name, value);
        }

        try
        {
            using var client = clients.CreateClient(Client);
            using var answer = await client.SendAsync(request, stop);
            if (!answer.IsSuccessStatusCode)
            {
                throw new NotReachedException($"The web hook answered {(int)answer.StatusCode}.");
            }
        }
        catch (HttpRequestException failed)
        {
            throw new NotReachedException($"The web hook could not be reached: {failed.Message}", failed);
        }
        catch (TaskCanceledException late) when (!stop.IsCancellationRequested)
        {
            throw new NotReachedException("The web hook did not answer in time.", late);
        }
    }
}
