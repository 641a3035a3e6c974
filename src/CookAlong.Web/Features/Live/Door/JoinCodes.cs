using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;
using CookAlong.Domain.Runs;
using CookAlong.Web.Data;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Features.Live.Door;

/// <summary>Ways into a run: one to be scanned, one to be typed, each for one person and ten minutes.</summary>
public sealed class JoinCodes(IDbContextFactory<CookAlongDb> databases, TimeProvider time)
{
    public static readonly TimeSpan GoodFor = TimeSpan.FromMinutes(10);

    const int TypedLength = 8;
    const int SecretBytes = 16;

    /// <summary>Wrong tries by anybody that kill every typed code that was good at the time.</summary>
    const int MostWrongTries = 20;

    /// <summary>No 0, O, 1, I, L: 31 characters, 39 bits in eight.</summary>
    const string Alphabet = "23456789ABCDEFGHJKMNPQRSTUVWXYZ";

    /// <summary>New codes; what was made before stays good for its time.</summary>
    public async Task<Invitation> InviteAsync(RunId run, Role role)
    {
        var secret = Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(SecretBytes));
        var typed = RandomNumberGenerator.GetString(Alphabet, TypedLength);
        var now = time.GetUtcNow();
        var expires = now + GoodFor;
        await using var db = await databases.CreateDbContextAsync();
        var others = await Good(db).Where(code => code.IsTyped && code.Run == run.Value).Select(code => code.Hash).ToListAsync();
        var salt = others.Select(TypedHash.SaltOf).FirstOrDefault(one => one is not null) ?? TypedHash.NewSalt();
        db.AddRange(RowOf(HashOf(secret), isTyped: false), RowOf(TypedHash.Of(typed, salt), isTyped: true));
        await db.SaveChangesAsync();
        var old = (now - TimeSpan.FromDays(1)).ToUnixTimeMilliseconds();
        await db.Set<JoinCodeRow>().Where(code => code.Expires < old).ExecuteDeleteAsync();
        return new Invitation(secret, typed, expires);

        JoinCodeRow RowOf(string hash, bool isTyped) => new()
        {
            Id = Guid.CreateVersion7(now),
            Run = run.Value,
            Hash = hash,
            IsTyped = isTyped,
            Role = role,
            Expires = expires.ToUnixTimeMilliseconds(),
        };
    }

    /// <summary>The code, while it is good; a wrong one counts against every typed code there is.</summary>
    public async Task<JoinCodeRow?> FindAsync(string entered)
    {
        var read = Read(entered);
        await using var db = await databases.CreateDbContextAsync();
        var good = Good(db);
        var found = read.Length == TypedLength ? await FindTypedAsync(good, read) : await FindSecretAsync(good, read);
        if (found is not null)
        {
            return found;
        }

        await good.Where(code => code.IsTyped).ExecuteUpdateAsync(set => set.SetProperty(code => code.WrongTries, code => code.WrongTries + 1));
        return null;
    }

    /// <summary>True for the one who used it.</summary>
    public async Task<bool> UseAsync(JoinCodeRow code)
    {
        var now = time.GetUtcNow().ToUnixTimeMilliseconds();
        await using var db = await databases.CreateDbContextAsync();
        return await Good(db).Where(one => one.Id == code.Id).ExecuteUpdateAsync(set => set.SetProperty(one => one.UsedAt, now)) == 1;
    }

    static async Task<JoinCodeRow?> FindTypedAsync(IQueryable<JoinCodeRow> good, string typed)
    {
        var codes = await good.AsNoTracking().Where(code => code.IsTyped).ToListAsync();
        // One slow hash for each run that lets people in, however many codes it has given out.
        var hashes = codes.Select(code => TypedHash.SaltOf(code.Hash)).OfType<string>().Distinct().Select(salt => TypedHash.Of(typed, salt)).ToList();
        return codes.FirstOrDefault(code => hashes.Any(hash => TypedHash.AreSame(hash, code.Hash)));
    }

    static async Task<JoinCodeRow?> FindSecretAsync(IQueryable<JoinCodeRow> good, string secret)
    {
        var hash = HashOf(secret);
        return await good.AsNoTracking().SingleOrDefaultAsync(code => !code.IsTyped && code.Hash == hash);
    }

    IQueryable<JoinCodeRow> Good(CookAlongDb db)
    {
        var now = time.GetUtcNow().ToUnixTimeMilliseconds();
        return db.Set<JoinCodeRow>().Where(code => code.UsedAt == null && code.Expires > now && code.WrongTries < MostWrongTries);
    }

    /// <summary>A typed code is taken in any case and with any gaps; a scanned secret as it is.</summary>
    static string Read(string entered)
    {
        var plain = entered.Replace(" ", "", StringComparison.Ordinal).Replace("-", "", StringComparison.Ordinal).ToUpperInvariant();
        return plain.Length == TypedLength ? plain : entered.Trim();
    }

    // No salt and no slow hash: 128 random bits are not guessed (OWASP ASVS 5.0.0, 6.5.2, asks for them below 112).
    static string HashOf(string secret) => Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(secret)));
}

/// <param name="Secret">For the QR code's fragment.</param>
/// <param name="Typed">8 characters, in capitals.</param>
public sealed record Invitation(string Secret, string Typed, DateTimeOffset Expires);
