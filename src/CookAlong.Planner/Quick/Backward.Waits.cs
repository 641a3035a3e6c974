namespace CookAlong.Planner.Quick;

// Where a step has come to stand, how its dish then waits, and what is broken by it.
internal sealed partial class Backward
{
    /// <summary>What a warm oven that cannot be had counts as, in minutes beyond a limit.</summary>
    private const int NoOven = 60;

    private void Put(QuickStep step, QuickWay way, QuickSpot spot, int end, Layout layout)
    {
        var start = end - way.Minutes;
        layout.Starts[step.Index] = start;
        layout.Ends[step.Index] = end;
        layout.Ways[step.Index] = way;
        layout.Spots[step.Index] = spot;
        layout.Ready[step.Dish] = Math.Max(layout.Ready[step.Dish], end);
        Break(layout, step.Dish, step.From - start);
        if (step.IsLast && --lastToCome[step.Dish] == 0)
        {
            Wait(step.Dish, layout);
        }
    }

    private void Wait(int dish, Layout layout)
    {
        var hold = layout.Holds[dish];
        var (ready, table) = (layout.Ready[dish], layout.Tables[work.Dishes[dish].Course]);
        Break(layout, dish, table - ready - hold.Hold.Limit);
        layout.GoesIn[dish] = ready;
        if (hold.Hold.Oven is not { } warm)
        {
            return;
        }

        // The shorter it is in, the fewer it keeps out.
        var from = Math.Min(ready + warm.StandFirst, table);
        layout.GoesIn[dish] = from;
        foreach (var spot in hold.Spots)
        {
            if (rooms.Latest(spot, table, table - from) == table)
            {
                rooms.Take(spot, from, table);
                layout.WarmSpots[dish] = spot;
                return;
            }
        }

        Break(layout, dish, NoOven);
    }

    private static void Break(Layout layout, int dish, int minutes)
    {
        if (minutes > 0)
        {
            layout.Broken += minutes;
            layout.Troubles.Add(dish);
        }
    }
}
