using System.Reflection;
using CookAlong.Web.Features.Api.Tokens;
using CookAlong.Web.Features.Household;
using CookAlong.Web.Security;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.OpenApi;

namespace CookAlong.Web.Features.Api.Docs;

/// <summary>
/// The API described by itself (OpenAPI 3.1), and a page that shows the description. All of it comes from this server. The page's script
/// lies in the package Scalar.AspNetCore, which is read when somebody opens the page and not before.
/// </summary>
static class ApiDocs
{
    const string Document = "/api/openapi.json";
    const string Reader = "Scalar.AspNetCore";
    const string Script = "ScalarStaticAssets.scalar.js";

    static readonly string[] problem = ["type", "title", "detail", "remedy"];

    public static IServiceCollection AddApiDocs(this IServiceCollection services) => services.AddOpenApi(options =>
    {
        options.OpenApiVersion = OpenApiSpecVersion.OpenApi3_1;
        options.ShouldInclude = endpoint => endpoint.RelativePath?.StartsWith(ApiFeature.Root[1..], StringComparison.Ordinal) == true;
        options.AddDocumentTransformer((document, _, _) =>
        {
            Introduce(document);
            return Task.CompletedTask;
        });
        options.AddOperationTransformer((operation, context, _) =>
        {
            Secure(operation, context.Document!, context.Description.ActionDescriptor.EndpointMetadata.OfType<NeedsScope>().Single().Scope);
            return Task.CompletedTask;
        });
    });

    public static void MapApiDocs(this WebApplication app)
    {
        app.MapOpenApi(Document).RequireAuthorization(policy => policy
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

    static void Introduce(OpenApiDocument document)
    {
        document.Info = new OpenApiInfo
        {
            Title = "CookAlong",
            Version = "1",
            Description = $"Meals, plans, runs, readings and shopping lists of this household. A host makes tokens on the page /account. Every error is problem details (RFC 9457) with a remedy; {ApiFeature.Problems} lists them. At most {ApiFeature.RequestsAMinute} requests a minute from one address, {RequestSize.Largest / 1024 / 1024} MB each.",
        };
        document.Components ??= new OpenApiComponents();
        document.Components.SecuritySchemes ??= new Dictionary<string, IOpenApiSecurityScheme>();
        document.Components.SecuritySchemes[TokenSignIn.Name] = new OpenApiSecurityScheme
        {
            Type = SecuritySchemeType.Http,
            Scheme = "bearer",
            Description = "The header Authorization: Bearer TOKEN. Scopes: " + string.Join("; ", ApiScope.All.Select(scope => $"{scope.Name} = {scope.Words}")),
        };
    }

    static void Secure(OpenApiOperation operation, OpenApiDocument document, string scope)
    {
        operation.Description = string.Join(' ', new[] { operation.Description, $"Scope: {scope}." }.Where(words => words?.Length > 0));
        // In OpenAPI 3.1 any scheme may name the roles it needs (4.8.30).
        operation.Security = [new OpenApiSecurityRequirement { [new OpenApiSecuritySchemeReference(TokenSignIn.Name, document)] = [scope] }];
        operation.Responses ??= [];
        operation.Responses["default"] = new OpenApiResponse
        {
            Description = "Problem details: type, title, status, detail, remedy.",
            Content = new Dictionary<string, OpenApiMediaType>
            {
                ["application/problem+json"] = new()
                {
                    Schema = new OpenApiSchema
                    {
                        Type = JsonSchemaType.Object,
                        Properties = problem.ToDictionary(name => name, _ => (IOpenApiSchema)new OpenApiSchema { Type = JsonSchemaType.String }),
                    },
                },
            },
        };
    }
}
