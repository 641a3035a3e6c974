using System.Text;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Http.Features;

namespace CookAlong.Web.Security;

/// <summary>
/// Under a path of its own (https://home.example/kitchen) every page still writes its addresses from the root, and the path is put before
/// them here, at the edge, so that no page can forget it. Planning pages draw in the browser, where this does not reach: their links are
/// relative to the document's base. Scripts know where they themselves come from (js/root.js).
/// </summary>
static partial class RootedAddresses
{
    public static void UseRootedAddresses(this WebApplication app, string basePath)
    {
        if (basePath.Length == 0)
        {
            return;
        }

        app.UsePathBase(basePath);
        app.Use(async (http, next) =>
        {
            // Also reachable without the path, past the proxy: a health check knows nothing of it.
            if (!http.Request.PathBase.HasValue)
            {
                await next(http);
                return;
            }

            var path = http.Request.PathBase.Value!;
            var before = http.Features.GetRequiredFeature<IHttpResponseBodyFeature>();
            await using var html = new HeldHtml(before.Stream, http.Response);
            http.Features.Set<IHttpResponseBodyFeature>(new StreamResponseBodyFeature(html, before));
            http.Response.OnStarting(() =>
            {
                if (http.Response.Headers.Location.ToString() is ['/', ..] location && !location.StartsWith("//", StringComparison.Ordinal) && !IsBelow(location, path))
                {
                    http.Response.Headers.Location = path + location;
                }

                if (HeldHtml.IsHtml(http.Response))
                {
                    http.Response.ContentLength = null;
                }

                return Task.CompletedTask;
            });
            try
            {
                await next(http);
                await http.Features.GetRequiredFeature<IHttpResponseBodyFeature>().CompleteAsync();
            }
            finally
            {
                http.Features.Set(before);
            }

            if (html.Held is { Length: > 0 } held)
            {
                await before.Stream.WriteAsync(Encoding.UTF8.GetBytes(Rooted(Encoding.UTF8.GetString(held.GetBuffer(), 0, (int)held.Length), path)), http.RequestAborted);
            }
        });
    }

    /// <summary>Whatever stands in such an attribute, begins with one stroke and is not below the path already; text is safe, its quotation marks are encoded.</summary>
    public static string Rooted(string html, string path) =>
        Address().Replace(html, found => IsBelow(found.Groups[2].Value, path) ? found.Value : $"{found.Groups[1].Value}{path}{found.Groups[2].Value}");

    static bool IsBelow(string address, string path) => address.StartsWith(path, StringComparison.Ordinal) && address.Length > path.Length && address[path.Length] is '/' or '?' or '#' || address == path;

    [GeneratedRegex("""(\s(?:href|src|action|formaction|data-[a-z-]+)=")(/(?!/)[^"]*)""")]
    private static partial Regex Address();
}
