using System.Diagnostics;
using CookAlong.Domain.Kitchens;

namespace CookAlong.Planner.Ovens;

/// <summary>
/// The exact way through the knots where whole degrees at every one of them will not do: a string pulled taut through
/// the ranges bends only at their ends, which are whole degrees, and no curve rises or falls more gently than it.
/// </summary>
internal static class Strings
{
    public static List<(int At, int Celsius)> Through(Oven oven, List<Knot> knots)
    {
        // The string's last part may be level, so every range's ends count at every knot they lie in.
        var ends = knots.SelectMany(knot => new[] { knot.Min, knot.Max }).Distinct().ToList();
        var bends = knots.Select((knot, index) => (Index: index, Knot: knot))
            .SelectMany(one => ends.Where(end => one.Knot.Min <= end && end <= one.Knot.Max).Select(end => (one.Index, Celsius: end)))
            .ToList();
        var from = new Dictionary<(int Index, int Celsius), (int Index, int Celsius)?> { [bends[0]] = null };
        foreach (var bend in bends)
        {
            if (!from.ContainsKey(bend))
            {
                continue;
            }

            foreach (var next in bends.Where(next => next.Index > bend.Index && !from.ContainsKey(next)))
            {
                if (IsStraightWay(oven, knots, bend, next))
                {
                    from[next] = bend;
                }
            }
        }

        var last = bends.Where(bend => bend.Index == knots.Count - 1 && from.ContainsKey(bend)).ToList();
        if (last.Count == 0)
        {
            throw new UnreachableException($"oven {oven.Id} has no curve through stays that allow one pair by pair");
        }

        var points = new List<(int At, int Celsius)>();
        for ((int Index, int Celsius)? bend = last[0]; bend is { } at; bend = from[at])
        {
            points.Insert(0, (knots[at.Index].At, at.Celsius));
        }

        return points;
    }

    private static bool IsStraightWay(Oven oven, List<Knot> knots, (int Index, int Celsius) one, (int Index, int Celsius) other)
    {
        long minutes = knots[other.Index].At - knots[one.Index].At;
        long rise = other.Celsius - one.Celsius;
        if (rise > oven.HeatUpPerMinute * minutes || -rise > oven.CoolDownPerMinute * minutes)
        {
            return false;
        }

        return knots.Skip(one.Index + 1).Take(other.Index - one.Index - 1).All(knot =>
        {
            var scaled = (one.Celsius * minutes) + (rise * (knot.At - knots[one.Index].At));
            return knot.Min * minutes <= scaled && scaled <= knot.Max * minutes;
        });
    }
}
