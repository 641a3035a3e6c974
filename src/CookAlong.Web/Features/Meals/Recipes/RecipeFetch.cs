using System.Net;
using System.Net.Http.Headers;
using CookAlong.Intake.Recipes;
using CookAlong.Web.Security;

namespace CookAlong.Web.Features.Meals.Recipes;

/// <summary>
/// Fetches the page at an address that a person names: over http or https from the public internet only, looked at anew
/// for each of at most three redirects, within five seconds in all, at most two megabytes unpacked, and text only.
/// </summary>
/// <param name="sites">The only sites asked, with all names beneath them and at their usual ports; null = any.</param>
public sealed class RecipeFetch(IHttpClientFactory clients, TimeProvider time, IReadOnlyList<string>? sites)
{
    public const string Client = "recipe";

    /// <summary>Bytes after unpacking, so that a small file that swells is stopped while it does.</summary>
    public const int MostBytes = 2 * 1024 * 1024;

    public const int MostRedirects = 3;

    public static readonly TimeSpan Within = TimeSpan.FromSeconds(5);

    static readonly string[] texts = ["text/html", "application/xhtml+xml", "text/plain", "application/json", "application/ld+json"];

    public async Task<Fetched> GetAsync(string address, CancellationToken stop)
    {
        var typed = address.Trim();
        if (!Uri.TryCreate(typed.Contains("://", StringComparison.Ordinal) ? typed : $"https://{typed}", UriKind.Absolute, out var at))
        {
            return new Fetched.Not(WhyNotFetched.NoAddress, typed);
        }

        using var late = new CancellationTokenSource(Within, time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(late.Token, stop);
        try
        {
            return await FollowAsync(at, either.Token);
        }
        catch (OperationCanceledException) when (late.IsCancellationRequested && !stop.IsCancellationRequested)
        {
            return new Fetched.Not(WhyNotFetched.TooSlow, at.Host);
        }
        catch (HttpRequestException failed) when (failed.InnerException is NotPublicException)
        {
            return new Fetched.Not(WhyNotFetched.NotPublic, at.Host);
        }
        catch (Exception failed) when (failed is HttpRequestException or IOException or InvalidDataException)
        {
            return new Fetched.Not(WhyNotFetched.NoAnswer, at.Host);
        }
    }

    async Task<Fetched> FollowAsync(Uri at, CancellationToken stop)
    {
        using var client = clients.CreateClient(Client);
        for (var redirects = 0; ; redirects++)
        {
            if (!(at.Scheme == Uri.UriSchemeHttp || at.Scheme == Uri.UriSchemeHttps) || at.UserInfo != "")
            {
                return new Fetched.Not(WhyNotFetched.NoAddress, at.OriginalString);
            }

            if (sites is not null && !(at.IsDefaultPort && sites.Any(site => IsWithin(at.IdnHost, site))))
            {
                return new Fetched.Not(WhyNotFetched.NotAllowed, at.Host);
            }

            using var answer = await client.GetAsync(at, HttpCompletionOption.ResponseHeadersRead, stop);
            if (answer.StatusCode is HttpStatusCode.MovedPermanently or HttpStatusCode.Found or HttpStatusCode.SeeOther or HttpStatusCode.TemporaryRedirect or HttpStatusCode.PermanentRedirect)
            {
                if (redirects == MostRedirects || answer.Headers.Location is not { } next || !Uri.TryCreate(at, next, out var further))
                {
                    return new Fetched.Not(WhyNotFetched.TooManyRedirects, at.Host);
                }

                at = further;
                continue;
            }

            return answer.IsSuccessStatusCode ? await ReadAsync(at, answer.Content, stop) : new Fetched.Not(WhyNotFetched.Refused, $"{at.Host}: {(int)answer.StatusCode}");
        }
    }

    static bool IsWithin(string host, string site) =>
        host.Equals(site, StringComparison.OrdinalIgnoreCase) || host.EndsWith("." + site, StringComparison.OrdinalIgnoreCase);

    static async Task<Fetched> ReadAsync(Uri at, HttpContent content, CancellationToken stop)
    {
        if (content.Headers.ContentType is { MediaType: { } kind } && !texts.Contains(kind, StringComparer.OrdinalIgnoreCase))
        {
            return new Fetched.Not(WhyNotFetched.NoText, kind);
        }

        await using var body = await content.ReadAsStreamAsync(stop);
        var read = new MemoryStream();
        var buffer = new byte[16 * 1024];
        while (await body.ReadAsync(buffer, stop) is > 0 and var count)
        {
            if (read.Length + count > MostBytes)
            {
                return new Fetched.Not(WhyNotFetched.TooLarge, at.Host);
            }

            read.Write(buffer, 0, count);
        }

        return new Fetched.Page(at, PageBytes.Text(read.ToArray(), content.Headers.ContentType?.CharSet));
    }

    /// <summary>For each line a new look at where it leads; nothing is kept of one visit for the next.</summary>
    internal static SocketsHttpHandler Handler(PublicAddresses addresses) => new()
    {
        AllowAutoRedirect = false,
        UseCookies = false,
        UseProxy = false,
        AutomaticDecompression = DecompressionMethods.All,
        MaxResponseHeadersLength = 32,
        PooledConnectionLifetime = TimeSpan.Zero,
        ConnectCallback = addresses.ConnectAsync,
    };

    internal static void Introduce(HttpClient client)
    {
        client.DefaultRequestHeaders.UserAgent.Add(new ProductInfoHeaderValue("CookAlong", null));
        client.DefaultRequestHeaders.Accept.ParseAdd("text/html, application/ld+json;q=0.9, text/plain;q=0.5");
    }
}
