using System.Buffers.Text;
using System.Data.Common;
using System.Security.Cryptography;
using System.Text;
using CookAlong.Web.Data;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Features.Api.Tokens;

/// <summary>The household's tokens for programs. A token is asked for at each request, so that a revoked one is dead at once.</summary>
public sealed class ApiTokens(IDbContextFactory<CookAlongDb> databases, TimeProvider time, ILogger<ApiTokens> log)
{
    public const int LongestName = 60;

    /// <summary>By which a token that lies about is known for one of ours.</summary>
    const string Sign = "cookalong_";

    const int SecretBytes = 16;
    const int MostOfOneHost = 50;
    static readonly TimeSpan SeenEvery = TimeSpan.FromMinutes(1);

    /// <summary>A host's tokens, the newest first.</summary>
    public async Task<IReadOnlyList<ApiTokenRow>> OfAsync(Guid host, CancellationToken stop = default)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        return await db.Set<ApiTokenRow>().AsNoTracking().Where(one => one.Host == host).OrderByDescending(one => one.MadeAt).ToListAsync(stop);
    }

    /// <summary>128 bits from the system's generator (OWASP ASVS 5.0.0, 11.5.1).</summary>
    /// <param name="scopes">Names of <see cref="ApiScope"/>; others are left out.</param>
    /// <returns>The token, or why there is none.</returns>
    public async Task<(string? Token, string? Fault)> MakeAsync(Guid host, string name, IEnumerable<string> scopes)
    {
        string[] wanted = [.. ApiScope.All.Select(scope => scope.Name).Where(scopes.Contains)];
        if (name.Trim() is not { Length: > 0 and <= LongestName } called)
        {
            return (null, TokenWords.NoName);
        }

        if (wanted.Length == 0)
        {
            return (null, TokenWords.NoScope);
        }

        var now = time.GetUtcNow();
        var token = Sign + Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(SecretBytes));
        await using var db = await databases.CreateDbContextAsync();
        if (await db.Set<ApiTokenRow>().CountAsync(one => one.Host == host) >= MostOfOneHost)
        {
            return (null, TokenWords.TooMany(MostOfOneHost));
        }

        db.Add(new ApiTokenRow { Id = Guid.CreateVersion7(now), Hash = HashOf(token), Host = host, Name = called, Scopes = string.Join(' ', wanted), MadeAt = now.ToUnixTimeMilliseconds() });
        await db.SaveChangesAsync();
        return (token, null);
    }

    /// <returns>Its name; null when it is none of this host's.</returns>
    public async Task<string?> RevokeAsync(Guid host, Guid token)
    {
        await using var db = await databases.CreateDbContextAsync();
        var mine = db.Set<ApiTokenRow>().Where(one => one.Id == token && one.Host == host);
        var name = await mine.Select(one => one.Name).SingleOrDefaultAsync();
        return await mine.ExecuteDeleteAsync() == 1 ? name : null;
    }

    /// <summary>The token's row and its host's name; null when there is no such token.</summary>
    public async Task<(ApiTokenRow Row, string Host)?> FindAsync(string token, CancellationToken stop)
    {
        var (hash, now) = (HashOf(token), time.GetUtcNow().ToUnixTimeMilliseconds());
        await using var db = await databases.CreateDbContextAsync(stop);
        var found = await db.Set<ApiTokenRow>().AsNoTracking().Where(one => one.Hash == hash)
            .Join(db.Hosts, one => one.Host, host => host.Id, (one, host) => new { Row = one, host.Name })
            .SingleOrDefaultAsync(stop);
        if (found is null)
        {
            return null;
        }

        if (found.Row.LastUsedAt is not { } used || now - used >= SeenEvery.TotalMilliseconds)
        {
            await NoteUsedAsync(db, found.Row.Id, now, stop);
        }

        return (found.Row, found.Name);
    }

    /// <summary>A disk that takes nothing any more is no reason to keep a program from reading.</summary>
    async Task NoteUsedAsync(CookAlongDb db, Guid token, long now, CancellationToken stop)
    {
        try
        {
            await db.Set<ApiTokenRow>().Where(one => one.Id == token).ExecuteUpdateAsync(set => set.SetProperty(one => one.LastUsedAt, now), stop);
        }
        catch (DbException failure)
        {
            log.LogWarning("When token {Token} was last used could not be written: {Why}", token, failure.Message);
        }
    }

    // No salt and no slow hash: the token is 128 random bits.
    static string HashOf(string token) => Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(token)));
}
