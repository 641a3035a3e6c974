using System.Security.Cryptography;
using System.Text;
using CookAlong.Web.Features.Household;

namespace CookAlong.Web.Features.Live.Door;

/// <summary>
/// A typed code as it is kept: its salt and its hash in hexadecimal, with a full stop between. 39 bits are few, so whoever reads
/// the database is slowed down as with passwords. The codes of a run that are good at the same time have one salt,
/// since nobody says which run's code they type: looking one up is one slow hash a run.
/// </summary>
static class TypedHash
{
    const int SaltBytes = 16;
    const int HashBytes = 32;

    public static string NewSalt() => Convert.ToHexString(RandomNumberGenerator.GetBytes(SaltBytes));

    /// <param name="salt">In hexadecimal.</param>
    public static string Of(string code, string salt) =>
        $"{salt}.{Convert.ToHexString(Rfc2898DeriveBytes.Pbkdf2(code, Convert.FromHexString(salt), HouseholdFeature.HashRounds, HashAlgorithmName.SHA512, HashBytes))}";

    /// <summary>Null for a code from before there was one, which opens nothing.</summary>
    public static string? SaltOf(string kept) => kept.Split('.') is [var salt, _] ? salt : null;

    public static bool AreSame(string one, string other) => CryptographicOperations.FixedTimeEquals(Encoding.ASCII.GetBytes(one), Encoding.ASCII.GetBytes(other));
}
