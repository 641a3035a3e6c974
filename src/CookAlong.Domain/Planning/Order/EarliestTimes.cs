namespace CookAlong.Domain.Planning.Order;

/// <summary>
/// When everything happens at the earliest: not before planned, not before now, and after what it waits for. Where that would keep
/// food waiting too long, what can still begin later does, as a cook would hold back the greens when the roast is behind;
/// what has begun cannot, and then the limit breaks.
/// </summary>
sealed class EarliestTimes
{
    readonly OrderOfWork order;
    readonly int now;
    readonly bool[] isKept;
    int[] floors;

    public EarliestTimes(OrderOfWork order, int now)
    {
        (this.order, this.now) = (order, now);
        floors = [.. order.Entries.Select(FloorOf)];
        isKept = new bool[order.Limits.Length];
        Starts = new int[floors.Length];
        Ends = new int[floors.Length];
        Sweep();
        for (var at = 0; at < isKept.Length; at++)
        {
            isKept[at] = Over(at) <= 0;
        }

        for (var at = 0; at < isKept.Length; at++)
        {
            if (!isKept[at])
            {
                TryToKeep(at);
            }
        }
    }

    public int[] Starts { get; private set; }

    public int[] Ends { get; private set; }

    /// <summary>The limits that hold at these times.</summary>
    public IEnumerable<Limit> Kept => order.Limits.Where((_, at) => isKept[at]);

    // Whether a dish went into its warm oven, or a course was served, nobody says: those stay at their planned time while they can.
    int FloorOf(Entry entry) => entry.Kind is EntryKind.Step or EntryKind.Tend ? Math.Max(entry.Start, now) : entry.Start;

    int Over(int limit)
    {
        var (from, to, most) = order.Limits[limit];
        return Starts[to] - Ends[from] - most;
    }

    void Sweep()
    {
        for (var at = 0; at < Starts.Length; at++)
        {
            var entry = order.Entries[at];
            if (entry.IsBegun)
            {
                Starts[at] = entry.Start;
                Ends[at] = entry.IsFinished ? entry.End : Math.Max(entry.End, now);
                continue;
            }

            var start = floors[at];
            foreach (var link in order.Into(at))
            {
                start = Math.Max(start, (link.FromEnd ? Ends[link.From] : Starts[link.From]) + link.Least);
            }

            Starts[at] = (int)Spans.Earliest(entry.Spans, start, entry.Length);
            Ends[at] = Starts[at] + entry.Length;
        }
    }

    void TryToKeep(int limit)
    {
        var before = (floors, Starts, Ends);
        (floors, Starts, Ends) = ([.. floors], [.. Starts], [.. Ends]);
        isKept[limit] = true;
        // Each round can settle one limit more for good; what is not settled then goes round in a circle.
        for (var round = 0; round <= isKept.Length; round++)
        {
            if (!HoldBack(out var isStuck))
            {
                return;
            }

            if (isStuck)
            {
                break;
            }

            Sweep();
        }

        (floors, Starts, Ends) = before;
        isKept[limit] = false;
    }

    /// <summary>True when something had to begin later.</summary>
    bool HoldBack(out bool isStuck)
    {
        var hasMoved = isStuck = false;
        for (var at = 0; at < isKept.Length; at++)
        {
            if (!isKept[at] || Over(at) is not (> 0 and var over))
            {
                continue;
            }

            var from = order.Limits[at].From;
            hasMoved = true;
            isStuck |= order.Entries[from].IsBegun;
            floors[from] = Math.Max(floors[from], Starts[from] + over);
        }

        return hasMoved;
    }
}
