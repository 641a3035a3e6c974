using System.Collections.Immutable;
using System.Text.Json;
using CookAlong.Domain.Debrief.Learning.Ovens;
using CookAlong.Domain.Kitchens;
using CookAlong.Intake.MealFiles;
using CookAlong.Web.Data;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Features.Debrief.Ovens;

/// <summary>What was measured of the household's ovens, and what of it its cook plans with.</summary>
public sealed class LearnedOvens(IDbContextFactory<CookAlongDb> databases, LearnedTimes times, TimeProvider clock)
{
    /// <summary>What the guided half hour turns the dial to.</summary>
    public const int Dial = 180;

    /// <summary>Readings of one measuring that are kept.</summary>
    const int MostReadings = 200;

    /// <summary>Every oven that a meal has, or that was measured, by name.</summary>
    public async Task<ImmutableArray<OvenSeen>> AllAsync(CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        var written = new Dictionary<string, Oven>();
        foreach (var row in await db.Meals.AsNoTracking().OrderBy(row => row.ChangedAt).ToListAsync(stop))
        {
            foreach (var oven in MealFile.Read(row.Document).Meal!.Kitchen.Ovens)
            {
                written[AcceptedOven.KeyOf(oven.Name)] = oven;
            }
        }

        var trials = (await db.Set<OvenTrialRow>().AsNoTracking().OrderBy(row => row.Began).ToListAsync(stop)).ToLookup(row => AcceptedOven.KeyOf(row.Oven));
        var accepted = await db.Set<OvenFigureRow>().AsNoTracking().ToDictionaryAsync(row => row.Oven, stop);
        var meals = await times.MealsAsync(stop);
        var dials = meals.SelectMany(meal => meal.Dials).ToLookup(one => AcceptedOven.KeyOf(one.Oven), one => one.Reading);
        var joints = meals.SelectMany(meal => meal.Joints).ToLookup(one => AcceptedOven.KeyOf(one.Oven), one => one.Reading);
        var taps = meals.SelectMany(meal => meal.Ovens).ToLookup(one => AcceptedOven.KeyOf(one.Oven), one => one.Tap);
        return
        [
            .. written.Keys.Union(trials.Select(one => one.Key)).Union(accepted.Keys).Order(StringComparer.Ordinal).Select(key => new OvenSeen(
                key,
                written.GetValueOrDefault(key)?.Name ?? trials[key].Select(row => row.Oven).FirstOrDefault(key),
                written.GetValueOrDefault(key),
                [.. trials[key]],
                OvenFit.Of([.. trials[key].Where(row => row.Ended is not null).Select(row => row.Trial())], [.. taps[key]], [.. dials[key]], [.. joints[key]]),
                accepted.GetValueOrDefault(key))),
        ];
    }

    public async Task<OvenTrialRow?> TrialAsync(Guid trial, CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        return await db.Set<OvenTrialRow>().AsNoTracking().SingleOrDefaultAsync(row => row.Id == trial, stop);
    }

    /// <summary>The dial is turned now.</summary>
    public async Task<Guid> BeginAsync(string oven, CancellationToken stop)
    {
        var now = clock.GetUtcNow();
        await using var db = await databases.CreateDbContextAsync(stop);
        var row = new OvenTrialRow { Id = Guid.CreateVersion7(now), Oven = oven, Dial = Dial, Began = now.ToUnixTimeMilliseconds(), Document = "[]" };
        db.Add(row);
        await db.SaveChangesAsync(stop);
        return row.Id;
    }

    /// <summary>Something happens to a measuring that goes on.</summary>
    /// <returns>False when it is not there, or done.</returns>
    public async Task<bool> NoteAsync(Guid trial, Action<OvenTrialRow, long> note, CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        await using var whole = await db.Database.BeginTransactionAsync(stop);
        if (await db.Set<OvenTrialRow>().SingleOrDefaultAsync(row => row.Id == trial && row.Ended == null, stop) is not { } row)
        {
            return false;
        }

        note(row, clock.GetUtcNow().ToUnixTimeMilliseconds());
        await db.SaveChangesAsync(stop);
        await whole.CommitAsync(stop);
        return true;
    }

