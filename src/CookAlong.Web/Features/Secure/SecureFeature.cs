using System.Net;
using CookAlong.Web.Security;
using Microsoft.AspNetCore.Http.HttpResults;

namespace CookAlong.Web.Features.Secure;

/// <summary>
/// The page that brings the household's authority to a device. Open to everybody on the home network: a guest's phone may want it too,
/// and the certificate is no secret. What matters is that it is the right one, hence the fingerprint.
/// </summary>
static class SecureFeature
{
    public const string Path = "/secure";

    public static void MapSecure(this WebApplication app)
    {
        var port = app.Services.GetRequiredService<HouseSettings>().HttpsPort;
        var secure = app.MapGroup(Path);
        secure.MapGet("", Page).WithMetadata(new AsksOverHttps(port));
        secure.MapGet("/authority.crt", (HomeHttps https) => https.Authority is { } authority
            ? Results.File(authority.Public, "application/x-x509-ca-cert", "cookalong.crt") : Results.NotFound());
        secure.MapGet("/authority.mobileconfig", (HomeHttps https) => https.Authority is { } authority
            ? Results.Text(Profile.Of(authority), "application/x-apple-aspen-config") : Results.NotFound());

        // Whoever can read this over HTTPS trusts the certificate. It says nothing else, so every page may ask it.
        secure.MapGet("/trusted", (HttpContext http) =>
        {
            http.Response.Headers.AccessControlAllowOrigin = "*";
            return Results.Text("trusted");
        });
    }

    static RazorComponentResult<SecurePage> Page(HttpContext http, HomeHttps https, HouseSettings settings)
    {
        var host = http.Request.Host;
        // "This very machine" means nothing to the phone that scans it.
        var name = host.Host is "localhost" || (IPAddress.TryParse(host.Host, out var address) && IPAddress.IsLoopback(address)) ? https.Names.Addresses.FirstOrDefault(one => !IPAddress.IsLoopback(one))?.ToString() ?? host.Host : host.Host;
        return new(new Dictionary<string, object?>
        {
            [nameof(SecurePage.Https)] = https,
            [nameof(SecurePage.IsSecure)] = http.Request.IsHttps,
            [nameof(SecurePage.Plain)] = $"http://{(PlainPort(http, settings) is { } port ? new HostString(name, port) : new HostString(name))}{http.Request.PathBase}",
            [nameof(SecurePage.Secure)] = $"https://{new HostString(host.Host, settings.HttpsPort)}{http.Request.PathBase}",
            [nameof(SecurePage.Kind)] = Devices.Of(http.Request.Headers.UserAgent.ToString()),
        });
    }

    static int? PlainPort(HttpContext http, HouseSettings settings) => !http.Request.IsHttps ? http.Request.Host.Port
        : settings.Urls.Split(';').Select(url => BindingAddress.Parse(url)).FirstOrDefault(one => one.Scheme == Uri.UriSchemeHttp)?.Port;
}
