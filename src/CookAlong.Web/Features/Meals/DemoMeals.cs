using CookAlong.Web.Data;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Features.Meals;

/// <summary>The meals that come with CookAlong, put into a new household so that there is something to cook.</summary>
public sealed class DemoMeals(IDbContextFactory<CookAlongDb> databases, TimeProvider time)
{
    /// <summary>Beside the program, wherever it was started from.</summary>
    public static string Folder => Path.Combine(AppContext.BaseDirectory, "seed-data", "meals");

    /// <returns>Names of the meals added.</returns>
    public async Task<IReadOnlyList<string>> AddAsync(CancellationToken stop)
    {
        var names = new List<string>();
        await using var db = await databases.CreateDbContextAsync(stop);
        foreach (var file in Files())
        {
            var now = time.GetUtcNow();
            var name = Path.GetFileNameWithoutExtension(file);
            names.Add(name);
            db.Meals.Add(new MealRow
            {
                Id = Guid.CreateVersion7(now),
                Name = name,
                Document = await File.ReadAllTextAsync(file, stop),
                ChangedAt = now.ToUnixTimeMilliseconds(),
            });
        }

        await db.SaveChangesAsync(stop);
        return names;
    }

    static string[] Files() => Directory.Exists(Folder) ? [.. Directory.EnumerateFiles(Folder, "*.json").Order(StringComparer.Ordinal)] : [];
}
