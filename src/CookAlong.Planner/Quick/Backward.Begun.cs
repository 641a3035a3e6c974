namespace CookAlong.Planner.Quick;

// Of a meal that is being cooked: what has begun, and dishes that are made and wait.
internal sealed partial class Backward
{
    /// <summary>What has begun stands where it stands, and is never taken back. Returns how many.</summary>
    private int PutBegun(Genes genes, Layout layout)
    {
        if (work.Begun is not { } begun)
        {
            return 0;
        }

        layout.Jobs.AddRange(begun.Tends);
        foreach (var step in begun.Steps)
        {
            placedAt[step.Index] = work.Steps.Length;
            (layout.Starts[step.Index], layout.Ends[step.Index]) = step.Begun!.Value;
            (layout.Ways[step.Index], layout.Spots[step.Index]) = (step.Ways[0], step.Ways[0].Spots[0]);
            layout.Ready[step.Dish] = Math.Max(layout.Ready[step.Dish], layout.Ends[step.Index]);
        }

        WaitMade(layout, made => made.In is not null || !genes.MadeLast);
        return begun.Steps.Length;
    }

    private void WaitMade(Layout layout, Func<QuickMade, bool> which)
    {
        foreach (var dish in (work.Begun?.Made ?? []).Where(which))
        {
            WaitMade(dish, layout);
        }
    }

    /// <summary>The dish is made: a wait beyond its limit, or out of the warm too long, is dear and no longer to be mended.</summary>
    private void WaitMade(QuickMade made, Layout layout)
    {
        var (dish, hold) = (made.Dish, layout.Holds[made.Dish]);
        var (ready, table) = (layout.Ready[dish], layout.Tables[work.Dishes[dish].Course]);
        layout.Forced += Math.Max(0, table - ready - hold.Hold.Limit);
        layout.GoesIn[dish] = ready;
        if (hold.Hold.Oven is not { } warm)
        {
            return;
        }

        if (made.In is { } inside)
        {
            rooms.Take(inside.Spot, Math.Clamp(inside.From, 0, table), table);
            (layout.GoesIn[dish], layout.WarmSpots[dish]) = (inside.From, inside.Spot);
            return;
        }

        var (soonest, best) = (int.MaxValue, (QuickSpot?)null);
        foreach (var spot in hold.Spots)
        {
            var from = SoonestIn(spot, Math.Max(Math.Min(ready + warm.StandFirst, table), Math.Max(work.Clock.Earliest, spot.Earliest)), table);
            (soonest, best) = from < soonest ? (from.Value, spot) : (soonest, best);
        }

        if (best is null)
        {
            Break(layout, dish, NoOven);
            return;
        }

        rooms.Take(best, soonest, table);
        (layout.GoesIn[dish], layout.WarmSpots[dish]) = (soonest, best);
        layout.Forced += Math.Max(0, soonest - ready - warm.StandFirst);
    }

    /// <summary>The first minute from which there is room until the table; null where there is none even then.</summary>
    private int? SoonestIn(QuickSpot spot, int from, int table)
    {
        bool Fits(int minute) => rooms.Latest(spot, table, table - minute) == table;
        if (from > table || Fits(from))
        {
            return from > table ? null : from;
        }

        // The shorter it is in, the more easily it fits.
        var (without, with) = (from, table);
        while (with - without > 1)
        {
            var between = (with + without) / 2;
            (without, with) = Fits(between) ? (without, between) : (between, with);
        }

        return Fits(with) ? with : null;
    }
}
