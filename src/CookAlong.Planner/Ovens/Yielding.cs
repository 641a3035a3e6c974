using CookAlong.Domain;
using CookAlong.Domain.Kitchens;

namespace CookAlong.Planner.Ovens;

/// <summary>While a meal runs the oven may be too cold, or shared by what should not share it: what is inside already gives way to what can still be kept.</summary>
internal static class Yielding
{
    public static List<Stay> Keep(Oven oven, int from, int celsius, IEnumerable<Stay> stays)
    {
        var now = new CelsiusRange(celsius, celsius, celsius);
        var kept = new List<Stay>();
        foreach (var stay in stays.Where(stay => stay.End >= from).OrderBy(stay => stay.MayYield).ThenBy(stay => stay.Start))
        {
            if (!stay.MayYield)
            {
                kept.Add(stay);
                continue;
            }

            var reached = stay with { Start = Math.Max(stay.Start, from + oven.MinutesBetween(now, stay.Celsius)) };
            if (reached.Start <= reached.End && kept.All(other => Allows(oven, other, reached)))
            {
                kept.Add(reached);
            }
        }

        return kept;
    }

    private static bool Allows(Oven oven, Stay one, Stay other) =>
        one.Celsius.Meets(other.Celsius)
        || other.Start - one.End >= oven.MinutesBetween(one.Celsius, other.Celsius)
        || one.Start - other.End >= oven.MinutesBetween(other.Celsius, one.Celsius);
}
