using CookAlong.Domain.Runs;
using CookAlong.Web.Data;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Features.Live.Calls;

/// <summary>The calls that have come, as rows.</summary>
public sealed class DueCalls(IDbContextFactory<CookAlongDb> databases)
{
    /// <summary>Who claimed a call and has not sent it by then has died. With a second until the next looks, five in all.</summary>
    static readonly TimeSpan Grace = TimeSpan.FromSeconds(4);

    /// <summary><see cref="Claim.Mine"/> for exactly one caller, who then sends it; for another when that one died before it could.</summary>
    public async Task<Claim> ClaimAsync(RunId run, Call call, DateTimeOffset now)
    {
        var (due, at, dead) = (call.Due.ToUnixTimeMilliseconds(), now.ToUnixTimeMilliseconds(), (now - Grace).ToUnixTimeMilliseconds());
        await using var db = await databases.CreateDbContextAsync();
        await db.Database.ExecuteSqlAsync(
            $"""INSERT INTO "Calls" ("Run", "Call", "Due") VALUES ({run.Value}, {call.Id.Value}, {due}) ON CONFLICT DO NOTHING""");
        var mine = db.Set<CallRow>().Where(row => row.Run == run.Value && row.Call == call.Id.Value);
        var claimed = await mine
            .Where(row => row.RungAt == null && (row.ClaimedAt == null || row.ClaimedAt <= dead))
            .ExecuteUpdateAsync(set => set.SetProperty(row => row.ClaimedAt, at));
        return claimed == 1 ? Claim.Mine : await mine.AnyAsync(row => row.RungAt != null) ? Claim.Rung : Claim.Others;
    }

    public async Task RungAsync(RunId run, CallId call, DateTimeOffset now)
    {
        var at = now.ToUnixTimeMilliseconds();
        await using var db = await databases.CreateDbContextAsync();
        await db.Set<CallRow>()
            .Where(row => row.Run == run.Value && row.Call == call.Value)
            .ExecuteUpdateAsync(set => set.SetProperty(row => row.RungAt, at));
    }
}

public enum Claim
{
    /// <summary>To be sent now.</summary>
    Mine,

    /// <summary>Another is about to send it, or died over it.</summary>
    Others,

    /// <summary>It was sent.</summary>
    Rung,
}
