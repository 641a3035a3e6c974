namespace CookAlong.Planner.Quick;

/// <summary>
/// Two populations of layouts, one pushed back to the table and one forward to the first minute, each bred from the orders of
/// the other: a genetic search with double justification. What is pushed to one end and back again takes no longer than before,
/// and mostly less. The same seed and number of layouts give the same answer on any machine.
/// </summary>
internal sealed class Breeding
{
    /// <summary>A population is so many times the root of the layouts it has to live on.</summary>
    private const double SizeOfRoot = 0.6;

    private const int Smallest = 10;

    /// <summary>Each first guess is pushed to the other end and back before anything is bred of it.</summary>
    private const int Justified = 3;

    /// <summary>By how much first guesses lie apart, as a part of the longest chain of steps.</summary>
    private const double Spread = 0.3;

    /// <summary>Changes of a child's genes while there is no plan, and when there is one: more of them help with prices, and are in the way of lateness.</summary>
    private const int Changes = 1;

    private const int ChangesOfPlan = 3;

    private readonly Work work;
    private readonly Random random;
    private readonly Population toTable;
    private readonly Population toStart;
    private readonly Genes guess;
    private readonly Genes? movedRight;
    private readonly Genes? movedBack;
    private readonly Genes child;
    private int born;

    /// <param name="layouts">About how many it will have.</param>
    public Breeding(Work work, int seed, int layouts)
    {
        this.work = work;
        random = new Random(seed);
        guess = Genes.FirstGuess(work, longestFirst: true);
        if (work.Moved is { } moved)
        {
            (movedRight, movedBack) = (Genes.FromMoved(work, moved, moved.Ends, moved.Late), Genes.FromMoved(work, moved, moved.Ends, moved.LateAtLeast));
            movedBack.Way.CopyTo(guess.Way, 0);
            movedBack.Hold.CopyTo(guess.Hold, 0);
        }
        (child, BestGenes) = (guess.Copy(), guess.Copy());
        var size = Math.Max(Smallest, (int)(Math.Sqrt(layouts) * SizeOfRoot));
        toTable = new Population(work, size, guess, layout => Cost.Of(work, layout));
        toStart = new Population(Mirror.Of(work, asTold: work.Moved is not null), size, guess, layout => (layout.Broken * 2) - layout.Starts.Min());
        Best = new Layout(work);
        Restart(late: 0);
    }

    /// <summary>The cheapest so far; a plan only where it says so.</summary>
    public Layout Best { get; }

    public Genes BestGenes { get; }

    public long BestCost { get; private set; }

    /// <summary>How many layouts have been made.</summary>
    public int Layouts { get; private set; }

    /// <summary>Every course is put off by so many minutes from now on. To begin a minute too early costs as much as to serve a minute late.</summary>
    /// <param name="from">Joins the population; null = the best so far.</param>
    public void Restart(int late, Genes? from = null)
    {
        BestGenes.CopyFrom(from ?? BestGenes);
        BestGenes.Late = late;
        Layouts++;
        BestCost = toTable.Lay(BestGenes);
        Best.CopyFrom(toTable.Laid);
        toTable.Offer(0, BestGenes, BestCost, isWelcome: false);
    }

    /// <summary>Goes on for so many layouts, or until told to stop.</summary>
    /// <param name="better">Told when a cheaper one is found.</param>
    public void Run(int layouts, Func<bool> isOver, Action? better = null)
    {
        for (var at = 0; at < layouts && !isOver(); at++, born++)
        {
            var size = toTable.Size;
            var isFirst = born < size * Justified;
            var (generation, one) = isFirst ? (born % Justified, born / Justified) : (born / size, born % size);
            var (to, from) = generation % 2 == 0 ? (toTable, toStart) : (toStart, toTable);
            if (generation == 0)
            {
                Guess(one);
            }
            else if (isFirst)
            {
                child.CopyFrom(from.Genes(one));
            }
            else
            {
                child.CopyFrom(from.Genes(from.Cheaper(random.Next(size), random.Next(size))));
                Crossing.Cross(child, from.Genes(one), random);
                Change();
            }

            child.Late = BestGenes.Late;
            BestGenes.MostLate.CopyTo(child.MostLate, 0);
            Layouts++;
            var cost = to.Lay(child);
            if (to == toTable && cost < BestCost)
            {
                BestCost = cost;
                BestGenes.CopyFrom(child);
                Best.CopyFrom(to.Laid);
                better?.Invoke();
            }

            to.Offer(one, child, cost, isWelcome: isFirst && generation < Justified - 1);
        }
    }

    private void Guess(int one)
    {
        if (one < 2 && movedRight is not null)
        {
            child.CopyFrom(one == 0 ? movedRight : movedBack!);
            return;
        }

        child.CopyFrom(guess);
        var spread = 1 + (int)(guess.Rank.Max() * Spread);
        for (var step = 0; step < child.Rank.Length && one > 0; step++)
        {
            child.Rank[step] += random.Next(-spread, spread + 1);
        }
    }

    private void Change()
    {
        for (var change = Best.IsPlan ? ChangesOfPlan : Changes; change > 0; change--)
        {
            Mutation.Change(child, work, Best, random);
        }
    }
}
