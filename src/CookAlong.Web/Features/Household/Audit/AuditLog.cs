using System.Security.Claims;
using CookAlong.Web.Data;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Features.Household.Audit;

/// <summary>
/// Who did what to the household's accounts, doors and data, when and from where (OWASP ASVS 5.0.0, 16.2.1 and 16.3.1).
/// Nothing that opens a door is ever written: no password, code, secret, key or session.
/// </summary>
public sealed class AuditLog(IDbContextFactory<CookAlongDb> databases, TimeProvider time)
{
    /// <summary>A meal of the year before can still be asked about. Common practice, no source.</summary>
    public static readonly TimeSpan Kept = TimeSpan.FromDays(400);

    /// <summary>Of a name or what else was typed by somebody.</summary>
    const int LongestWord = 120;

    public Task WriteAsync(HttpContext http, AuditDeed deed, string? about = null) =>
        WriteAsync(deed, NameOf(http.User), HouseholdFeature.AddressOf(http), about);

    /// <summary>For an open planning page, which makes no requests: the address is where its session was last seen.</summary>
    public Task WriteAsync(ClaimsPrincipal user, AuditDeed deed, string? about = null) => WriteAsync(Visitor.Of(user)?.Session, deed, NameOf(user), about);

    /// <summary>For what comes by an open line.</summary>
    public async Task WriteAsync(Guid? session, AuditDeed deed, string? who, string? about = null)
    {
        await using var db = await databases.CreateDbContextAsync();
        var address = await db.Sessions.Where(one => one.Id == session).Select(one => one.Address).SingleOrDefaultAsync();
        await WriteAsync(deed, who, address, about);
    }

    public async Task WriteAsync(AuditDeed deed, string? who, string? address, string? about = null)
    {
        var now = time.GetUtcNow();
        await using var db = await databases.CreateDbContextAsync();
        db.Add(new AuditRow { At = now.ToUnixTimeMilliseconds(), Deed = deed, Who = Short(who), Address = address, About = Short(about) });
        await db.SaveChangesAsync();
        var old = (now - Kept).ToUnixTimeMilliseconds();
        await db.Set<AuditRow>().Where(row => row.At < old).ExecuteDeleteAsync();
    }

    /// <summary>The latest first.</summary>
    /// <param name="before">Only lines before this one; null = from the latest.</param>
    public async Task<IReadOnlyList<AuditRow>> ReadAsync(long? before, int most, CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        return await db.Set<AuditRow>().AsNoTracking()
            .Where(row => before == null || row.Id < before)
            .OrderByDescending(row => row.Id)
            .Take(most)
            .ToListAsync(stop);
    }

    static string? NameOf(ClaimsPrincipal user) => user.FindFirstValue(ClaimTypes.Name);

    static string? Short(string? word) => word is { Length: > LongestWord } ? word[..LongestWord] + "…" : word;
}
