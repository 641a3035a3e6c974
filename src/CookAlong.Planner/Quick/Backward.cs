namespace CookAlong.Planner.Quick;

/// <summary>
/// Lays a meal out from the table backward: of the steps that nothing unplaced waits for, the one that may end last (its rank
/// counting as minutes) goes to the latest minute where it has its place, hands, and an oven at its temperature. A serial
/// schedule generation scheme, turned round; whoever then follows too late is moved nearer, and what came after it placed again.
/// </summary>
internal sealed partial class Backward(Work work)
{
    /// <summary>
    /// How often what follows too late is moved nearer, with all that was placed after it, before a limit is left broken.
    /// With 12 the search for a first plan took seventy times as many layouts.
    /// </summary>
    private const int Redoes = 100;

    /// <summary>Before any rank.</summary>
    private const int Urgent = int.MaxValue;

    private readonly Rooms rooms = new(work);
    private readonly Hands hands = new(work);
    private readonly int[] open = new int[work.Steps.Length];
    private readonly int[] ready = new int[work.Steps.Length];
    private readonly int[] keys = new int[work.Steps.Length];
    private readonly int[] latest = new int[work.Steps.Length];
    private readonly int[] lastToCome = new int[work.Dishes.Length];
    private readonly int[] placedAt = new int[work.Steps.Length];
    private readonly bool[] isUrgent = new bool[work.Steps.Length];
    private readonly Moment[] before = new Moment[work.Steps.Length];
    private int count;

    /// <summary>How things stood before a step was placed.</summary>
    private readonly record struct Moment(QuickStep Step, int Marks, int Jobs, long Broken, int Troubles, int Ready, long Forced);

    public void Lay(Genes genes, Layout layout)
    {
        rooms.Back(0);
        layout.Clear(genes);
        Array.Fill(latest, int.MaxValue / 2);
        Array.Fill(placedAt, -1);
        Array.Clear(isUrgent);
        foreach (var step in work.Steps)
        {
            open[step.Index] = step.After.Count;
        }

        foreach (var (index, dish) in work.Dishes.Index())
        {
            lastToCome[index] = dish.LastSteps;
        }

        var begun = PutBegun(genes, layout);
        FindReady(genes, layout);
        for (var (placed, redoes) = (0, 0); placed < work.Steps.Length - begun;)
        {
            var step = TakeLatest();
            before[placed] = new Moment(step, rooms.Marks, layout.Jobs.Count, layout.Broken, layout.Troubles.Count, layout.Ready[step.Dish], layout.Forced);
            if (Place(step, genes, layout, mayRedo: redoes < Redoes) is { } tooLate)
            {
                redoes++;
                isUrgent[step.Index] = genes.MendsFirst;
                placed = Undo(placedAt[tooLate], placed, genes, layout);
                continue;
            }

            placedAt[step.Index] = placed++;
            foreach (var gap in step.Before)
            {
                if (--open[gap.Step] == 0)
                {
                    MakeReady(work.Steps[gap.Step], genes, layout);
                }
            }
        }

        WaitMade(layout, made => made.In is null && genes.MadeLast);
        MeasureEarly(layout);
    }

    private QuickStep TakeLatest()
    {
        var (next, highest) = (0, int.MinValue);
        var all = keys.AsSpan(0, count);
        for (var at = 0; at < all.Length; at++)
        {
            if (all[at] > highest)
            {
                (next, highest) = (at, all[at]);
            }
        }

        var step = work.Steps[ready[next]];
        count--;
        (ready[next], keys[next]) = (ready[count], keys[count]);
        return step;
    }

    /// <summary>All that waits for it is placed, so its key stays as it is until something is taken back.</summary>
    private void MakeReady(QuickStep step, Genes genes, Layout layout)
    {
        ready[count] = step.Index;
        keys[count++] = isUrgent[step.Index] ? Urgent : genes.Rank[step.Index] + (genes.IsOrder ? 0 : Bound(step, layout));
    }

    private static int Bound(QuickStep step, Layout layout)
    {
        var most = layout.Tables[step.Course] - layout.Holds[step.Dish].Hold.Least;
        foreach (var gap in step.After)
        {
            most = Math.Min(most, layout.Starts[gap.Step] - gap.Least);
        }

        return most;
    }

