namespace CookAlong.Web.Security;

/// <summary>
/// Refuses what another site makes a browser send: changes, and WebSockets, which the browser's cross-origin rules do not cover at all.
/// Programs that are no browsers send neither header and carry nobody's cookie by accident.
/// </summary>
static class SameOrigin
{
    public static void UseSameOrigin(this WebApplication app) => app.Use((http, next) =>
    {
        var isSafe = HttpMethods.IsGet(http.Request.Method) || HttpMethods.IsHead(http.Request.Method) || HttpMethods.IsOptions(http.Request.Method);
        // A WebSocket opens with GET (HTTP/1.1) or with CONNECT (HTTP/2).
        var opensSocket = http.Request.Headers.Upgrade.Count > 0 || HttpMethods.IsConnect(http.Request.Method);
        if ((isSafe && !opensSocket) || IsSame(http.Request))
        {
            return next(http);
        }

        http.Response.StatusCode = StatusCodes.Status403Forbidden;
        return Task.CompletedTask;
    });

    // Host and port only: behind a proxy that ends TLS the scheme seen here may differ from the browser's.
    static bool IsSame(HttpRequest request)
    {
        var origin = request.Headers.Origin.ToString();
        return (origin.Length == 0 || (Uri.TryCreate(origin, UriKind.Absolute, out var from) && string.Equals(from.Authority, Authority(request, from), StringComparison.OrdinalIgnoreCase)))
            && request.Headers["Sec-Fetch-Site"].ToString() is not "cross-site";
    }

    // An origin leaves out its scheme's usual port; so must the host it is compared with.
    static string Authority(HttpRequest request, Uri from) =>
        request.Host.Port is { } port && !(from.IsDefaultPort && port == from.Port) ? $"{request.Host.Host}:{port}" : request.Host.Host;
}
