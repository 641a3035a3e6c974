using CookAlong.Web.Security;
using Microsoft.AspNetCore.Http.Features;

namespace CookAlong.Web.Features.Health.Seen;

/// <summary>A request in words: what it was, what a proxy said of it, whether that was believed, and the remedy.</summary>
static class SeenWords
{
    public static IReadOnlyList<(string Of, string Is)> Facts(HttpContext http, HomeHttps https, HouseSettings settings)
    {
        var sent = Sent(http);
        var request = http.Request;
        return
        [
            ("Scheme", request.Scheme),
            ("Name and port", request.Host.Value ?? ""),
            ("Path before all addresses", request.PathBase.HasValue ? request.PathBase.Value! : "none"),
            ("Whoever asks", http.Connection.RemoteIpAddress is { } address ? HomeNames.Plain(address).ToString() : "unknown"),
            ("Connected from", sent.From?.ToString() ?? "unknown"),
            ("Protocol", request.Protocol),
            ("X-Forwarded-For", Or(sent.For)),
            ("X-Forwarded-Proto", Or(sent.Proto)),
            ("This household’s authority", https.IsOn ? $"on; certificate until {https.Current?.NotAfter:yyyy-MM-dd}" : "off"),
            ("Plain HTTP", settings.IsHttpsOnly ? "answers nothing but the page that installs the authority" : "answers everything"),
        ];
    }

    public static IEnumerable<Finding> Findings(HttpContext http)
    {
        var (sent, request) = (Sent(http), http.Request);
        yield return (sent.For + sent.Proto).Length == 0 ? new("Proxy", Grade.Well, "No proxy has said anything; the request is taken as it came.")
            : IsBelieved(http) ? new("Proxy", Grade.Well, $"What the proxy at {sent.From} said was believed: {request.Scheme}, from {http.Connection.RemoteIpAddress}.")
            : new("Proxy", Grade.Wrong, $"{sent.From} passed the request on, and was not believed, because it was not named. If it is your proxy, start the server with --proxies {sent.From} (COOKALONG_PROXIES). Until then everybody seems to come from there, and cookies are not marked for HTTPS only.");
        if (sent.Forwarded.Length > 0)
        {
            yield return new("Forwarded", Grade.Heed, "The header Forwarded is not read. Let the proxy set X-Forwarded-For and X-Forwarded-Proto, as deploy/nginx.conf does.");
        }

        if (sent.Host.Length > 0 && !string.Equals(sent.Host, request.Host.Value, StringComparison.OrdinalIgnoreCase))
        {
            yield return new("Name", Grade.Wrong, $"The proxy was asked for {sent.Host}, and asks here for {request.Host}. Let it pass the header Host on as it came; otherwise forms and sockets are refused as those of another site.");
        }

        if (sent.Prefix.Trim('/').Length > 0 && !string.Equals(sent.Prefix.TrimEnd('/'), request.PathBase.Value, StringComparison.OrdinalIgnoreCase))
        {
            yield return new("Path", Grade.Wrong, $"The proxy takes {sent.Prefix} off. Let it pass the whole path on, and start the server with --base-path {sent.Prefix.TrimEnd('/')}.");
        }

        yield return request.IsHttps ? new("HTTPS", Grade.Well, "The request came over HTTPS.")
            : new("HTTPS", Grade.Heed, "The request came over plain HTTP. The page “Secure this kitchen” says what that leaves out, and how to have it.");
    }

    static AsSent Sent(HttpContext http) => http.Features.GetRequiredFeature<AsSent>();

    // What is believed is taken off the header, entry by entry.
    static bool IsBelieved(HttpContext http) =>
        http.Request.Headers["X-Forwarded-For"].ToString().Length < Sent(http).For.Length || http.Request.Headers["X-Forwarded-Proto"].ToString().Length < Sent(http).Proto.Length;

    static string Or(string text) => text.Length > 0 ? text : "not sent";
}
