using CookAlong.Domain;
using CookAlong.Domain.Kitchens;

namespace CookAlong.Planner.Ovens;

/// <summary>
/// The oven's programme: whole degrees at whole minutes, linear between, inside every range at every minute and within
/// the oven's rates exactly. Temperatures are settled where something goes in or comes out; between two such minutes
/// nothing changes inside, so a line from one to the other stays inside every range when both ends do.
/// </summary>
internal static class OvenCurve
{
    /// <param name="from">Where the programme starts, at <paramref name="celsius"/>.</param>
    /// <param name="dialTurn">How many degree-minutes away from the food's ideal one turn of the dial is worth.</param>
    public static List<(int At, int Celsius)> Points(Oven oven, int from, int celsius, IEnumerable<Stay> stays, long dialTurn = Prices.UsualDialTurn)
    {
        var kept = Yielding.Keep(oven, from, celsius, stays);
        var knots = Knots(from, celsius, kept);
        return Settling.Settle(oven, knots, kept, dialTurn) is { } settled
            ? Shape(oven, knots, settled, kept)
            : Strings.Through(oven, knots);
    }

    private static List<Knot> Knots(int from, int celsius, List<Stay> stays)
    {
        var times = stays.SelectMany(stay => new[] { stay.Start, stay.End }).Where(at => at > from).Distinct().Order();
        return
        [
            new Knot(from, celsius, celsius),
            .. times.Select(at =>
            {
                var here = stays.Where(stay => stay.Start <= at && at <= stay.End).ToList();
                return new Knot(at, here.Max(stay => stay.Celsius.Min), here.Min(stay => stay.Celsius.Max));
            }),
        ];
    }

    /// <summary>Heats as late and cools as early as it can between settled temperatures; goes off where it stands empty for long.</summary>
    private static List<(int At, int Celsius)> Shape(Oven oven, List<Knot> knots, int[] settled, List<Stay> stays)
    {
        var points = new List<(int At, int Celsius)> { (knots[0].At, settled[0]) };
        for (var index = 1; index < knots.Count; index++)
        {
            var (start, end) = (knots[index - 1].At, knots[index].At);
            var (before, after) = (settled[index - 1], settled[index]);
            var isEmpty = !stays.Any(stay => stay.Start <= start && end <= stay.End);
            var off = Math.Min(Math.Min(before, after), oven.StartsAt);
            if (isEmpty && end - start >= EmptyForLong && end - start > oven.MinutesBetween(before, off) + oven.MinutesBetween(off, after))
            {
                Add(points, start + oven.MinutesBetween(before, off), off);
                Add(points, end - oven.MinutesBetween(off, after), off);
            }
            else if (after > before)
            {
                Add(points, end - oven.MinutesBetween(before, after), before);
            }
            else if (after < before)
            {
                Add(points, start + oven.MinutesBetween(before, after), after);
            }

            Add(points, end, after);
        }

        return points;
    }

    /// <summary>Minutes an empty oven must wait for its next use to be worth turning off.</summary>
    private const int EmptyForLong = 60;

    private static void Add(List<(int At, int Celsius)> points, int at, int celsius)
    {
        if (points[^1].At == at)
        {
            return;
        }

        // A point on a level line says nothing.
        if (points.Count > 1 && points[^1].Celsius == celsius && points[^2].Celsius == celsius)
        {
            points[^1] = (at, celsius);
        }
        else
        {
            points.Add((at, celsius));
        }
    }
}
