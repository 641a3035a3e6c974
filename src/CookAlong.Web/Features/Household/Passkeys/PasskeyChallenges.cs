using System.Buffers.Text;
using System.Text.Json;
using CookAlong.Web.Data;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Features.Household.Passkeys;

/// <summary>What devices were asked to sign. Kept on the server, good once and for a few minutes.</summary>
public sealed class PasskeyChallenges(IDbContextFactory<CookAlongDb> databases, TimeProvider time)
{
    /// <summary>Within what W3C, Web Authentication Level 2, 15.1 recommends: 5 to 10 minutes.</summary>
    public static readonly TimeSpan GoodFor = TimeSpan.FromMinutes(5);

    /// <param name="session">Who may answer by adding a passkey; null = the answer signs in.</param>
    public async Task KeepAsync(byte[] challenge, Guid? session, string options)
    {
        var now = time.GetUtcNow();
        await using var db = await databases.CreateDbContextAsync();
        var past = now.ToUnixTimeMilliseconds();
        await db.Set<PasskeyChallengeRow>().Where(one => one.Expires <= past).ExecuteDeleteAsync();
        db.Add(new PasskeyChallengeRow { Challenge = Base64Url.EncodeToString(challenge), Session = session, Options = options, Expires = (now + GoodFor).ToUnixTimeMilliseconds() });
        await db.SaveChangesAsync();
    }

    /// <summary>What was asked, for the one who answers it first; null when it was never asked here, was answered, or is too old.</summary>
    /// <param name="clientData">The browser's account of what it had signed, JSON.</param>
    public async Task<string?> TakeAsync(byte[] clientData, Guid? session)
    {
        if (ChallengeIn(clientData) is not { } challenge)
        {
            return null;
        }

        var now = time.GetUtcNow().ToUnixTimeMilliseconds();
        await using var db = await databases.CreateDbContextAsync();
        var asked = db.Set<PasskeyChallengeRow>().Where(one => one.Challenge == challenge && one.Session == session && one.Expires > now);
        var options = await asked.Select(one => one.Options).SingleOrDefaultAsync();
        return options is not null && await asked.ExecuteDeleteAsync() == 1 ? options : null;
    }

    static string? ChallengeIn(byte[] clientData)
    {
        try
        {
            using var json = JsonDocument.Parse(clientData);
            return json.RootElement.ValueKind == JsonValueKind.Object && json.RootElement.TryGetProperty("challenge", out var challenge) && challenge.ValueKind == JsonValueKind.String
                ? challenge.GetString()
                : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
