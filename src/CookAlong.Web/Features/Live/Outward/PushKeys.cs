using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text.Json;
using CookAlong.Web.Data;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Features.Live.Outward;

/// <summary>The household's key pair by which push services know it (VAPID, RFC 8292), made the first time it is asked for.</summary>
public sealed class PushKeys(IDbContextFactory<CookAlongDb> databases)
{
    const string Name = "vapid";

    Pair? known;

    public async Task<Pair> OfAsync(CancellationToken stop)
    {
        if (known is not null)
        {
            return known;
        }

        await using var db = await databases.CreateDbContextAsync(stop);
        var made = JsonSerializer.Serialize(Make());

        // Whoever comes second uses the first one's.
        await db.Database.ExecuteSqlAsync($"""INSERT INTO "HouseKeys" ("Name", "Value") VALUES ({Name}, {made}) ON CONFLICT DO NOTHING""", stop);
        var kept = await db.Set<HouseKeyRow>().AsNoTracking().SingleAsync(row => row.Name == Name, stop);
        return known = JsonSerializer.Deserialize<Pair>(kept.Value)!;
    }

    static Pair Make()
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var parameters = key.ExportParameters(includePrivateParameters: true);

        // An uncompressed point: 4, X, Y (SEC 1, 2.3.3).
        return new Pair(Base64Url.EncodeToString([4, .. parameters.Q.X!, .. parameters.Q.Y!]), Base64Url.EncodeToString(parameters.D));
    }

    /// <param name="Public">65 bytes, base64url.</param>
    /// <param name="Private">32 bytes, base64url.</param>
    public sealed record Pair(string Public, string Private);
}
