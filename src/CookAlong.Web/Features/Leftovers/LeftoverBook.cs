using System.Collections.Immutable;
using CookAlong.Domain;
using CookAlong.Domain.FoodSafety;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Runs;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Live.Runs;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Features.Settings;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Features.Leftovers;

/// <summary>The leftovers of meals: what people said of them, and what follows from the run and the household's region.</summary>
public sealed class LeftoverBook(IDbContextFactory<CookAlongDb> databases, MealBook meals, HouseholdRegion household, LiveRuns runs) : IDisposable
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
        var run = cooked is { } id && await runs.FindAsync(new RunId(id)) is { } live ? live.Current : null;
        var region = await household.AskAsync(stop);
        var dishes = kept.Meal.Dishes
            // A dish that was left out while cooking is not left over.
            .Where(dish => run is null || run.Meal.Dishes.Any(one => one.Id == dish.Id))
            .Select(dish => Left(dish, kept.Meal, run, rows.GetValueOrDefault(dish.Id.Value), region.Region));
        return new KeptLeftovers(kept, region, [.. dishes]);
    }

    /// <param name="more">Negative = fewer.</param>
    public Task AddPortionsAsync(Guid meal, DishId dish, int more, CancellationToken stop = default) =>
        SetAsync(meal, dish, (row, _) => row.Portions = Math.Clamp(row.Portions + more, 0, MostPortions), stop);

    /// <summary>One kind in or out, of what is said by now; with the last one out, all are guessed again.</summary>
    public Task SwitchKindAsync(Guid meal, DishId dish, LeftoverKind kind, bool isHeld, CancellationToken stop = default) =>
        SetAsync(
            meal,
            dish,
            (row, cooked) =>
            {
                var kinds = isHeld ? Kinds(row, cooked).Add(kind) : Kinds(row, cooked).Remove(kind);
                row.Kinds = kinds.IsEmpty ? null : string.Join(',', kinds);
            },
            stop);

    public Task SetOffTheHeatAsync(Guid meal, DishId dish, DateTimeOffset at, CancellationToken stop = default) =>
        SetAsync(meal, dish, (row, _) => row.OffTheHeatAt = at.ToUnixTimeMilliseconds(), stop);

    public void Dispose() => turn.Dispose();

    /// <summary>Nothing where the meal, or its dish, was deleted meanwhile.</summary>
    async Task SetAsync(Guid meal, DishId dish, Action<LeftoverRow, Dish> set, CancellationToken stop)
    {
        await turn.WaitAsync(stop);
        try
        {
            await using var db = await databases.CreateDbContextAsync(stop);
            // From here on nobody else writes, so the meal that is there stays.
            await using var whole = await db.Database.BeginTransactionAsync(stop);
            if ((await meals.OpenAsync(meal, stop))?.Meal.Dishes.FirstOrDefault(one => one.Id == dish) is not { } cooked)
            {
                return;
            }

            var row = await db.Set<LeftoverRow>().FindAsync([meal, dish.Value], stop) ?? db.Add(new LeftoverRow { Meal = meal, Dish = dish.Value }).Entity;
            set(row, cooked);
            await db.SaveChangesAsync(stop);
            await whole.CommitAsync(stop);
        }
        finally
        {
            turn.Release();
        }
    }

    static ImmutableSortedSet<LeftoverKind> Kinds(LeftoverRow? row, Dish dish) =>
        row?.Kinds is { } names ? [.. names.Split(',').Select(Enum.Parse<LeftoverKind>)] : LeftoverKinds.In(dish);

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

        var kinds = Kinds(row, dish);
        return new DishLeft(
            dish,
            row?.Portions ?? 0,
            kinds,
            hot,
            row?.OffTheHeatAt is not null ? HeatKnown.Said : seen is not null ? HeatKnown.FromTheRun : HeatKnown.FromTheTable,
            LeftoverTimes.Of(region, kinds, hot.Cooked, hot.OffTheHeat));
    }
}
