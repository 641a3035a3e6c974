using System.Net;

namespace CookAlong.Web.Security;

/// <summary>
/// The names this server answers to. A page of another site can make its own name point to an address in this home (DNS rebinding);
/// so names of the wide world must be set, while addresses and names of the home network need nothing.
/// </summary>
static class HostNames
{
    // RFC 6761 (localhost), RFC 6762 (local), RFC 8375 (home.arpa), ICANN's private-use "internal"; lan and home by common practice.
    public static readonly string[] HomeSuffixes = [".localhost", ".local", ".home.arpa", ".internal", ".lan", ".home"];

    public static void UseHostNames(this WebApplication app, IReadOnlyList<string> names) => app.Use((http, next) =>
    {
        if (Answers(http.Request.Host.Host, names))
        {
            return next(http);
        }

        http.Response.StatusCode = StatusCodes.Status421MisdirectedRequest;
        return Task.CompletedTask;
    });

    public static bool Answers(string host, IReadOnlyList<string> names) =>
        IPAddress.TryParse(host, out _)
        || IsOfHome(host)
        || (Uri.CheckHostName(host) == UriHostNameType.Dns && (names.Contains("*") || names.Contains(host, StringComparer.OrdinalIgnoreCase)));

    /// <summary>A name, not an address, that means something within this home only.</summary>
    public static bool IsOfHome(string host) =>
        Uri.CheckHostName(host) == UriHostNameType.Dns
        && (!host.Contains('.', StringComparison.Ordinal) || HomeSuffixes.Any(suffix => host.EndsWith(suffix, StringComparison.OrdinalIgnoreCase)));
}