    private void FindReady(Genes genes, Layout layout)
    {
        count = 0;
        for (var step = 0; step < open.Length; step++)
        {
            if (open[step] == 0 && placedAt[step] < 0)
            {
                MakeReady(work.Steps[step], genes, layout);
            }
        }
    }

    /// <summary>Takes back what was placed from one position on.</summary>
    private int Undo(int to, int placed, Genes genes, Layout layout)
    {
        var (_, marks, jobs, broken, troubles, _, forced) = before[to];
        for (var at = placed - 1; at >= to; at--)
        {
            var step = before[at].Step;
            layout.Ready[step.Dish] = before[at].Ready;
            lastToCome[step.Dish] += step.IsLast ? 1 : 0;
            placedAt[step.Index] = -1;
            foreach (var gap in step.Before)
            {
                open[gap.Step]++;
            }
        }

        rooms.Back(marks);
        layout.Jobs.RemoveRange(jobs, layout.Jobs.Count - jobs);
        layout.Troubles.RemoveRange(troubles, layout.Troubles.Count - troubles);
        (layout.Broken, layout.Forced) = (broken, forced);
        FindReady(genes, layout);
        return to;
    }

    /// <summary>Null, or the step that follows too late: it may then start no later than <see cref="latest"/> says.</summary>
    private int? Place(QuickStep step, Genes genes, Layout layout, bool mayRedo)
    {
        var way = step.Ways[genes.Way[step.Index]];
        var hold = layout.Holds[step.Dish];
        var table = layout.Tables[step.Course];
        var most = Math.Min(Math.Min(table - hold.Hold.Least, step.To), latest[step.Index] + way.Minutes);
        var least = int.MinValue / 2;
        foreach (var gap in step.After)
        {
            most = Math.Min(most, layout.Starts[gap.Step] - gap.Least);
            least = Math.Max(least, layout.Starts[gap.Step] - gap.Most);
        }

        // A lead is a wish: what follows is not to come too late for its sake.
        most = work.IsMirror ? most : Math.Min(most, Math.Max(least, table - genes.Lead[step.Index]));
        most = step.At is { } at ? Math.Min(most, at + way.Minutes) : most;
        var (end, spot) = Best(step, way, most, genes);
        if (end == Rooms.Nowhere)
        {
            // There is no such minute however early: its place is left as it is, and the layout is no plan.
            Break(layout, step.Dish, work.Width);
            (end, spot) = (Math.Max(most, way.Minutes - work.Margin), way.Spots[0]);
        }
        else if (end < least && mayRedo)
        {
            return Nearer(step, end, layout);
        }
        else
        {
            hands.Take(step, way, end - way.Minutes, genes.Person[step.Index], rooms, layout.Jobs);
            rooms.Take(spot!, end - way.Minutes, end);
        }

        Break(layout, step.Dish, least - end);
        Put(step, way, spot!, end, layout);
        return null;
    }

    /// <summary>The one placed first of those that follow too late.</summary>
    private int Nearer(QuickStep step, int end, Layout layout)
    {
        var first = -1;
        foreach (var gap in step.After)
        {
            if (layout.Starts[gap.Step] - gap.Most > end)
            {
                latest[gap.Step] = end + gap.Most;
                first = first < 0 || placedAt[gap.Step] < placedAt[first] ? gap.Step : first;
            }
        }

        return first;
    }

    private (int End, QuickSpot? Spot) Best(QuickStep step, QuickWay way, int most, Genes genes)
    {
        var best = (End: Rooms.Nowhere, Spot: (QuickSpot?)null);
        foreach (var spot in way.Spots)
        {
            var end = most;
            while (true)
            {
                var before = end;
                end = rooms.Latest(spot, end, way.Minutes);
                end = end == Rooms.Nowhere ? end : hands.Latest(step, way, end, genes.Person[step.Index], rooms);
                if (end == Rooms.Nowhere || end == before || end <= best.End)
                {
                    break;
                }
            }

            if (end > best.End)
            {
                best = (end, spot);
            }
        }

        return best;
    }
}
