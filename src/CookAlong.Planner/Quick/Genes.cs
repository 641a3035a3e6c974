namespace CookAlong.Planner.Quick;

/// <summary>All that decides how a meal is laid out; the search changes these, and nothing else.</summary>
internal sealed class Genes
{
    private Genes(int steps, int dishes)
    {
        (Rank, Way, Person, Lead, Hold) = (new int[steps], new int[steps], new int[steps], new int[steps], new int[dishes]);
    }

    /// <summary>Minutes by which a step is placed sooner than the time it may end says, going back from the table.</summary>
    public int[] Rank { get; }

    /// <summary>Position in <see cref="QuickStep.Ways"/>.</summary>
    public int[] Way { get; }

    /// <summary>Whose hands are asked first: how far the list of the able is turned.</summary>
    public int[] Person { get; }

    /// <summary>Minutes before its course's table by which a step is to be over, even if it could be later.</summary>
    public int[] Lead { get; }

    /// <summary>Position in <see cref="QuickDish.Holds"/>.</summary>
    public int[] Hold { get; }

    /// <summary>Minutes every course is put off.</summary>
    public int Late { get; set; }

    /// <summary>A first guess: what cannot wait long for the table is placed before what can.</summary>
    public static Genes FirstGuess(Work work)
    {
        var genes = new Genes(work.Steps.Length, work.Dishes.Length);
        foreach (var (index, dish) in work.Dishes.Index())
        {
            genes.Hold[index] = dish.Holds.Index().MinBy(hold => (hold.Item.Hold.CostPerMinute, hold.Item.Spots.Length, hold.Index)).Index;
        }

        foreach (var step in work.Steps)
        {
            var hold = work.Dishes[step.Dish].Holds[genes.Hold[step.Dish]];
            genes.Rank[step.Index] = step.IsLast ? 60 - Math.Min(hold.Hold.Limit, 60) : 0;
        }

        return genes;
    }

    public void CopyFrom(Genes other)
    {
        other.Rank.CopyTo(Rank, 0);
        other.Way.CopyTo(Way, 0);
        other.Person.CopyTo(Person, 0);
        other.Lead.CopyTo(Lead, 0);
        other.Hold.CopyTo(Hold, 0);
        Late = other.Late;
    }

    public Genes Copy()
    {
        var copy = new Genes(Rank.Length, Hold.Length);
        copy.CopyFrom(this);
        return copy;
    }
}
