using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Data.Archive;

/// <summary>Everything a household has, out into one file and in from one.</summary>
public sealed class HouseholdArchive(IDbContextFactory<CookAlongDb> databases, TimeProvider time)
{
    /// <returns>How many runs were left out because they go on.</returns>
    public async Task<int> ExportAsync(Stream to, CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        await ArchiveWriting.WriteAsync(to, await HouseholdRows.OfAsync(db, stop), time.GetUtcNow(), stop);
        return await db.Set<RunRow>().CountAsync(run => run.Ended == null, stop);
    }

    /// <summary>Adds what is not there, by id, all or nothing. What is there stays as it is, with all that belongs to it.</summary>
    public async Task<Imported> ImportAsync(Stream from, CancellationToken stop)
    {
        List<BadEntry> bad = [];
        return await ArchiveEntries.ReadAsync(from, bad, stop) is { } entries ? await ImportAsync(entries, stop) : new Imported(0, 0, 0, bad);
    }

    /// <summary>The same from an archive's entries by name, already unpacked.</summary>
    public async Task<Imported> ImportAsync(Dictionary<string, string> entries, CancellationToken stop)
    {
        List<BadEntry> bad = [];
        if (new ArchiveReading(entries, bad).Read() is not { } rows)
        {
            return new Imported(0, 0, 0, bad);
        }

        await using var db = await databases.CreateDbContextAsync(stop);
        await using var transaction = await db.Database.BeginTransactionAsync(stop);
        var there = await HouseholdKeys.OfAsync(db, stop);
        var meals = rows.Meals.Select(row => row.Id).Except(there.Meals).ToHashSet();
        var dishes = rows.Dishes.Select(row => row.Id).Except(there.Dishes).ToHashSet();
        var runs = rows.Runs.Select(row => row.Id).Except(there.Runs).ToHashSet();

        db.AddRange(rows.Meals.Where(row => meals.Contains(row.Id)));
        db.AddRange(rows.Plans.Where(row => meals.Contains(row.Meal)));
        db.AddRange(rows.Again.Where(row => meals.Contains(row.Meal)));
        db.AddRange(rows.Leftovers.Where(row => meals.Contains(row.Meal)));
        db.AddRange(rows.ShoppingTaps.Where(row => !there.ShoppingLists.Contains(row.Meal)));
        db.AddRange(rows.Dishes.Where(row => dishes.Contains(row.Id)));
        db.AddRange(rows.DishVersions.Where(row => dishes.Contains(row.Dish)));
        db.AddRange(rows.Runs.Where(row => runs.Contains(row.Id)));
        db.AddRange(rows.RunEvents.Where(row => runs.Contains(row.Run)));
        db.AddRange(rows.WrittenTimes.Where(row => runs.Contains(row.Run)));
        db.AddRange(rows.DebriefNotes.Where(row => runs.Contains(row.Run)));
        db.AddRange(rows.ForgottenRuns.Where(row => runs.Contains(row.Run)));
        db.AddRange(rows.LearnedTimes.Where(row => !there.LearnedTimes.Contains((row.Dish, row.Text))));
        db.AddRange(rows.AgainTicks.Where(row => meals.Contains(row.Meal)));
        db.AddRange(rows.OvenTrials.Where(row => !there.OvenTrials.Contains(row.Id)));
        db.AddRange(rows.OvenFigures.Where(row => !there.OvenFigures.Contains(row.Oven)));
        db.AddRange(rows.DebriefPhotos.Where(row => runs.Contains(row.Run)));
        db.AddRange(there.HasSettings ? [] : rows.Settings);
        await db.SaveChangesAsync(stop);
        await transaction.CommitAsync(stop);
        return new Imported(meals.Count, dishes.Count, runs.Count, []);
    }
}

/// <param name="Bad">Not empty: nothing was added.</param>
public sealed record Imported(int Meals, int Dishes, int Runs, IReadOnlyList<BadEntry> Bad);

/// <summary>What a household has, by what it is known by.</summary>
sealed record HouseholdKeys(
    IReadOnlySet<Guid> Meals,
    IReadOnlySet<Guid> ShoppingLists,
    IReadOnlySet<Guid> Dishes,
    IReadOnlySet<Guid> Runs,
    IReadOnlySet<(string Dish, string Text)> LearnedTimes,
    IReadOnlySet<Guid> OvenTrials,
    IReadOnlySet<string> OvenFigures,
    bool HasSettings)
{
    public static async Task<HouseholdKeys> OfAsync(CookAlongDb db, CancellationToken stop) => new(
        await db.Meals.Select(row => row.Id).ToHashSetAsync(stop),
        await db.Set<ShoppingTapRow>().Select(row => row.Meal).ToHashSetAsync(stop),
        await db.Dishes.Select(row => row.Id).ToHashSetAsync(stop),
        await db.Set<RunRow>().Select(row => row.Id).ToHashSetAsync(stop),
        (await db.Set<LearnedTimeRow>().Select(row => new { row.Dish, row.Text }).ToListAsync(stop)).Select(row => (row.Dish, row.Text)).ToHashSet(),
        await db.Set<OvenTrialRow>().Select(row => row.Id).ToHashSetAsync(stop),
        await db.Set<OvenFigureRow>().Select(row => row.Oven).ToHashSetAsync(stop),
        await db.Set<SettingsRow>().AnyAsync(stop));
}
