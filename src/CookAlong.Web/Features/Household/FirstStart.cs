using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;

namespace CookAlong.Web.Features.Household;

/// <summary>
/// An open set-up page is a takeover. So the first host account is made with a secret that only the server's log shows,
/// in the fragment of an address, where no proxy's log sees it. A new one is made at each start while there is no host; it dies with the first.
/// </summary>
public sealed class FirstStart
{
    const int SecretBytes = 16;

    byte[]? hash;

    /// <summary>True while the server waits for its first host.</summary>
    public bool IsOpen => Volatile.Read(ref hash) is not null;

    /// <summary>128 bits from the system's generator, as 22 characters that need no escaping in an address.</summary>
    public string Open()
    {
        var secret = Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(SecretBytes));
        Volatile.Write(ref hash, Hash(secret));
        return secret;
    }

    /// <summary>True for one caller only: the secret is used up, unless it is put back.</summary>
    public bool Take(string secret)
    {
        var kept = Volatile.Read(ref hash);
        return kept is not null
            && CryptographicOperations.FixedTimeEquals(kept, Hash(secret))
            && Interlocked.CompareExchange(ref hash, null, kept) == kept;
    }

    /// <summary>No account came of it (the password was too weak): the same secret may be tried again.</summary>
    public void PutBack(string secret) => Volatile.Write(ref hash, Hash(secret));

    static byte[] Hash(string secret) => SHA256.HashData(Encoding.UTF8.GetBytes(secret));
}
