using CookAlong.Web.Features.Api.Docs;
using CookAlong.Web.Features.Api.Tokens;
using CookAlong.Web.Features.Household;
using Microsoft.AspNetCore.Authentication;

namespace CookAlong.Web.Features.Api;

/// <summary>The way in for programs: meals, plans, runs, readings and shopping lists as JSON, by tokens that a host makes.</summary>
public static class ApiFeature
{
    public const string Root = "/api/v1";
    public const string Problems = "/api/problems";

    /// <summary>From one address. A board once a second on five screens leaves half of it.</summary>
    internal const int RequestsAMinute = 600;

    static readonly AddressLimit limit = new("api", RequestsAMinute);

    public static IServiceCollection AddApi(this IServiceCollection services)
    {
        services.AddSingleton<ApiTokens>();
        services.AddAuthentication().AddScheme<AuthenticationSchemeOptions, TokenSignIn>(TokenSignIn.Name, configureOptions: null);
        return services.AddApiDocs();
    }

    public static void MapApi(this WebApplication app)
    {
        var api = app.MapGroup(Root).WithMetadata(limit);
        api.MapMealApi();
        api.MapPlanApi();
        api.MapRunApi();
        api.MapShoppingApi();
        app.MapGet(Problems, () => Results.Ok(ApiProblem.All)).ExcludeFromDescription();
        app.MapApiDocs();
    }

    /// <summary>Problem details for whatever ends without words below <see cref="Root"/>.</summary>
    /// <returns>False where it is no request of the API.</returns>
    public static bool IsAsked(HttpContext http) => http.Request.Path.StartsWithSegments(Root);

    public static Task AnswerAsync(HttpContext http) => ApiProblem.Of(http.Response.StatusCode).Answer().ExecuteAsync(http);

    /// <summary>Open to tokens with this scope, and to nobody else.</summary>
    internal static RouteHandlerBuilder Needs(this RouteHandlerBuilder endpoint, string scope) => endpoint
        .WithMetadata(new NeedsScope(scope))
        .RequireAuthorization(policy => policy.AddAuthenticationSchemes(TokenSignIn.Name).RequireClaim(TokenSignIn.ScopeClaim, scope))
        .DisableAntiforgery();
}
