using CookAlong.Planner.Quick;

namespace CookAlong.Planner.Relaxed;

/// <summary>
/// Hands, given up for a price of each minute: no more are busy than are there, none before the kitchen day begins, and no more
/// than so much is done in the last minutes before a course. What the day itself costs is settled here.
/// </summary>
internal sealed class KitchenHours
{
    private readonly Work work;
    private readonly int from;
    private readonly int last;

    /// <summary>Per minute from <see cref="from"/>.</summary>
    private readonly int[] there;
    private readonly Multipliers minutes;
    private readonly Multipliers[] crowds;

    /// <summary>Per course, by minute of the clock: what a pair of hands costs until then.</summary>
    private readonly double[][] until;

    /// <param name="from">The first minute with a price.</param>
    public KitchenHours(Work work, int from)
    {
        (this.work, this.from, last) = (work, from, work.LastPromised);
        var able = work.Steps.SelectMany(step => step.Ways).SelectMany(way => way.Shares).SelectMany(share => share.Able).ToHashSet();
        there = [.. Enumerable.Range(from, last - from).Select(minute => able.Count(helper => work.Taken[work.Cell(helper) + minute] == 0))];
        minutes = new Multipliers(there.Length);
        SpreadDay();
        crowds = [.. work.Crowds.Select(crowd => new Multipliers(1, crowd.Price))];
        (until, Nothing) = ([.. work.Promised.Select(_ => new double[last + 1])], new double[last + 1]);
        Begin();
    }

    public IEnumerable<Multipliers> All => crowds.Append(minutes);

    /// <summary>By minute of the clock, for what costs nothing.</summary>
    public double[] Nothing { get; }

    /// <summary>By minute of the clock, what a pair of hands of a course costs until then.</summary>
    public double[] Until(int course) => until[course];

    /// <summary>Hands that start before this minute are ahead of the day, and free.</summary>
    public int FirstOfDay => work.FirstOfDay;

    /// <summary>A step's hands are busy.</summary>
    public void Take(int course, int start, int end, int people)
    {
        if (start < FirstOfDay)
        {
            return;
        }

        for (var minute = Math.Max(start, from); minute < end; minute++)
        {
            minutes.Slopes[minute - from] += people;
        }

        foreach (var (index, crowd) in work.Crowds.Index())
        {
            if (crowd.Course == course)
            {
                var first = Math.Max(from, work.Promised[course] - crowd.Minutes);
                crowds[index].Slopes[0] += Math.Clamp(end - first, 0, end - start) * people;
            }
        }
    }

    /// <summary>The cheapest day with these prices, less what the hands that are there are worth.</summary>
    public double Settle()
    {
        var (sum, least, first) = (0.0, 0.0, last);
        for (var minute = last - 1; minute >= from; minute--)
        {
            sum += work.Prices.KitchenMinute - (there[minute - from] * minutes.Values[minute - from]);
            (least, first) = sum < least ? (sum, minute) : (least, first);
        }

        for (var minute = first; minute < last; minute++)
        {
            minutes.Slopes[minute - from] -= there[minute - from];
        }

        foreach (var (index, crowd) in work.Crowds.Index())
        {
            least -= crowds[index].Values[0] * crowd.Hands;
            crowds[index].Slopes[0] -= crowd.Hands;
        }

        return least;
    }

    /// <summary>To begin with: a minute of the day is worth its price to the hands in it, as long back from the table as these have work for.</summary>
    private void SpreadDay()
    {
        var left = work.Steps.Sum(step => step.Ways.Min(way => way.IsHandsOn ? way.Minutes * way.People : 0));
        for (var minute = there.Length - 1; minute >= 0 && left > 0; minute--)
        {
            minutes.Values[minute] = (double)work.Prices.KitchenMinute / Math.Max(1, there[minute]);
            left -= there[minute];
        }
    }

    /// <summary>Sums the prices up, once they have moved.</summary>
    public void Begin()
    {
        for (var course = 0; course < until.Length; course++)
        {
            var (sums, table) = (until[course], work.Promised[course]);
            for (var minute = from; minute < last; minute++)
            {
                var price = minutes.Values[minute - from] + (minute >= table - Prices.RushMinutes ? work.Prices.RushMinute : 0);
                foreach (var (index, crowd) in work.Crowds.Index())
                {
                    price += crowd.Course == course && minute >= table - crowd.Minutes ? crowds[index].Values[0] : 0;
                }

                sums[minute + 1] = sums[minute] + price;
            }
        }
    }
}
