using CookAlong.Domain.Kitchens;

namespace CookAlong.Planner.Ovens;

/// <summary>Chooses the temperature at every knot: what a hand can set on a dial, close to what the food likes best, with few turns.</summary>
internal static class Settling
{
    /// <summary>
    /// A dial is marked in fives at best, so what it is turned to ends on 0 or 5 wherever the ranges leave one of them,
    /// however many turns or degrees that costs.
    /// </summary>
    private const long BetweenMarks = 1_000_000;

    /// <summary>A multiple of 10 is easier to find than one of 5 only; not so much that it beats a 5 that is some food's ideal.</summary>
    private const long OnlyFive = 300;

    /// <param name="dialTurn">How many degree-minutes away from the ideal one turn of the dial is worth.</param>
    /// <returns>Null where whole degrees at every knot cannot keep the rates (rates that are no whole number).</returns>
    public static int[]? Settle(Oven oven, List<Knot> knots, List<Stay> stays, long dialTurn)
    {
        var cost = new List<long[]> { new long[1] };
        var from = new List<int[]> { new int[1] };
        for (var index = 1; index < knots.Count; index++)
        {
            var (before, knot) = (knots[index - 1], knots[index]);
            var minutes = knot.At - before.At;
            var inside = stays.Where(stay => stay.Start <= before.At && knot.At <= stay.End).Select(stay => stay.Celsius.Ideal).ToList();
            var wanted = stays.Where(stay => stay.Start <= knot.At && knot.At <= stay.End).Select(stay => stay.Celsius.Ideal).ToHashSet();
            var (up, down) = (Most(oven.HeatUpPerMinute, minutes), Most(oven.CoolDownPerMinute, minutes));
            var size = Math.Max(0, knot.Max - knot.Min + 1);
            var (costs, cameFrom) = (new long[size], new int[size]);
            for (var to = 0; to < size; to++)
            {
                var celsius = knot.Min + to;
                costs[to] = long.MaxValue;
                var turn = dialTurn + OfMark(celsius, wanted);
                var lowest = Math.Max(before.Min, celsius - up);
                var highest = Math.Min(before.Max, celsius + down);
                for (var last = lowest; last <= highest; last++)
                {
                    var soFar = cost[index - 1][last - before.Min];
                    if (soFar == long.MaxValue)
                    {
                        continue;
                    }

                    var away = inside.Sum(ideal => (long)Math.Abs(ideal - celsius) + Math.Abs(ideal - last)) * minutes / 2;
                    var total = soFar + away + (last == celsius ? 0 : turn);
                    if (total < costs[to])
                    {
                        (costs[to], cameFrom[to]) = (total, last);
                    }
                }
            }

            cost.Add(costs);
            from.Add(cameFrom);
        }

        return Trace(knots, cost, from);
    }

    private static long OfMark(int celsius, HashSet<int> ideals) => celsius switch
    {
        _ when celsius % 5 != 0 => BetweenMarks,
        _ when celsius % 10 == 0 || ideals.Contains(celsius) => 0,
        _ => OnlyFive,
    };

    /// <summary>Whole degrees within so many minutes; no oven spans more than ten thousand.</summary>
    private static int Most(decimal perMinute, int minutes) => (int)Math.Floor(Math.Min(perMinute, 10_000) * Math.Min(minutes, 10_000));

    private static int[]? Trace(List<Knot> knots, List<long[]> cost, List<int[]> from)
    {
        var last = cost[^1];
        if (last.Length == 0 || last.Min() == long.MaxValue)
        {
            return null;
        }

        var settled = new int[knots.Count];
        settled[^1] = knots[^1].Min + Array.IndexOf(last, last.Min());
        for (var index = knots.Count - 1; index > 0; index--)
        {
            settled[index - 1] = from[index][settled[index] - knots[index].Min];
        }

        return settled;
    }
}
