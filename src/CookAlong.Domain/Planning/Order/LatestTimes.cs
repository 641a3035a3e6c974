using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Planning.Order;

/// <summary>
/// When everything must happen at the latest for the table times to be kept, in the same order and with every limit kept that still
/// can be. All of it may be as late as this at once, so the difference to the earliest time is exact. A late tend costs
/// no table time: its give is no bound here.
/// </summary>
sealed class LatestTimes
{
    const int Unbound = int.MaxValue / 4;

    readonly OrderOfWork order;
    readonly EarliestTimes earliest;

    /// <param name="tableTime">The time each course must be served by.</param>
    /// <param name="handsStandStill">
    /// In a pause, work in somebody's hands ends later by the pause, and what must follow soon after it starts later by as much: no bound then.
    /// </param>
    public LatestTimes(OrderOfWork order, EarliestTimes earliest, Func<PlannedCourse, Minute> tableTime, bool handsStandStill = false)
    {
        (this.order, this.earliest) = (order, earliest);
        Starts = new int[order.Entries.Length];
        Ends = new int[order.Entries.Length];
        for (var at = 0; at < Starts.Length; at++)
        {
            var entry = order.Entries[at];
            Ends[at] = Unbound;
            Starts[at] = entry.IsBegun ? entry.Start
                : entry.Course is { } course ? tableTime(course) - order.Zero
                : entry.FixedAt ?? Unbound;
        }

        var limits = earliest.Kept.Where(limit => !handsStandStill || !order.Entries[limit.From].IsInHands).ToArray();
        Sweep();
        for (var round = 0; round < Starts.Length && Together(limits); round++)
        {
            Sweep();
        }
    }

    public int[] Starts { get; }

    /// <summary>Of a running step too: how late it may end.</summary>
    public int[] Ends { get; }

    void Sweep()
    {
        for (var at = Starts.Length - 1; at >= 0; at--)
        {
            foreach (var link in order.OutOf(at))
            {
                ref var bound = ref link.FromEnd ? ref Ends[at] : ref Starts[at];
                if (link.FromEnd || !order.Entries[at].IsBegun)
                {
                    bound = Math.Min(bound, Starts[link.To] - link.Least);
                }
            }

            var entry = order.Entries[at];
            if (!entry.IsBegun)
            {
                Starts[at] = Spans.Latest(entry.Spans, earliest.Starts[at], entry.Length, Math.Min(Starts[at], Ends[at] - entry.Length));
                Ends[at] = Starts[at] + entry.Length;
            }
        }
    }

    /// <summary>True when a limit pulled something nearer. The earliest times keep every limit given here, so no circle tightens without end.</summary>
    bool Together(Limit[] limits)
    {
        var hasMoved = false;
        foreach (var (from, to, most) in limits)
        {
            var end = order.Entries[from].IsBegun ? earliest.Ends[from] : Ends[from];
            if (Starts[to] > end + most)
            {
                Starts[to] = end + most;
                hasMoved = true;
            }
        }

        return hasMoved;
    }
}
