using CookAlong.Web.Data;
using CookAlong.Web.Data.Archive;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Features.Meals;

/// <summary>
/// Two meals that an invented household cooked before, so that there is something to look back on at the first day: an
/// unpacked archive beside the program, taken in as any archive is. They teach until the household has cooked a meal of its own.
/// </summary>
public sealed class EarlierMeals(HouseholdArchive archive, IDbContextFactory<CookAlongDb> databases)
{
    /// <summary>By run, the meal: what is invented is known by these ids for good.</summary>
    public static readonly IReadOnlyDictionary<Guid, Guid> Invented = new Dictionary<Guid, Guid>
    {
        [new("0199e000-0000-7000-8000-00000000a00c")] = new("0199e000-0000-7000-8000-00000000a001"),
        [new("0197a000-0000-7000-8000-00000000b00c")] = new("0197a000-0000-7000-8000-00000000b001"),
    };

    /// <summary>When their oven was measured.</summary>
    public static readonly Guid InventedTrial = new("0199e000-0000-7000-8000-0000000000fe");

    public string Folder { get; init; } = Path.Combine(AppContext.BaseDirectory, "seed-data", "earlier");

    /// <returns>Names of the meals added; none where they are there, or where no such folder lies beside the program.</returns>
    /// <exception cref="InvalidDataException">What lies there is not what was shipped.</exception>
    public async Task<IReadOnlyList<string>> AddAsync(CancellationToken stop)
    {
        if (!Directory.Exists(Folder))
        {
            return [];
        }

        var entries = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var file in Directory.EnumerateFiles(Folder, "*.json", SearchOption.AllDirectories))
        {
            entries.Add(Path.GetRelativePath(Folder, file).Replace(Path.DirectorySeparatorChar, '/'), await File.ReadAllTextAsync(file, stop));
        }

        var imported = await archive.ImportAsync(entries, stop);
        if (imported.Bad is [var bad, ..])
        {
            throw new InvalidDataException($"{bad.Entry} in {Folder}: {bad.Problem}");
        }

        await using var db = await databases.CreateDbContextAsync(stop);
        var meals = Invented.Values.ToArray();
        return imported.Meals == 0 ? [] : await db.Meals.Where(row => meals.Contains(row.Id)).OrderByDescending(row => row.ChangedAt).Select(row => row.Name).ToListAsync(stop);
    }

    public async Task<bool> AreHereAsync(CancellationToken stop)
    {
        var (meals, runs) = (Invented.Values.ToArray(), Invented.Keys.ToArray());
        await using var db = await databases.CreateDbContextAsync(stop);
        return await db.Set<RunRow>().AnyAsync(row => runs.Contains(row.Id), stop) || await db.Meals.AnyAsync(row => meals.Contains(row.Id), stop);
    }

    /// <summary>The meals with all that is known of them: the one place where a log is deleted, for nobody cooked it.</summary>
    public async Task DeleteAsync(CancellationToken stop)
    {
        var (meals, runs) = (Invented.Values.ToArray(), Invented.Keys.ToArray());
        await using var db = await databases.CreateDbContextAsync(stop);
        await using var whole = await db.Database.BeginTransactionAsync(stop);
        await db.Set<AgainRow>().Where(row => runs.Contains(row.Run)).ExecuteDeleteAsync(stop);
        await db.Set<RunEventRow>().Where(row => runs.Contains(row.Run)).ExecuteDeleteAsync(stop);
        await db.Set<DebriefNoteRow>().Where(row => runs.Contains(row.Run)).ExecuteDeleteAsync(stop);
        await db.Set<ForgottenRunRow>().Where(row => runs.Contains(row.Run)).ExecuteDeleteAsync(stop);
        await db.Set<DebriefPhotoRow>().Where(row => runs.Contains(row.Run)).ExecuteDeleteAsync(stop);
        await db.Set<OvenTrialRow>().Where(row => row.Id == InventedTrial).ExecuteDeleteAsync(stop);
        await db.Set<RunRow>().Where(row => runs.Contains(row.Id)).ExecuteDeleteAsync(stop);
        await db.Set<ShoppingTapRow>().Where(row => meals.Contains(row.Meal) && row.Setting == null).ExecuteDeleteAsync(stop);
        await db.Meals.Where(row => meals.Contains(row.Id)).ExecuteDeleteAsync(stop);
        await whole.CommitAsync(stop);
    }
}
