using System.Reflection;
using CookAlong.Web.Features.Api.Tokens;
using CookAlong.Web.Features.Household;
using CookAlong.Web.Security;
using Microsoft.AspNetCore.Authentication.Cookies;

namespace CookAlong.Web.Features.Api.Docs;

/// <summary>
/// Where the API's description is, and a page that shows it. All of it comes from this server. The page's script lies in the package
/// Scalar.AspNetCore, which is read when somebody opens the page and not before.
/// </summary>
static class ApiDocs
{
    const string Document = "/api/openapi.json";
    const string Reader = "Scalar.AspNetCore";
    const string Script = "ScalarStaticAssets.scalar.js";

    public static IServiceCollection AddApiDocs(this IServiceCollection services) => services.AddEndpointsApiExplorer();

    public static void MapApiDocs(this WebApplication app)
    {
        // By a lambda: the method itself would be asked for its attributes, and they name what it needs.
        app.MapGet(Document, http => ApiDescription.WriteAsync(http)).ExcludeFromDescription().RequireAuthorization(policy => policy
            .AddAuthenticationSchemes(CookieAuthenticationDefaults.AuthenticationScheme, TokenSignIn.Name).RequireRole(Visitor.HostRole));
        var pages = app.MapGroup("/api/docs").RequireAuthorization(HouseholdFeature.HostPolicy).ExcludeFromDescription();
        // Relaxed like the planning pages: the reader's script styles inline. It may ask this server alone, as everywhere.
        pages.MapGet("", () => Results.Text(Page, "text/html; charset=utf-8")).WithMetadata(new PlanningPage());
        pages.MapGet("/reader.js", (HttpContext http) =>
        {
            // Packed by gzip in the package; every browser that can run it can unpack it.
            http.Response.Headers.ContentEncoding = "gzip";
            http.Response.Headers.CacheControl = "private, max-age=86400";
            return Results.Stream(Assembly.Load(Reader).GetManifestResourceStream(Script)!, "text/javascript");
        });
    }

    // Light alone, with colours dark enough to be read (WCAG 2.2, 1.4.3); the reader's own are not.
    // Fonts, telemetry and whatever else the reader would fetch from elsewhere are off; the content policy would not let it anyway.
    const string Page = """
        <!DOCTYPE html>
        <html lang="en">
        <head>
          <meta charset="utf-8">
          <meta name="viewport" content="width=device-width, initial-scale=1">
          <title>The API</title>
        </head>
        <body>
          <noscript>Scripts are off in this browser; the description itself is at <a href="/api/openapi.json">/api/openapi.json</a>.</noscript>
          <script id="api-reference" data-url="/api/openapi.json" data-configuration='{"withDefaultFonts":false,"telemetry":false,"hideClientButton":true,"persistAuth":false,"agent":{"disabled":true},"mcp":{"disabled":true},"showDeveloperTools":"never","forceDarkModeState":"light","hideDarkModeToggle":true,"customCss":".light-mode{--scalar-color-3:#575757;--scalar-sidebar-search-color:#575757;--scalar-color-red:#a8001a;--scalar-color-orange:#8a3408;--scalar-color-green:#05662c;--scalar-color-blue:#0a529b;--scalar-color-yellow:#7a5200;--scalar-color-purple:#5b3aa8}"}'></script>
          <script src="/api/docs/reader.js"></script>
        </body>
        </html>
        """;
}
