using System.Buffers.Text;
using System.Security.Cryptography;
using CookAlong.Domain.Runs;
using CookAlong.Web.Data;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Features.Live.Outward;

/// <summary>Browsers that asked to be called while their page is closed.</summary>
public sealed class PushSubscriptions(IDbContextFactory<CookAlongDb> databases, TimeProvider time)
{
    const int MostOfOnePerson = 8;
    const int LongestEndpoint = 2000;

    public static string WayOf(Guid subscription) => $"push:{subscription}";

    /// <returns>Why not, as a sentence; null when it is kept.</returns>
    public async Task<string?> AddAsync(RunId run, PersonId person, PushRequest asked, CancellationToken stop)
    {
        if (asked is not { Endpoint: { Length: <= LongestEndpoint } address, P256dh: { } key, Auth: { } secret }
            || !Uri.TryCreate(address, UriKind.Absolute, out var endpoint) || endpoint.Scheme != Uri.UriSchemeHttps
            || !IsPoint(key) || BytesOf(secret)?.Length != 16)
        {
            return "The browser named no push service that can be used. Reload the page and try again.";
        }

        await using var db = await databases.CreateDbContextAsync(stop);
        var all = db.Set<PushSubscriptionRow>();
        await all.Where(row => row.Run == run.Value && row.Endpoint == address).ExecuteDeleteAsync(stop);
        if (await all.CountAsync(row => row.Run == run.Value && row.Person == person.Value, stop) >= MostOfOnePerson)
        {
            return $"More than {MostOfOnePerson} devices of one person are not called. Switch it off on another first.";
        }

        all.Add(new PushSubscriptionRow
        {
            Id = Guid.CreateVersion7(time.GetUtcNow()),
            Run = run.Value,
            Person = person.Value,
            Endpoint = address,
            P256dh = key,
            Auth = secret,
        });
        await db.SaveChangesAsync(stop);
        return null;
    }

    public async Task<IReadOnlyList<PushSubscriptionRow>> OfAsync(RunId run, CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        return await db.Set<PushSubscriptionRow>().AsNoTracking().Where(row => row.Run == run.Value).ToListAsync(stop);
    }

    public async Task RemoveAsync(RunId run, PersonId person, string? endpoint, CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        await db.Set<PushSubscriptionRow>().Where(row => row.Run == run.Value && row.Person == person.Value && row.Endpoint == endpoint).ExecuteDeleteAsync(stop);
    }

    /// <summary>The push service says that this browser is gone.</summary>
    public async Task PruneAsync(string way, CancellationToken stop)
    {
        var id = Guid.Parse(way["push:".Length..]);
        await using var db = await databases.CreateDbContextAsync(stop);
        await db.Set<PushSubscriptionRow>().Where(row => row.Id == id).ExecuteDeleteAsync(stop);
    }

    static byte[]? BytesOf(string text) => text.Length < 200 && Base64Url.IsValid(text) ? Base64Url.DecodeFromChars(text) : null;

    /// <summary>A point of the curve P-256, uncompressed: nothing else can be encrypted for.</summary>
    static bool IsPoint(string text)
    {
        if (BytesOf(text) is not { Length: 65 } bytes || bytes[0] != 4)
        {
            return false;
        }

        try
        {
            using var key = ECDiffieHellman.Create(new ECParameters { Curve = ECCurve.NamedCurves.nistP256, Q = new ECPoint { X = bytes[1..33], Y = bytes[33..] } });
            return true;
        }
        catch (CryptographicException)
        {
            return false;
        }
    }
}

/// <summary>A subscription as a browser tells it.</summary>
/// <param name="P256dh">65 bytes, base64url.</param>
/// <param name="Auth">16 bytes, base64url.</param>
public sealed record PushRequest(string? Endpoint, string? P256dh, string? Auth);
