namespace CookAlong.Planner.Quick;

/// <summary>What a layout costs: <see cref="Prices.Sum"/> on the quick search's own arrays, and dearly what makes it no plan.</summary>
internal static class Cost
{
    public static long Of(Work work, Layout layout)
    {
        // A minute beyond a limit must not be cheaper than serving a minute later: that always mends one.
        var sum = ((layout.Broken * 2) + layout.Early.Sum()) * Prices.LateMinute;
        var lastTable = int.MinValue;
        for (var course = 0; course < work.Promised.Length; course++)
        {
            sum += work.Served[course] is null ? (long)(layout.Tables[course] - work.Promised[course]) * Prices.LateMinute : 0;
            lastTable = Math.Max(lastTable, layout.Tables[course]);
        }

        for (var dish = 0; dish < work.Dishes.Length; dish++)
        {
            if (work.Dishes[dish].Steps.Length > 0)
            {
                var (hold, wait) = (layout.Holds[dish], layout.Tables[work.Dishes[dish].Course] - layout.Ready[dish]);
                sum += hold.PriceOf(wait);
            }
        }

        return sum + (layout.Forced * Prices.BeyondLimitMinute) + (work.Begun?.Sunk ?? 0) + OfSteps(work, layout, lastTable) + OfCrowds(work, layout) + OfDial(work, layout);
    }

    private static long OfSteps(Work work, Layout layout, int lastTable)
    {
        long sum = 0;
        var firstHands = lastTable;
        for (var index = 0; index < work.Steps.Length; index++)
        {
            var (step, way, start) = (work.Steps[index], layout.Ways[index], layout.Starts[index]);
            var table = layout.Tables[step.Course];
            var isAhead = start < lastTable - Prices.KitchenMost;
            sum += isAhead ? Prices.Ahead : 0;
            if (way.IsHandsOn)
            {
                sum += (long)Math.Clamp(layout.Ends[index] - (table - Prices.RushMinutes), 0, way.Minutes) * way.People * work.Prices.RushMinute;
                firstHands = isAhead ? firstHands : Math.Min(firstHands, start);
            }

            if (step.Told is { } told)
            {
                sum += work.Moving.Of(start - told);
            }

            foreach (var latest in step.Overdue)
            {
                sum += (long)Math.Max(0, start - latest) * Prices.BeyondLimitMinute;
            }
        }

        return sum + ((long)(lastTable - firstHands) * work.Prices.KitchenMinute);
    }

    private static long OfCrowds(Work work, Layout layout)
    {
        long sum = 0;
        foreach (var crowd in work.Crowds)
        {
            var (from, busy) = (layout.Tables[crowd.Course] - crowd.Minutes, 0);
            foreach (var index in work.HandsOn[crowd.Course])
            {
                var way = layout.Ways[index];
                busy += way.IsHandsOn ? Math.Clamp(layout.Ends[index] - from, 0, way.Minutes) * way.People : 0;
            }

            sum += (long)Math.Max(0, busy - crowd.Hands) * crowd.Price;
        }

        return sum;
    }

    /// <summary>As <see cref="Domain.Planning.DialChanges"/> counts them; in a run they have no price.</summary>
    private static long OfDial(Work work, Layout layout)
    {
        if (work.InOven.Length == 0 || work.Begun is not null)
        {
            return 0;
        }

        Span<(int Start, int End, int Range)> stays = stackalloc (int, int, int)[work.InOven.Length + work.Dishes.Length];
        var count = 0;
        foreach (var step in work.InOven)
        {
            if (layout.Spots[step] is { Oven: >= 0 } spot)
            {
                stays[count++] = (layout.Starts[step], layout.Ends[step], spot.Range);
            }
        }

        for (var dish = 0; dish < layout.WarmSpots.Length; dish++)
        {
            if (layout.WarmSpots[dish] is { } warm)
            {
                stays[count++] = (layout.GoesIn[dish], layout.Tables[work.Dishes[dish].Course], warm.Range);
            }
        }

        stays = stays[..count];
        stays.Sort(static (one, other) => one.Start.CompareTo(other.Start));
        return (long)Math.Min(Changes(work.Ovens[0].Gap, stays), Prices.MostDialChanges) * work.Prices.DialChange;
    }

    private static int Changes(int[,] gap, ReadOnlySpan<(int Start, int End, int Range)> stays)
    {
        var (changes, since) = (0, int.MinValue);
        for (var index = 1; index < stays.Length; index++)
        {
            for (var other = 0; other < index; other++)
            {
                if (stays[other].End > since && stays[other].End <= stays[index].Start && gap[stays[other].Range, stays[index].Range] > 0)
                {
                    (changes, since) = (changes + 1, stays[index].Start);
                    break;
                }
            }
        }

        return changes;
    }
}
