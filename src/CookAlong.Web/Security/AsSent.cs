using System.Net;

namespace CookAlong.Web.Security;

/// <summary>A request as it reached this machine, before a proxy's word about it was believed or not.</summary>
/// <param name="From">Who opened the connection: the browser, or a proxy.</param>
/// <param name="For">X-Forwarded-For; "" = none. Proto, Host, Prefix and Forwarded (RFC 7239) likewise.</param>
public sealed record AsSent(IPAddress? From, string Scheme, string For, string Proto, string Host, string Prefix, string Forwarded)
{
    public static void Note(WebApplication app) => app.Use((http, next) =>
    {
        string Header(string name) => http.Request.Headers[name].ToString();
        http.Features.Set(new AsSent(
            http.Connection.RemoteIpAddress is { } address ? HomeNames.Plain(address) : null, http.Request.Scheme,
            Header("X-Forwarded-For"), Header("X-Forwarded-Proto"), Header("X-Forwarded-Host"), Header("X-Forwarded-Prefix"), Header("Forwarded")));
        return next(http);
    });
}
