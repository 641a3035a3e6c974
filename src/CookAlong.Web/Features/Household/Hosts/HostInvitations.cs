using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;
using CookAlong.Web.Data;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Features.Household.Hosts;

/// <summary>Ways to become a host: a secret in the fragment of an address, for one person and a day.</summary>
public sealed class HostInvitations(IDbContextFactory<CookAlongDb> databases, TimeProvider time)
{
    public static readonly TimeSpan GoodFor = TimeSpan.FromDays(1);

    const int SecretBytes = 16;

    /// <summary>128 bits from the system's generator, as 22 characters that need no escaping in an address. What one host made before is dead.</summary>
    public async Task<string> InviteAsync(Guid by)
    {
        var secret = Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(SecretBytes));
        var now = time.GetUtcNow();
        var past = now.ToUnixTimeMilliseconds();
        await using var db = await databases.CreateDbContextAsync();
        await db.Set<HostInvitationRow>().Where(one => one.By == by || one.Expires <= past).ExecuteDeleteAsync();
        db.Add(new HostInvitationRow { Id = Guid.CreateVersion7(now), Hash = HashOf(secret), By = by, Expires = (now + GoodFor).ToUnixTimeMilliseconds() });
        await db.SaveChangesAsync();
        return secret;
    }

    /// <summary>The invitation, for the first who comes with its secret: it is used up, unless it is put back.</summary>
    public async Task<HostInvitationRow?> TakeAsync(string secret)
    {
        var (hash, now) = (HashOf(secret), time.GetUtcNow().ToUnixTimeMilliseconds());
        await using var db = await databases.CreateDbContextAsync();
        var good = db.Set<HostInvitationRow>().Where(one => one.Hash == hash && one.Expires > now);
        var found = await good.AsNoTracking().SingleOrDefaultAsync();
        return found is not null && await good.ExecuteDeleteAsync() == 1 ? found : null;
    }

    /// <summary>No account came of it (the password was too weak): the same secret may be tried again.</summary>
    public async Task PutBackAsync(HostInvitationRow invitation)
    {
        await using var db = await databases.CreateDbContextAsync();
        db.Add(invitation);
        await db.SaveChangesAsync();
    }

    // No salt and no slow hash: the secret is 128 random bits.
    static string HashOf(string secret) => Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(secret)));
}
