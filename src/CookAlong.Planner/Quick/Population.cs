namespace CookAlong.Planner.Quick;

/// <summary>Layouts that are pushed to the same end of the clock. Each is kept as the order it has, seen from the other end.</summary>
internal sealed class Population
{
    private readonly Work work;
    private readonly Func<Layout, long> price;
    private readonly Backward backward;
    private readonly Genes[] all;
    private readonly long[] costs;

    /// <param name="price">What a layout is measured by; the less, the better.</param>
    public Population(Work work, int size, Genes guess, Func<Layout, long> price)
    {
        (this.work, this.price) = (work, price);
        backward = new Backward(work);
        all = [.. Enumerable.Range(0, size).Select(_ => guess.Copy())];
        costs = new long[size];
        Array.Fill(costs, long.MaxValue);
        Laid = new Layout(work);
    }

    public int Size => all.Length;

    /// <summary>The last one.</summary>
    public Layout Laid { get; }

    public Genes Genes(int one) => all[one];

    public int Cheaper(int one, int other) => costs[one] <= costs[other] ? one : other;

    public long Lay(Genes genes)
    {
        backward.Lay(genes, Laid);
        return price(Laid);
    }

    /// <summary>The last one takes this place if it is no dearer.</summary>
    /// <param name="isWelcome">However dear it is.</param>
    public void Offer(int place, Genes genes, long cost, bool isWelcome)
    {
        if (cost > costs[place] && !isWelcome)
        {
            return;
        }

        costs[place] = cost;
        all[place].CopyFrom(genes);
        all[place].IsOrder = true;
        for (var step = 0; step < work.Steps.Length; step++)
        {
            all[place].Rank[step] = -Laid.Starts[step];
        }
    }
}
