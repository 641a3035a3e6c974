using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace CookAlong.Web.Features.Live.Outward;

/// <summary>
/// Shows a receiver that a message is this household's and of now: CookAlong-Signature is "sha256=" and the HMAC-SHA-256
/// (RFC 2104) of CookAlong-Sent, a full stop and the body, in hexadecimal.
/// </summary>
static class Seal
{
    /// <summary>Names and values, as headers or properties of the message; CookAlong-Sent is in seconds since the Unix epoch.</summary>
    /// <param name="secret">Null = nothing is signed.</param>
    public static IEnumerable<(string Name, string Value)> Of(string? secret, string body, DateTimeOffset now)
    {
        if (secret is null)
        {
            return [];
        }

        var sent = now.ToUnixTimeSeconds().ToString(CultureInfo.InvariantCulture);
        var code = HMACSHA256.HashData(Encoding.UTF8.GetBytes(secret), Encoding.UTF8.GetBytes($"{sent}.{body}"));
        return [("CookAlong-Sent", sent), ("CookAlong-Signature", $"sha256={Convert.ToHexStringLower(code)}")];
    }
}
