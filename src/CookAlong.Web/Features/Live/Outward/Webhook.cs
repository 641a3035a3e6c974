using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace CookAlong.Web.Features.Live.Outward;

/// <summary>
/// Posts calls as JSON to an address of the household. With a secret the body is signed: the header CookAlong-Signature is
/// "sha256=" and the HMAC-SHA-256 (RFC 2104) of the time in CookAlong-Sent, a full stop and the body, in hexadecimal.
/// </summary>
public sealed class Webhook(Uri address, string? secret, IHttpClientFactory clients, TimeProvider time) : IWayOut
{
    public const string Client = "webhook";

    public string Id => "webhook";

    public async Task SendAsync(IReadOnlyList<OutwardCall> calls, CancellationToken stop)
    {
        var now = time.GetUtcNow();
        var body = OutwardJson.Of(calls, now);
        using var request = new HttpRequestMessage(HttpMethod.Post, address) { Content = new StringContent(body, Encoding.UTF8, "application/json") };
        if (secret is not null)
        {
            var sent = now.ToUnixTimeSeconds().ToString(CultureInfo.InvariantCulture);
            request.Headers.Add("CookAlong-Sent", sent);
            request.Headers.Add("CookAlong-Signature", $"sha256={Signature(secret, sent, body)}");
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

    public static string Signature(string secret, string sent, string body) =>
        Convert.ToHexStringLower(HMACSHA256.HashData(Encoding.UTF8.GetBytes(secret), Encoding.UTF8.GetBytes($"{sent}.{body}")));
}
