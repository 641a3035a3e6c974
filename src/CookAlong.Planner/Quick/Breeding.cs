namespace CookAlong.Planner.Quick;

/// <summary>
/// Two populations of layouts, one pushed back to the table and one forward to the first minute, bred from the orders of each
/// other and of their own: a genetic search with double justification. What is pushed to one end and back again takes no longer
/// than before, and mostly less. The same seed and number of layouts give the same answer on any machine, by any number of threads.
/// </summary>
internal sealed class Breeding
{
    /// <summary>A population is so many times the root of the layouts it has to live on.</summary>
    private const double SizeOfRoot = 0.6;

    private const int Smallest = 10;

    /// <summary>Each first guess is pushed to the other end and back before anything is bred of it.</summary>
    private const int Justified = 3;

    /// <summary>By how much first guesses lie apart, whole dishes and steps, as a part of the longest chain of steps.</summary>
    private const double Spread = 0.3;

    /// <summary>Changes of a child's genes while there is no plan, and when there is one: more of them help with prices, and are in the way of lateness.</summary>
    private const int Changes = 1;

    private const int ChangesOfPlan = 5;

    /// <summary>Tried with 2 (always away) to 10, and never.</summary>
    private const int Away = 6;

    private readonly Work work;
    private readonly Random random;
    private readonly Population toTable;
    private readonly Population toStart;
    private readonly Genes guess;
    private readonly IReadOnlyList<Genes> orders;
    private readonly Genes? movedRight;
    private readonly Genes? movedBack;
    private readonly int size;
    private readonly Genes[] children;
    private readonly long[] costs;
    private int born;

    /// <param name="layouts">About how many it will have.</param>
    /// <param name="workers">Threads; however many, the same comes out.</param>
    /// <param name="orders">Join the first guesses.</param>
    public Breeding(Work work, int seed, int layouts, int workers = 1, IReadOnlyList<Genes>? orders = null)
    {
        this.orders = orders ?? [];
        this.work = work;
        random = new Random(seed);
        guess = Genes.FirstGuess(work, longestFirst: true);
        if (work.Moved is { } moved)
        {
            (movedRight, movedBack) = (Genes.FromMoved(work, moved, moved.Ends, moved.Late), Genes.FromMoved(work, moved, moved.Ends, moved.LateAtLeast));
            movedBack.Way.CopyTo(guess.Way, 0);
            movedBack.Hold.CopyTo(guess.Hold, 0);
        }

        BestGenes = guess.Copy();
        size = Math.Max(Smallest, (int)(Math.Sqrt(layouts) * SizeOfRoot));
        (children, costs) = ([.. Enumerable.Range(0, size).Select(_ => guess.Copy())], new long[size]);
        toTable = new Population(work, size, guess, layout => Cost.Of(work, layout), workers);
        toStart = new Population(Mirror.Of(work, asTold: work.Moved is not null), size, guess, layout => (layout.Broken * 2) - layout.Starts.Min(), workers);
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
        for (var until = Layouts + layouts; Layouts < until && !isOver();)
        {
            // First guesses one after the other, each there and back, for a plan soon. Later all of a generation are begotten
            // before any is laid out, so that none need wait for another.
            var isFirst = born < size * Justified;
            var (generation, first) = isFirst ? (born % Justified, born / Justified) : (born / size, born % size);
            var count = isFirst ? 1 : Math.Min(size - first, until - Layouts);
            var (to, from) = Ends(generation, isFirst);
            for (var one = 0; one < count; one++)
            {
                Bear(children[one], first + one, from, isFromHere: from == to, isGuess: generation == 0, isCopy: isFirst);
            }

            to.LayAll(children.AsMemory(0, count), first, areWelcome: isFirst && generation < Justified - 1, isOver, costs);
            (born, Layouts) = (born + count, Layouts + count);
            var (best, cost) = costs.Take(count).Index().MinBy(one => one.Item);
            if (to == toTable && cost < BestCost)
            {
                BestGenes.CopyFrom(children[best]);
                BestCost = toTable.Lay(BestGenes);
                Best.CopyFrom(toTable.Laid);
                better?.Invoke();
            }
        }
    }

    /// <summary>
    /// Lateness is a matter of orders, and each goes from one end to the other and back. On the way prices are lost: with a plan
    /// most are bred at the table, and two generations of <see cref="Away"/> go there and back.
    /// </summary>
    private (Population To, Population From) Ends(int generation, bool isFirst)
    {
        var (isTurn, isBack) = Best.IsPlan && !isFirst ? (generation % Away == Away - 2, generation % Away == Away - 1) : (generation % 2 == 1, generation % 2 == 0);
        return (isTurn ? toStart : toTable, isBack ? toStart : toTable);
    }

    private void Bear(Genes child, int place, Population from, bool isFromHere, bool isGuess, bool isCopy)
    {
        if (isGuess)
        {
            Guess(child, place);
        }
        else if (isCopy)
        {
            child.CopyFrom(from.Genes(place, isFromHere));
        }
        else
        {
            child.CopyFrom(from.Genes(from.Cheaper(random.Next(size), random.Next(size)), isFromHere));
            Crossing.Cross(child, from.Genes(place, isFromHere), random);
            Change(child);
        }

        child.Late = BestGenes.Late;
        BestGenes.MostLate.CopyTo(child.MostLate, 0);
    }

    private void Guess(Genes child, int one)
    {
        if (one < 2 && movedRight is not null)
        {
            child.CopyFrom(one == 0 ? movedRight : movedBack!);
            return;
        }

        if (one < orders.Count)
        {
            child.CopyFrom(orders[one]);
            return;
        }

        child.CopyFrom(guess);
        var spread = 1 + (int)(guess.Rank.Max() * Spread);
        foreach (var dish in one > 0 ? work.Dishes : [])
        {
            var whole = random.Next(-spread, spread + 1);
            foreach (var step in dish.Steps)
            {
                child.Rank[step] += whole + random.Next(-spread, spread + 1);
            }
        }
    }

    private void Change(Genes child)
    {
        for (var change = Best.IsPlan ? ChangesOfPlan : Changes; change > 0; change--)
        {
            Mutation.Change(child, work, Best, random);
        }
    }
}
