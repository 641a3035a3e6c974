using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;

namespace CookAlong.Web.Features.Household;

/// <summary>
/// The 10,000 most used passwords of eight characters and more (OWASP ASVS 5.0.0, 6.2.4 asks for 3,000), by their order in the list of the
/// npm package @zxcvbn-ts/language-common 4.1.3 (MIT). Kept as the first 8 bytes of the SHA-256 of each in small letters, sorted, big-endian:
/// what people choose is nothing to read.
/// </summary>
static class KnownPasswords
{
    static readonly Lazy<ulong[]> hashes = new(Read);

    public static bool Holds(string password) => Array.BinarySearch(hashes.Value, HashOf(password)) >= 0;

    static ulong HashOf(string password) => BinaryPrimitives.ReadUInt64BigEndian(SHA256.HashData(Encoding.UTF8.GetBytes(password.ToLowerInvariant())));

    static ulong[] Read()
    {
        using var stream = typeof(KnownPasswords).Assembly.GetManifestResourceStream("known-passwords.bin")!;
        var all = new byte[stream.Length];
        stream.ReadExactly(all);
        var read = new ulong[all.Length / sizeof(ulong)];
        for (var i = 0; i < read.Length; i++)
        {
            read[i] = BinaryPrimitives.ReadUInt64BigEndian(all.AsSpan(i * sizeof(ulong)));
        }

        return read;
    }
}
