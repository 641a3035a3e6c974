using System.Collections.Concurrent;
using CookAlong.Domain.Runs;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Live.Line;
using CookAlong.Web.Features.Live.Wording;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Features.Live.Outward;

/// <summary>Calls on their way out of the page, as rows, so that a crash loses none.</summary>
public sealed class Deliveries(IDbContextFactory<CookAlongDb> databases)
{
    /// <summary>Who claimed a delivery and has neither marked nor renewed it by then has died. With a second until the next looks, five in all.</summary>
    static readonly TimeSpan Grace = TimeSpan.FromSeconds(4);

    /// <summary>Seconds before each further try.</summary>
    static readonly int[] Again = [5, 15, 60, 180, 600];

    // What this server is sending it does not claim again, whatever its clock does and however long the database is away.
    readonly ConcurrentDictionary<(Guid Run, string Call, string Way), bool> inHand = new();

    /// <summary>Writes down that this call is to go these ways; what is written already stays as it is.</summary>
    public async Task NoteAsync(Run run, Board board, Call call, IReadOnlyCollection<string> ways, CancellationToken stop)
    {
        if (ways.Count == 0)
        {
            return;
        }

        var text = new Words(run.Meal, board.People).Of(call);
        var (priority, due, now) = (Wire.Name(call.Priority), call.Due.ToUnixTimeMilliseconds(), board.At.ToUnixTimeMilliseconds());
        await using var db = await databases.CreateDbContextAsync(stop);
        foreach (var way in ways)
        {
            await db.Database.ExecuteSqlAsync(
                $"""
                INSERT INTO "Deliveries" ("Run", "Call", "Way", "Text", "Priority", "Due", "NextAt", "Tries")
                VALUES ({run.Id.Value}, {call.Id.Value}, {way}, {text}, {priority}, {due}, {now}, 0) ON CONFLICT DO NOTHING
                """,
                stop);
        }
    }

    /// <summary>What is to be tried now, claimed for whoever asked: nobody else gets it while the claim is renewed, nor this server before <see cref="LetGo"/>.</summary>
    public async Task<IReadOnlyList<DeliveryRow>> ClaimAsync(DateTimeOffset now, CancellationToken stop)
    {
        var (at, later) = (now.ToUnixTimeMilliseconds(), (now + Grace).ToUnixTimeMilliseconds());
        await using var db = await databases.CreateDbContextAsync(stop);
        var claimed = new List<DeliveryRow>();
        foreach (var row in await db.Set<DeliveryRow>().AsNoTracking().Where(row => row.DoneAt == null && row.NextAt <= at).OrderBy(row => row.Due).Take(100).ToListAsync(stop))
        {
            if (inHand.ContainsKey(KeyOf(row))
                || await Mine(db, row).ExecuteUpdateAsync(set => set.SetProperty(one => one.NextAt, later).SetProperty(one => one.Tries, row.Tries + 1), stop) != 1)
            {
                continue;
            }

            row.NextAt = later;

            // A try counts when it begins, so that what ends every try without a word does not go on for ever.
            if (row.Tries > Again.Length)
            {
                await DoneAsync(row, now, row.Failure ?? "Every try was cut short.", stop);
            }
            else
            {
                claimed.Add(row);
            }
        }

        // Not before all are claimed: where the database goes away in between, nobody sends those before.
        claimed.ForEach(row => inHand[KeyOf(row)] = true);
        return claimed;
    }

    /// <summary>Holds on to a claim while it is sent.</summary>
    /// <returns>False when another server has taken it over, or it is marked.</returns>
    public async Task<bool> RenewAsync(DeliveryRow row, DateTimeOffset now, CancellationToken stop)
    {
        var later = (now + Grace).ToUnixTimeMilliseconds();
        await using var db = await databases.CreateDbContextAsync(stop);
        if (await Mine(db, row).ExecuteUpdateAsync(set => set.SetProperty(one => one.NextAt, later), stop) != 1)
        {
            return false;
        }

        row.NextAt = later;
        return true;
    }

    /// <summary>This server has done with them, one way or another.</summary>
    public void LetGo(IEnumerable<DeliveryRow> rows)
    {
        foreach (var row in rows)
        {
            inHand.TryRemove(KeyOf(row), out _);
        }
    }

    /// <param name="why">Null when it was sent; else why it need not be, or cannot.</param>
    public async Task DoneAsync(DeliveryRow row, DateTimeOffset now, string? why, CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        await Of(db, row).ExecuteUpdateAsync(
            set => set.SetProperty(one => one.DoneAt, now.ToUnixTimeMilliseconds()).SetProperty(one => one.Failure, why), stop);
    }

    /// <summary>Tries again later, a few times.</summary>
    public async Task FailedAsync(DeliveryRow row, DateTimeOffset now, string why, CancellationToken stop)
    {
        if (row.Tries >= Again.Length)
        {
            await DoneAsync(row, now, why, stop);
            return;
        }

        var next = now.AddSeconds(Again[row.Tries]).ToUnixTimeMilliseconds();
        await using var db = await databases.CreateDbContextAsync(stop);
        await Mine(db, row).ExecuteUpdateAsync(
            set => set.SetProperty(one => one.NextAt, next).SetProperty(one => one.Failure, why), stop);
    }

    static (Guid, string, string) KeyOf(DeliveryRow row) => (row.Run, row.Call, row.Way);

    /// <summary>Unless somebody has changed it since.</summary>
    static IQueryable<DeliveryRow> Mine(CookAlongDb db, DeliveryRow row) => Of(db, row).Where(one => one.DoneAt == null && one.NextAt == row.NextAt);

    static IQueryable<DeliveryRow> Of(CookAlongDb db, DeliveryRow row) =>
        db.Set<DeliveryRow>().Where(one => one.Run == row.Run && one.Call == row.Call && one.Way == row.Way);
}
