using CookAlong.Web.Security;
using Microsoft.AspNetCore.Authentication.Cookies;

namespace CookAlong.Web.Features.Household;

/// <summary>The session cookie under the name that its scheme and path allow.</summary>
sealed class PrefixedCookies : ICookieManager
{
    readonly ChunkingCookieManager inner = new();

    public string? GetRequestCookie(HttpContext context, string key) => inner.GetRequestCookie(context, Name(context, key));

    public void AppendResponseCookie(HttpContext context, string key, string? value, CookieOptions options) =>
        inner.AppendResponseCookie(context, Name(context, key), value, options);

    public void DeleteCookie(HttpContext context, string key, CookieOptions options) => inner.DeleteCookie(context, Name(context, key), options);

    static string Name(HttpContext context, string key) => SecureName.Of(context, key);
}
