using CookAlong.Domain.Meals;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Meals;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Features.Debrief.Again;

/// <summary>What was said, and came back, of a meal's dishes the last time each was really cooked, in whatever meal; and what of it has been seen to.</summary>
public sealed class LastTimes(IDbContextFactory<CookAlongDb> databases, Debriefs debriefs)
{
    public async Task<LastTimeSeen> OfAsync(Guid meal, Meal now, CancellationToken stop = default)
    {
        var last = await debriefs.LastOfAsync(meal, stop);
        await using var db = await databases.CreateDbContextAsync(stop);
        var runs = await db.Set<RunRow>().AsNoTracking().Where(run => run.Rate == null && run.Ended != null).OrderByDescending(run => run.Began).ToListAsync(stop);
        // What the household cooked stands before what was invented.
        runs = [.. runs.OrderByDescending(run => run.Id == last).ThenBy(run => EarlierMeals.Invented.ContainsKey(run.Id))];
        var notes = await db.Set<DebriefNoteRow>().AsNoTracking().ToListAsync(stop);
        var leftovers = await db.Set<LeftoverRow>().AsNoTracking().ToListAsync(stop);
        var meals = (await db.Meals.AsNoTracking().ToListAsync(stop)).ToDictionary(row => row.Id, row => Intake.MealFiles.MealFile.Read(row.Document).Meal!);
        List<DishSaid> dishes = [];
        foreach (var dish in now.Dishes)
        {
            foreach (var run in runs)
            {
                var before = meals.GetValueOrDefault(run.Meal)?.Dishes.FirstOrDefault(one => run.Id == last ? one.Id == dish.Id : string.Equals(one.Name, dish.Name, StringComparison.OrdinalIgnoreCase));
                // A meal that is gone leaves its last run's notes under the dishes' own ids.
                var id = before?.Id ?? (run.Id == last ? dish.Id : (Domain.DishId?)null);
                if (id is null)
                {
                    continue;
                }

                var note = notes.FirstOrDefault(one => one.Run == run.Id && one.Dish == id.Value.Value);
                var left = run.Meal == meal && run.Id != last ? null : leftovers.FirstOrDefault(one => one.Meal == run.Meal && one.Dish == id.Value.Value);
                var back = left is null ? null : AgainWords.CameBack(left.Portions, (before ?? dish).Serves);
                if (note is not null || back is not null)
                {
                    dishes.Add(new(dish.Name, run.Id == last ? null : run.Name, run.Id, note?.Verdict ?? "", note?.Note ?? "", back));
                    break;
                }
            }
        }

        var whole = last is { } one ? notes.FirstOrDefault(note => note.Run == one && note.Dish.Length == 0)?.Note ?? "" : "";
        string[] items = [.. AgainWords.Sentences(whole).Concat(dishes.Select(dish => AgainWords.Differently(dish.Dish, dish.Verdict, dish.CameBack)).OfType<string>()).Distinct()];
        var ticked = await db.Set<AgainTickRow>().Where(tick => tick.Meal == meal).Select(tick => tick.Item).ToHashSetAsync(stop);
        return new(last, dishes, [.. items.Select(item => (item, ticked.Contains(item)))]);
    }

    public async Task TickAsync(Guid meal, string item, bool isSeenTo, CancellationToken stop = default)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        await using var whole = await db.Database.BeginTransactionAsync(stop);
        await db.Set<AgainTickRow>().Where(tick => tick.Meal == meal && tick.Item == item).ExecuteDeleteAsync(stop);
        if (isSeenTo && await db.Meals.AnyAsync(row => row.Id == meal, stop))
        {
            db.Add(new AgainTickRow { Meal = meal, Item = item });
            await db.SaveChangesAsync(stop);
        }

        await whole.CommitAsync(stop);
    }
}

/// <param name="Run">The last time this meal, or the one it is again, was cooked; null = never.</param>
/// <param name="Differently">What to do differently, and whether it was seen to.</param>
public sealed record LastTimeSeen(Guid? Run, IReadOnlyList<DishSaid> Dishes, IReadOnlyList<(string Item, bool IsSeenTo)> Differently);

/// <param name="In">Another meal in which the dish was cooked last; null = this one's last time.</param>
/// <param name="CameBack">"a third of it came back"; null = nothing did.</param>
public sealed record DishSaid(string Dish, string? In, Guid Run, string Verdict, string Note, string? CameBack);
