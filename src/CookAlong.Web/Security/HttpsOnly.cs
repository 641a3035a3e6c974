using CookAlong.Web.Features.Api;
using CookAlong.Web.Features.Secure;

namespace CookAlong.Web.Security;

/// <summary>
/// Leaves plain HTTP to what brings a device to HTTPS. Pages that a person opens lead there; whatever a program or a script sends is
/// refused, not led on, since it has already gone over the air in the clear (OWASP ASVS 5.0.0, 4.1.2 and 12.2.1).
/// </summary>
static class HttpsOnly
{
    /// <summary>The page that installs the authority, what it is drawn with, and what watches the server.</summary>
    static readonly PathString[] plain = [SecureFeature.Path, "/health", "/css", "/js", "/fonts", "/icon.svg", "/manifest.webmanifest"];

    public static void UseHttpsOnly(this WebApplication app, HouseSettings settings)
    {
        if (settings.IsHttpsOnly)
        {
            app.Use((http, next) => http.Request.IsHttps || plain.Any(path => http.Request.Path.StartsWithSegments(path)) ? next(http) : AnswerAsync(http, settings.HttpsPort));
        }
    }

    static Task AnswerAsync(HttpContext http, int port)
    {
        var request = http.Request;
        var isPage = HttpMethods.IsGet(request.Method) && request.Headers.Upgrade.Count == 0 && request.Headers.Accept.ToString().Contains("text/html", StringComparison.OrdinalIgnoreCase);
        if (isPage)
        {
            // Not for good: a household may turn it off again.
            http.Response.Redirect($"https://{new HostString(request.Host.Host, port)}{request.PathBase}{request.Path}{request.QueryString}", permanent: false, preserveMethod: true);
            return Task.CompletedTask;
        }

        if (ApiFeature.IsAsked(http))
        {
            return ApiProblem.HttpsOnly.Answer().ExecuteAsync(http);
        }

        http.Response.StatusCode = StatusCodes.Status403Forbidden;
        return http.Response.WriteAsync($"This kitchen takes that over HTTPS only, on port {port}.");
    }
}
