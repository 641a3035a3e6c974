using System.Collections.Immutable;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Planning.Menu;

/// <param name="Has">Shelf, ring or helper minutes there are.</param>
/// <param name="Wants">As many as are wanted when each step is done as late as its recipe allows.</param>
/// <param name="Must">As many as cannot lie earlier, however the kitchen is planned: with more than there are nothing is on time.</param>
/// <param name="Quarters">The same as <paramref name="Wants"/>, quarter of an hour by quarter of an hour.</param>
/// <param name="Dishes">Whose they are, those that want most first; none that wants nothing.</param>
public sealed record RoomLoad(RoomKind Kind, int Has, int Wants, int Must, ImmutableArray<int> Quarters, ImmutableArray<DishLoad> Dishes)
{
    const int Quarter = 15;

    internal static RoomLoad Of(RoomKind kind, int has, Func<Way, int> takes, Meal meal, Bounds bounds, Minute since, Minute until)
    {
        var wants = from dish in meal.Dishes
                    from step in dish.Steps
                    let way = step.Ways.First().Way
                    let end = bounds.LatestEnd(step)
                    select (dish.Id, Start: end - way.Minutes.Likely, End: end, Takes: takes(way), Step: step);
        var all = wants.ToList();
        var dishes = all.GroupBy(one => one.Id)
            .Select(dish => new DishLoad(dish.Key, dish.Sum(one => one.Takes * Overlap(one.Start, one.End, since, until))))
            .Where(dish => dish.Wants > 0)
            .OrderByDescending(dish => dish.Wants);
        var quarters = Enumerable.Range(0, (until - since) / Quarter).Select(i => since + (i * Quarter));
        return new RoomLoad(
            kind,
            has,
            all.Sum(one => one.Takes * Overlap(one.Start, one.End, since, until)),
            all.Sum(one => Must(one.Step)),
            [.. quarters.Select(at => all.Sum(one => one.Takes * Overlap(one.Start, one.End, at, at + Quarter)))],
            [.. dishes]);

        // Whatever way is chosen, done as early as may be.
        int Must(Step step) => bounds.EarliestEnd(step) is { } end
            ? step.Ways.Min(way => takes(way.Way) * Math.Min(Overlap(end - way.Way.Minutes.Likely, end, since, until), Overlap(bounds.LatestEnd(step) - way.Way.Minutes.Likely, bounds.LatestEnd(step), since, until)))
            : 0;
    }

    internal static int Overlap(Minute start, Minute end, Minute since, Minute until) => Math.Max(0, Minute.Earlier(end, until) - Minute.Later(start, since));
}

/// <summary>One dish's part of a <see cref="RoomLoad"/>, in the same minutes.</summary>
public sealed record DishLoad(DishId Dish, int Wants);
