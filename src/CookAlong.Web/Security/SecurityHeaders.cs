namespace CookAlong.Web.Security;

/// <summary>Marks an endpoint whose page is built with the component library, which writes inline styles.</summary>
public sealed record PlanningPage;

/// <summary>Marks the page that asks the same server over HTTPS, from wherever it was opened, whether this device trusts it.</summary>
public sealed record AsksOverHttps(int Port);

/// <summary>Headers that tell browsers what a page may do. Live, join and sign-in pages get the strict policy, planning pages may style inline.</summary>
static class SecurityHeaders
{
    const long YearSeconds = 31_536_000;

    // What no page here uses. The live pages do use the wake lock.
    const string Permissions = "accelerometer=(), bluetooth=(), camera=(), display-capture=(), geolocation=(), gyroscope=(), hid=(), magnetometer=(), microphone=(), midi=(), payment=(), serial=(), usb=()";

    /// <param name="coversSubdomains">HTTPS is meant for every name beneath this one, too.</param>
    public static void UseSecurityHeaders(this WebApplication app, bool coversSubdomains) => app.Use((http, next) =>
    {
        // Set at the last moment, because the handler of exceptions clears what was set before.
        http.Response.OnStarting(() =>
        {
            Set(http, coversSubdomains);
            return Task.CompletedTask;
        });
        return next(http);
    });

    /// <param name="host">Host and port of the request, already known to be a plain name or address.</param>
    /// <param name="asks">Another origin that the page may ask; "" = none.</param>
    public static string ContentPolicy(bool isPlanning, string host, string asks = "") => string.Join("; ",
        "default-src 'none'",
        "script-src 'self'",
        isPlanning ? "style-src 'self' 'unsafe-inline'" : "style-src 'self'",
        "img-src 'self' data:",
        "font-src 'self'",
        "media-src 'self'",
        "manifest-src 'self'",
        "worker-src 'self'",
        // Older tablets do not count WebSockets of the same host as 'self'.
        $"connect-src 'self' ws://{host} wss://{host}{(asks.Length > 0 ? " " + asks : "")}",
        // The planning pages' framework needs its base element; the live pages have none.
        isPlanning ? "base-uri 'self'" : "base-uri 'none'",
        "form-action 'self'",
        "frame-ancestors 'none'",
        "object-src 'none'");

    static void Set(HttpContext http, bool coversSubdomains)
    {
        var headers = http.Response.Headers;
        var isPlanning = http.GetEndpoint()?.Metadata.GetMetadata<PlanningPage>() is not null;
        var isPlain = HostNames.Answers(http.Request.Host.Host, ["*"]);
        var asks = isPlain && http.GetEndpoint()?.Metadata.GetMetadata<AsksOverHttps>() is { } over ? $"https://{new HostString(http.Request.Host.Host, over.Port)}" : "";
        headers.ContentSecurityPolicy = ContentPolicy(isPlanning, isPlain ? http.Request.Host.ToUriComponent() : "localhost", asks);
        headers.XContentTypeOptions = "nosniff";
        headers.XFrameOptions = "DENY";
        // Not "no-referrer": with it browsers send forms with "Origin: null", and every form here would be refused.
        headers["Referrer-Policy"] = "same-origin";
        headers["Permissions-Policy"] = Permissions;
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";

        // Within the home plain HTTP stays beside HTTPS under the same name, for devices that do not trust the household's authority yet.
        // Told to keep to HTTPS, a browser would ask the plain port for it, and get nothing.
        if (http.Request.IsHttps && !HostNames.IsOfHome(http.Request.Host.Host) && Uri.CheckHostName(http.Request.Host.Host) == UriHostNameType.Dns)
        {
            headers.StrictTransportSecurity = $"max-age={YearSeconds}{(coversSubdomains ? "; includeSubDomains" : "")}";
        }

        // Pages show the household; a shared tablet's cache must not. The live pages' fragments set their own.
        if (headers.CacheControl.Count == 0 && http.Response.ContentType?.StartsWith("text/html", StringComparison.OrdinalIgnoreCase) == true)
        {
            headers.CacheControl = "no-store";
        }
    }
}
