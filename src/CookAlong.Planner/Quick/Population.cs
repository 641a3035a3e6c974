namespace CookAlong.Planner.Quick;

/// <summary>Layouts that are pushed to the same end of the clock. Each is kept as the order it has, seen from this end and from the other.</summary>
internal sealed class Population
{
    private readonly Work work;
    private readonly Func<Layout, long> price;
    private readonly (Backward Backward, Layout Laid)[] lanes;
    private readonly Genes[] fromHere;
    private readonly Genes[] fromThere;
    private readonly long[] costs;

    /// <param name="price">What a layout is measured by; the less, the better. Asked by several threads at once.</param>
    /// <param name="workers">Threads that lay out side by side.</param>
    public Population(Work work, int size, Genes guess, Func<Layout, long> price, int workers = 1)
    {
        (this.work, this.price) = (work, price);
        lanes = [.. Enumerable.Range(0, workers).Select(_ => (new Backward(work), new Layout(work)))];
        fromHere = [.. Enumerable.Range(0, size).Select(_ => guess.Copy())];
        fromThere = [.. fromHere.Select(one => one.Copy())];
        costs = new long[size];
        Array.Fill(costs, long.MaxValue);
    }

    /// <summary>The last one that was laid out alone.</summary>
    public Layout Laid => lanes[0].Laid;

    /// <summary>The order of one, as it is placed from this end; from the other it is the order in which steps begin there.</summary>
    public Genes Genes(int one, bool isFromHere) => isFromHere ? fromHere[one] : fromThere[one];

    public int Cheaper(int one, int other) => costs[one] <= costs[other] ? one : other;

    public long Lay(Genes genes)
    {
        lanes[0].Backward.Lay(genes, Laid);
        return price(Laid);
    }

    /// <summary>Each child is laid out, by whoever is free, and takes its place if it is no dearer than who has it. How many threads there are changes nothing of what comes out.</summary>
    /// <param name="first">The place of the first; the others have those after it.</param>
    /// <param name="areWelcome">They take their places however dear they are.</param>
    /// <param name="found">Their costs; those that are not laid out, because it is over, have the most there is.</param>
    public void LayAll(ReadOnlyMemory<Genes> children, int first, bool areWelcome, Func<bool> isOver, long[] found)
    {
        var next = -1;
        void Raising(int lane)
        {
            for (var one = Interlocked.Increment(ref next); one < children.Length; one = Interlocked.Increment(ref next))
            {
                found[one] = isOver() ? long.MaxValue : Raise(lanes[lane], children.Span[one], first + one, areWelcome);
            }
        }

        if (lanes.Length == 1)
        {
            Raising(0);
            return;
        }

        Parallel.For(0, lanes.Length, Raising);
    }

    /// <summary>The last one that was laid out alone takes this place if it is no dearer.</summary>
    /// <param name="isWelcome">However dear it is.</param>
    public void Offer(int place, Genes genes, long cost, bool isWelcome) => Offer(Laid, place, genes, cost, isWelcome);

    private long Raise((Backward Backward, Layout Laid) lane, Genes child, int place, bool isWelcome)
    {
        lane.Backward.Lay(child, lane.Laid);
        var cost = price(lane.Laid);
        Offer(lane.Laid, place, child, cost, isWelcome);
        return cost;
    }

    private void Offer(Layout laid, int place, Genes genes, long cost, bool isWelcome)
    {
        if (cost > costs[place] && !isWelcome)
        {
            return;
        }

        costs[place] = cost;
        foreach (var kept in (ReadOnlySpan<Genes>)[fromHere[place], fromThere[place]])
        {
            kept.CopyFrom(genes);
            kept.IsOrder = true;
        }

        laid.Ends.CopyTo(fromHere[place].Rank, 0);
        for (var step = 0; step < work.Steps.Length; step++)
        {
            fromThere[place].Rank[step] = -laid.Starts[step];
        }
    }
}
