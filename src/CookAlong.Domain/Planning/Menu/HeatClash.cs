using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Planning.Menu;

/// <summary>Two dishes that want an oven at the same time, done as late as they may be, at heats that do not meet.</summary>
/// <param name="Minutes">For how long.</param>
public sealed record HeatClash(DishId One, CelsiusRange OneHeat, DishId Other, CelsiusRange OtherHeat, int Minutes)
{
    internal static IEnumerable<HeatClash> All(Meal meal, Bounds bounds, Minute since, Minute until)
    {
        var bakes = (from dish in meal.Dishes
                     from step in dish.Steps
                     where step.Ways.All(way => way.Way.Uses.Oven is not null)
                     let way = step.Ways.First().Way
                     let end = bounds.LatestEnd(step)
                     select (Dish: dish.Id, Start: Minute.Later(end - way.Minutes.Likely, since), End: Minute.Earlier(end, until), Heat: way.Uses.Oven!.Celsius)).ToList();
        return bakes.SelectMany((one, i) => bakes.Skip(i + 1).Select(other => (one, other)))
            .Where(pair => pair.one.Dish != pair.other.Dish && !pair.one.Heat.Meets(pair.other.Heat))
            .Select(pair => new HeatClash(pair.one.Dish, pair.one.Heat, pair.other.Dish, pair.other.Heat, RoomLoad.Overlap(pair.one.Start, pair.one.End, pair.other.Start, pair.other.End)))
            .Where(clash => clash.Minutes > 0)
            .GroupBy(clash => (clash.One, clash.OneHeat, clash.Other, clash.OtherHeat))
            .Select(clashes => clashes.First() with { Minutes = clashes.Sum(clash => clash.Minutes) })
            .OrderByDescending(clash => clash.Minutes);
    }
}