    public async Task DeleteTrialAsync(Guid trial, CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        await db.Set<OvenTrialRow>().Where(row => row.Id == trial).ExecuteDeleteAsync(stop);
    }

    /// <summary>From now on every meal's oven of this name is planned with what was learned.</summary>
    public Task UseAsync(OvenSeen oven, CancellationToken stop)
    {
        var figures = AcceptedOven.Of(oven.Name, oven.Learned);
        return SetAsync(oven.Key, new OvenFigureRow
        {
            Oven = oven.Key,
            HeatUpPerMinute = (double?)figures.HeatUpPerMinute,
            CoolDownPerMinute = (double?)figures.CoolDownPerMinute,
            ReadsHighBy = figures.ReadsHighBy,
            AcceptedAt = clock.GetUtcNow().ToUnixTimeMilliseconds(),
        }, stop);
    }

    /// <summary>It is planned as its meals say again; what was measured stays.</summary>
    public Task ForgetAsync(string oven, CancellationToken stop) => SetAsync(AcceptedOven.KeyOf(oven), null, stop);

    public async Task ForgetAllAsync(CancellationToken stop)
    {
        foreach (var oven in await AllAsync(stop))
        {
            await ForgetAsync(oven.Key, stop);
        }

        await using var db = await databases.CreateDbContextAsync(stop);
        await db.Set<OvenTrialRow>().ExecuteDeleteAsync(stop);
    }

    public static void Read(OvenTrialRow row, long now, double celsius)
    {
        var readings = row.Readings();
        row.Document = readings.Length < MostReadings ? Json(readings.Add((now, celsius))) : row.Document;
    }

    public static void TakeBackReading(OvenTrialRow row, long now)
    {
        var readings = row.Readings();
        row.Document = Json(readings.IsEmpty ? readings : readings.RemoveAt(readings.Length - 1));
    }

    static string Json(ImmutableArray<(long At, double Celsius)> readings) => JsonSerializer.Serialize(readings.Select(one => new[] { one.At, one.Celsius }));

    async Task SetAsync(string key, OvenFigureRow? row, CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        await using var whole = await db.Database.BeginTransactionAsync(stop);
        var gone = await db.Set<OvenFigureRow>().Where(one => one.Oven == key).ExecuteDeleteAsync(stop);
        if (row is not null)
        {
            db.Add(row);
            await db.SaveChangesAsync(stop);
        }

        if (row is not null || gone > 0)
        {
            await OutdatePlansAsync(db, key, stop);
        }

        await whole.CommitAsync(stop);
    }

    /// <summary>A plan was made with other rates: meals with the oven count as changed since.</summary>
    static async Task OutdatePlansAsync(CookAlongDb db, string key, CancellationToken stop)
    {
        foreach (var row in await db.Meals.AsNoTracking().ToListAsync(stop))
        {
            if (MealFile.Read(row.Document).Meal!.Kitchen.Ovens.Any(oven => AcceptedOven.KeyOf(oven.Name) == key))
            {
                await db.Meals.Where(one => one.Id == row.Id).ExecuteUpdateAsync(set => set.SetProperty(one => one.Version, one => one.Version + 1), stop);
            }
        }
    }
}

/// <summary>One of the household's ovens.</summary>
/// <param name="Key">Its name in small letters.</param>
/// <param name="Written">As the meal says that was changed last; null when no meal has it.</param>
/// <param name="Trials">The earliest first; also one that goes on.</param>
/// <param name="Accepted">What it is planned with; null = as written.</param>
public sealed record OvenSeen(string Key, string Name, Oven? Written, ImmutableArray<OvenTrialRow> Trials, OvenLearned Learned, OvenFigureRow? Accepted)
{
    public AcceptedOven Offered => AcceptedOven.Of(Name, Learned);

    /// <summary>There is something to take on that is not taken on yet.</summary>
    public bool HasNews => Learned.HasFigures && (Accepted is null
        || Offered != Accepted.Accepted);
}
