using CookAlong.Domain;
using CookAlong.Intake.MealFiles;
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
            var (name, document) = Upcoming(await File.ReadAllTextAsync(file, stop), Minute.Of(now));
            names.Add(name);
            db.Meals.Add(new MealRow
            {
                Id = Guid.CreateVersion7(now),
                Name = name,
                Document = document,
                ChangedAt = now.ToUnixTimeMilliseconds(),
            });
        }

        await db.SaveChangesAsync(stop);
        return names;
    }

    /// <summary>The meal moved to tomorrow, or as many days later as work begun days ahead needs; its clock times stay.</summary>
    static (string Name, string Document) Upcoming(string json, Minute now)
    {
        var document = MealDocument.Of(json);
        var zone = MealFile.Read(json).Meal!.TimeZone;
        var day = DateOnly.FromDateTime(LocalTime.Show(now, zone).DateTime).AddDays(1);
        for (var later = 0; later <= MealFile.MostDays; later++)
        {
            document.MoveTo(day.AddDays(later));
            if (MealFile.Read(document.Text, now).Meal is { } meal && (meal.NotBefore ?? meal.FirstTableTime) >= now)
            {
                return (meal.Name, document.Text);
            }
        }

        throw new InvalidOperationException($"the demo meal cannot be moved to any day after {now}");
    }

    static string[] Files() => Directory.Exists(Folder) ? [.. Directory.EnumerateFiles(Folder, "*.json").Order(StringComparer.Ordinal)] : [];
}
