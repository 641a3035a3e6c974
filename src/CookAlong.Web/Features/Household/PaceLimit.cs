using System.Globalization;
using Microsoft.AspNetCore.StaticAssets;

namespace CookAlong.Web.Features.Household;

/// <summary>Marks an endpoint that costs the server much more than a page: <see cref="Deed.Heavy"/>.</summary>
public sealed record Heavy;

/// <summary>Answers 429 to a session that is far faster than people are. Screens keep what was tapped and send it again.</summary>
static class PaceLimit
{
    public static void UsePaces(this WebApplication app)
    {
        var paces = app.Services.GetRequiredService<Paces>();
        app.Use((http, next) =>
        {
            // Files are the same for everybody and cost nothing; programs have a limit of their own.
            if (Visitor.Of(http.User) is not { } visitor || http.GetEndpoint()?.Metadata.GetMetadata<StaticAssetDescriptor>() is not null
                || paces.Take(visitor.Session, Of(http)) is not { Ticks: > 0 } wait)
            {
                return next(http);
            }

            http.Response.StatusCode = StatusCodes.Status429TooManyRequests;
            SayWhen(http, wait);
            return Task.CompletedTask;
        });
    }

    /// <summary>The header that says when to come again, in whole seconds.</summary>
    public static void SayWhen(HttpContext http, TimeSpan wait) =>
        http.Response.Headers.RetryAfter = Math.Ceiling(wait.TotalSeconds).ToString(CultureInfo.InvariantCulture);

    static Deed Of(HttpContext http) =>
        http.GetEndpoint()?.Metadata.GetMetadata<Heavy>() is not null ? Deed.Heavy
        : HttpMethods.IsGet(http.Request.Method) || HttpMethods.IsHead(http.Request.Method) ? Deed.Look
        : Deed.Change;
}
