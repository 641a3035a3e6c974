using System.Net;
using Fido2NetLib;

namespace CookAlong.Web.Features.Household.Passkeys;

/// <summary>
/// The name a passkey belongs to, and the origins that may use it. Browsers take names only, no addresses, and secure pages only
/// (W3C, Web Authentication Level 2, 5.1.3); their own machine counts as secure.
/// </summary>
sealed record PasskeyPlace(string Name, IReadOnlySet<string> Origins)
{
    /// <summary>Null where the server is called by an address.</summary>
    public static PasskeyPlace? Of(HttpRequest request)
    {
        var host = request.Host;
        if (host.Host.Length == 0 || IPAddress.TryParse(host.Host.Trim('[', ']'), out _))
        {
            return null;
        }

        // Not by the scheme seen here: a proxy may end TLS. A page that is not secure cannot make a passkey at all.
        var origins = new HashSet<string>(StringComparer.OrdinalIgnoreCase) { $"https://{host.Value}" };
        if (string.Equals(host.Host, "localhost", StringComparison.OrdinalIgnoreCase))
        {
            origins.Add($"http://{host.Value}");
        }

        return new PasskeyPlace(host.Host.ToLowerInvariant(), origins);
    }

    public Fido2 Reader() => new(new Fido2Configuration { RPID = Name, RPName = "CookAlong", Origins = Origins, Timeout = (uint)PasskeyChallenges.GoodFor.TotalMilliseconds });
}
