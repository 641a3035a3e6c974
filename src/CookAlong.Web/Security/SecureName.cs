namespace CookAlong.Web.Security;

/// <summary>
/// A cookie's name by how the request came. Over HTTPS it has a prefix that browsers only accept with Secure (RFC 6265bis, 4.1.3):
/// __Host-, which also ties it to the whole of this host alone, or __Secure- under a path, where the whole host is not ours.
/// Over plain HTTP at home a prefix is not allowed, so the name goes without.
/// </summary>
static class SecureName
{
    public static string Of(HttpContext http, string name) => !http.Request.IsHttps ? name : http.Request.PathBase.HasValue ? "__Secure-" + name : "__Host-" + name;
}
