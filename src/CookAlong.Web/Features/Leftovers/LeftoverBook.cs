using System.Collections.Immutable;
using CookAlong.Domain;
using CookAlong.Domain.FoodSafety;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Runs;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Features.Settings;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Features.Leftovers;

/// <summary>The leftovers of meals: what people said of them, and what follows from the run and the household's region.</summary>
public sealed class LeftoverBook(IDbContextFactory<CookAlongDb> databases, MealBook meals, HouseholdRegion household, EventLog log) : IDisposable
{
    // Two people count portions at once: each tap must see what the one before made.
    readonly SemaphoreSlim turn = new(1);

    /// <summary>More than anybody writes labels for.</summary>
    public const int MostPortions = 100;

    /// <summary>Null when the meal is not there.</summary>
    public async Task<KeptLeftovers?> OfAsync(Guid meal, CancellationToken stop = default)
    {
        if (await meals.OpenAsync(meal, stop) is not { } kept)
        {
            return null;
        }

        await using var db = await databases.CreateDbContextAsync(stop);
        var rows = await db.Set<LeftoverRow>().AsNoTracking().Where(row => row.Meal == meal).ToDictionaryAsync(row => row.Dish, StringComparer.Ordinal, stop);
        var cooked = await db.Set<RunRow>().Where(run => run.Meal == meal && run.Rate == null).OrderByDescending(run => run.Began).Select(run => (Guid?)run.Id).FirstOrDefaultAsync(stop);
        var run = cooked is { } id ? await log.LoadAsync(new RunId(id), stop) : null;
        var region = await household.AskAsync(stop);
        var dishes = kept.Meal.Dishes
            // A dish that was left out while cooking is not left over.
            .Where(dish => run is null || run.Meal.Dishes.Any(one => one.Id == dish.Id))
            .Select(dish => Left(dish, kept.Meal, run, rows.GetValueOrDefault(dish.Id.Value), region.Region));
        return new KeptLeftovers(kept, region, [.. dishes]);
    }

    /// <param name="more">Negative = fewer.</param>
    public Task AddPortionsAsync(Guid meal, DishId dish, int more, CancellationToken stop = default) =>
        SetAsync(meal, dish, row => row.Portions = Math.Clamp(row.Portions + more, 0, MostPortions), stop);

    /// <param name="kinds">None = guessed again.</param>
    public Task SetKindsAsync(Guid meal, DishId dish, IReadOnlyCollection<LeftoverKind> kinds, CancellationToken stop = default) =>
        SetAsync(meal, dish, row => row.Kinds = kinds.Count == 0 ? null : string.Join(',', kinds), stop);

    public Task SetOffTheHeatAsync(Guid meal, DishId dish, DateTimeOffset at, CancellationToken stop = default) =>
        SetAsync(meal, dish, row => row.OffTheHeatAt = at.ToUnixTimeMilliseconds(), stop);

    public void Dispose() => turn.Dispose();

    async Task SetAsync(Guid meal, DishId dish, Action<LeftoverRow> set, CancellationToken stop)
    {
        await turn.WaitAsync(stop);
        try
        {
            await using var db = await databases.CreateDbContextAsync(stop);
            var row = await db.Set<LeftoverRow>().FindAsync([meal, dish.Value], stop) ?? db.Add(new LeftoverRow { Meal = meal, Dish = dish.Value }).Entity;
            set(row);
            await db.SaveChangesAsync(stop);
        }
        finally
        {
            turn.Release();
        }
    }

    static DishLeft Left(Dish dish, Meal meal, Run? run, LeftoverRow? row, Region region)
    {
        var seen = run is null ? null : HotTimes.Of(dish, step => run.Steps.GetValueOrDefault(step)?.Finished);
        var table = meal.CourseOf(dish).TableTime.Utc;
        var hot = seen ?? new HotTimes(table, table);
        if (row?.OffTheHeatAt is { } said)
        {
            var at = DateTimeOffset.FromUnixTimeMilliseconds(said);
            hot = new HotTimes(hot.WasReheated && hot.Cooked < at ? hot.Cooked : at, at);
        }

        var kinds = row?.Kinds is { } names ? names.Split(',').Select(Enum.Parse<LeftoverKind>).ToImmutableSortedSet() : LeftoverKinds.In(dish);
        return new DishLeft(
            dish,
            row?.Portions ?? 0,
            kinds,
            hot,
            row?.OffTheHeatAt is not null ? HeatKnown.Said : seen is not null ? HeatKnown.FromTheRun : HeatKnown.FromTheTable,
            LeftoverTimes.Of(region, kinds, hot.Cooked, hot.OffTheHeat));
    }
}
