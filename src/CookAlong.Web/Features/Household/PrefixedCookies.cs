using Microsoft.AspNetCore.Authentication.Cookies;

namespace CookAlong.Web.Features.Household;

/// <summary>
/// Over https the session cookie carries the prefix __Host-, which browsers only accept with Secure, for the whole host and from that host alone
/// (RFC 6265bis, 4.1.3.2). Over plain http at home the prefix is not allowed, so the name goes without.
/// </summary>
sealed class PrefixedCookies : ICookieManager
{
    readonly ChunkingCookieManager inner = new();

    public string? GetRequestCookie(HttpContext context, string key) => inner.GetRequestCookie(context, Name(context, key));

    public void AppendResponseCookie(HttpContext context, string key, string? value, CookieOptions options) =>
        inner.AppendResponseCookie(context, Name(context, key), value, options);

    public void DeleteCookie(HttpContext context, string key, CookieOptions options) => inner.DeleteCookie(context, Name(context, key), options);

    static string Name(HttpContext context, string key) => context.Request.IsHttps ? "__Host-" + key : key;
}
