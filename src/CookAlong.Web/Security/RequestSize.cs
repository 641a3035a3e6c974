using Microsoft.AspNetCore.Http.Features;

namespace CookAlong.Web.Security;

/// <summary>Nothing that a household sends is large, but pictures: a meal file has 100 KB.</summary>
static class RequestSize
{
    /// <summary>Bytes of a request's body.</summary>
    public const long Largest = 2 * 1024 * 1024;

    /// <summary>The same where a picture may come, with room for the form around it.</summary>
    const long LargestWithPicture = Intake.Photos.Photo.LargestFile + (64 * 1024);

    /// <summary>Refuses by the announced length; a body that lies about it or does not tell is cut off by the server's own limit.</summary>
    public static void UseRequestSize(this WebApplication app) => app.Use((http, next) =>
    {
        var largest = IsPicture(http.Request) ? LargestWithPicture : Largest;
        if (http.Request.ContentLength > largest)
        {
            http.Response.StatusCode = StatusCodes.Status413PayloadTooLarge;
            return Task.CompletedTask;
        }

        if (http.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } limit)
        {
            limit.MaxRequestBodySize = largest;
        }

        return next(http);
    });

    static bool IsPicture(HttpRequest request) =>
        HttpMethods.IsPost(request.Method) && request.Path.StartsWithSegments("/cook") && request.Path.Value!.EndsWith("/debrief/photos", StringComparison.OrdinalIgnoreCase);
}
