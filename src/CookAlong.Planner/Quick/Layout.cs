namespace CookAlong.Planner.Quick;

/// <summary>A meal laid out: everything has a time, a place and hands, though not every rule may be kept.</summary>
internal sealed class Layout(Work work)
{
    public int[] Starts { get; } = new int[work.Steps.Length];

    public int[] Ends { get; } = new int[work.Steps.Length];

    public QuickWay[] Ways { get; } = new QuickWay[work.Steps.Length];

    public QuickSpot[] Spots { get; } = new QuickSpot[work.Steps.Length];

    /// <summary>Per dish: the last minute any of its steps ends.</summary>
    public int[] Ready { get; } = new int[work.Dishes.Length];

    public QuickHold[] Holds { get; } = new QuickHold[work.Dishes.Length];

    /// <summary>Per dish: when it goes into its warm oven, or starts its wait.</summary>
    public int[] GoesIn { get; } = new int[work.Dishes.Length];

    public QuickSpot?[] WarmSpots { get; } = new QuickSpot?[work.Dishes.Length];

    public int[] Tables { get; } = new int[work.Promised.Length];

    /// <summary>Who does what: hands-on steps have no tend.</summary>
    public List<QuickJob> Jobs { get; } = [];

    /// <summary>Per course, minutes by which it begins before it may: serving it later by as much would mend it, if others did not come in between.</summary>
    public int[] Early { get; } = new int[work.Promised.Length];

    /// <summary>Of the course that begins earliest before it may.</summary>
    public int TooEarly => Early.Max();

    /// <summary>Minutes by which limits are broken in all; 0 and no <see cref="TooEarly"/> = a plan.</summary>
    public long Broken { get; set; }

    /// <summary>Minutes beyond the limits of what has begun: dear, and as the kitchen made it.</summary>
    public long Forced { get; set; }

    /// <summary>Dishes of which some limit is broken.</summary>
    public List<int> Troubles { get; } = [];

    public bool IsPlan => Broken == 0 && TooEarly == 0;

    public Layout Copy()
    {
        var copy = new Layout(work);
        copy.CopyFrom(this);
        return copy;
    }

    public void CopyFrom(Layout other)
    {
        other.Starts.CopyTo(Starts, 0);
        other.Ends.CopyTo(Ends, 0);
        other.Ways.CopyTo(Ways, 0);
        other.Spots.CopyTo(Spots, 0);
        other.Ready.CopyTo(Ready, 0);
        other.Holds.CopyTo(Holds, 0);
        other.GoesIn.CopyTo(GoesIn, 0);
        other.WarmSpots.CopyTo(WarmSpots, 0);
        other.Tables.CopyTo(Tables, 0);
        Jobs.Clear();
        Jobs.AddRange(other.Jobs);
        Troubles.Clear();
        Troubles.AddRange(other.Troubles);
        other.Early.CopyTo(Early, 0);
        (Broken, Forced) = (other.Broken, other.Forced);
    }

    public void Clear(Genes genes)
    {
        Jobs.Clear();
        Troubles.Clear();
        (Broken, Forced) = (0, 0);
        Array.Fill(Ready, int.MinValue);
        Array.Clear(WarmSpots);
        foreach (var (course, promised) in work.Promised.Index())
        {
            Tables[course] = work.Served[course] ?? promised + Math.Min(genes.Late, genes.MostLate[course]);
        }

        for (var dish = 0; dish < Holds.Length; dish++)
        {
            Holds[dish] = work.Dishes[dish].Holds[genes.Hold[dish]];
        }
    }
}

/// <param name="Tend">Null = the step itself.</param>
/// <param name="Helper">Position among the meal's helpers.</param>
internal readonly record struct QuickJob(int Step, QuickTend? Tend, int Start, int Minutes, int Helper);
