namespace CookAlong.Planner.Quick;

/// <summary>
/// Improves a layout by changing one gene at a time; a worse one is kept with a chance that falls as the search goes on.
/// The same seed and number of layouts give the same answer on any machine.
/// </summary>
internal sealed class Annealing
{
    /// <summary>A change that costs this much more is taken one time in three at the start, at the end only one that costs <see cref="Cold"/>.</summary>
    private const double Hot = 150;

    private const double Cold = 2;

    /// <summary>The same while there is no plan yet: minutes beyond limits are what counts then.</summary>
    private const double Warm = 0.4 * Prices.LateMinute;

    /// <summary>Kept warm to the end, the search drifts away from the best it has had.</summary>
    private const double Cool = 0.03 * Prices.LateMinute;

    private readonly Work work;
    private readonly Random random;
    private readonly Backward backward;
    private readonly Genes now;
    private readonly Genes next;
    private Layout current;
    private Layout layout;
    private long cost;

    public Annealing(Work work, int seed)
    {
        this.work = work;
        random = new Random(seed);
        backward = new Backward(work);
        now = Genes.FirstGuess(work, longestFirst: false);
        next = now.Copy();
        layout = new Layout(work);
        current = new Layout(work);
        Best = new Layout(work);
        BestGenes = now.Copy();
        Begin();
    }

    /// <summary>The cheapest so far; a plan only where it says so.</summary>
    public Layout Best { get; }

    public Genes BestGenes { get; }

    public long BestCost { get; private set; }

    /// <summary>How many layouts have been made.</summary>
    public int Layouts { get; private set; }

    /// <summary>Goes on for so many layouts, or until told to stop.</summary>
    /// <param name="better">Told when a cheaper one is found.</param>
    public void Run(int layouts, Func<bool> isOver, Action? better = null)
    {
        for (var at = 0; at < layouts && !isOver(); at++)
        {
            var (from, to) = current.IsPlan ? (Hot, Cold) : (Warm, Cool);
            var heat = from * Math.Pow(to / from, at / (double)layouts);
            next.CopyFrom(now);
            Mutation.Change(next, work, current, random);
            Lay(next, layout);
            var changed = Cost.Of(work, layout);
            if (changed > cost && random.NextDouble() >= Math.Exp((cost - changed) / heat))
            {
                continue;
            }

            cost = changed;
            now.CopyFrom(next);
            (current, layout) = (layout, current);
            if (changed < BestCost)
            {
                BestCost = changed;
                BestGenes.CopyFrom(next);
                Best.CopyFrom(current);
                better?.Invoke();
            }
        }
    }

    /// <summary>Begins again, every course put off by so many minutes.</summary>
    public void Restart(int late, Genes from)
    {
        now.CopyFrom(from);
        now.Late = late;
        Begin();
    }

    private void Begin()
    {
        Lay(now, current);
        Best.CopyFrom(current);
        BestGenes.CopyFrom(now);
        cost = BestCost = Cost.Of(work, Best);
    }

    private void Lay(Genes genes, Layout into)
    {
        Layouts++;
        backward.Lay(genes, into);
    }
}
