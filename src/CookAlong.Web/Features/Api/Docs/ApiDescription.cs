using CookAlong.Web.Features.Api.Tokens;
using CookAlong.Web.Security;
using Microsoft.AspNetCore.Http.Extensions;
using Microsoft.AspNetCore.Mvc.ApiExplorer;
using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;

namespace CookAlong.Web.Features.Api.Docs;

/// <summary>
/// The API described by itself (OpenAPI 3.1). Apart from the server's own parts, and made anew each time: few households ever ask, and
/// the packages that describe are loaded when one does and not before.
/// </summary>
static class ApiDescription
{
    const string Name = "v1";

    static readonly string[] problem = ["type", "title", "detail", "remedy"];

    public static async Task WriteAsync(HttpContext http)
    {
        await using var parts = Parts(http.RequestServices);
        var document = await parts.GetRequiredKeyedService<IOpenApiDocumentProvider>(Name).GetOpenApiDocumentAsync(http.RequestAborted);
        document.Servers = [new OpenApiServer { Url = UriHelper.BuildAbsolute(http.Request.Scheme, http.Request.Host, http.Request.PathBase) }];
        await Results.Text(await document.SerializeAsJsonAsync(OpenApiSpecVersion.OpenApi3_1, http.RequestAborted), "application/json").ExecuteAsync(http);
    }

    static ServiceProvider Parts(IServiceProvider server) => new ServiceCollection()
        .AddSingleton(server.GetRequiredService<IApiDescriptionGroupCollectionProvider>())
        .AddSingleton(server.GetRequiredService<IHostEnvironment>())
        .AddOpenApi(Name, Describe)
        .BuildServiceProvider();

    static void Describe(OpenApiOptions options)
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
    }

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
