using System.Numerics;
using CookAlong.Domain.Meals;
using CookAlong.Planner.Encodings;
using CookAlong.Planner.Quick;

namespace CookAlong.Planner.Relaxed;

/// <summary>
/// Ovens, given up for a price of each minute of each step in one: only so much is inside as has room and bears one temperature.
/// The minutes an oven takes from one temperature to the next are left out: tried, they are less than a hundredth of the bound.
/// </summary>
internal sealed class OvenMinutes
{
    /// <summary>A set of them is one number. What comes after these is cooked without an oven here, which a bound may.</summary>
    private const int Most = 64;

    private readonly int from;
    private readonly Use[] uses;

    /// <summary>Per oven its shelves, and what may be inside at one temperature, for all that are worth telling apart.</summary>
    private readonly List<(int Shelves, Use[][] Together)> ovens = [];
    private readonly double[] worth;
    private readonly ulong[] inside;

    public OvenMinutes(Work work, int from)
    {
        this.from = from;
        var last = work.LastPromised;
        uses = [.. work.Steps
            .SelectMany(step => step.Ways.Select((way, index) => (step, way, index)))
            .Where(one => one.way.Spots.Any(spot => spot.Oven >= 0) && one.way.Spots.All(spot => spot.Oven >= 0))
            .Take(Most)
            .Select((one, bit) => new Use(bit, one.step.Index, one.index, Wanted(one.step, one.way), last - from, last + 1))];
        foreach (var (index, oven) in work.Meal.Kitchen.Ovens.Index())
        {
            var here = uses.Where(use => work.Steps[use.Step].Ways[use.Way].Spots.Any(spot => spot.Oven == index))
                .Select(use => (Use: use, Celsius: Places.Within(oven, use.Wanted.Celsius)!.Value))
                .ToList();
            var together = here.Select(one => one.Celsius.Min).Distinct()
                .Select(celsius => here.Where(one => one.Celsius.Min <= celsius && celsius <= one.Celsius.Max).Select(one => one.Use).ToArray())
                .ToList();
            ovens.Add((oven.Shelves, [.. together.Where(one => !together.Any(other => other.Length > one.Length && one.All(other.Contains)))]));
        }

        Turns = work.InOven.Length == 0 ? 0 : Math.Clamp(Temperatures(work) - 1, 0, Prices.MostDialChanges) * work.Prices.DialChange;
        var shelves = work.Meal.Kitchen.Ovens.Select(oven => oven.Shelves).Append(0).Max();
        (worth, inside) = (new double[shelves + 1], new ulong[shelves + 1]);
    }

    /// <summary>What the turns of its dial cost that nobody can do without: one less than the temperatures that bear all it must cook.</summary>
    public double Turns { get; }

    public IEnumerable<Multipliers> All => uses.Select(use => use.Minutes);

    /// <summary>By minute of the clock, what a step done so costs until then; null where it is in no oven.</summary>
    public double[]? Until(int step, int way) => Of(step, way)?.Until;

    public void Take(int step, int way, int start, int end)
    {
        if (Of(step, way) is { } use)
        {
            for (var minute = Math.Max(start, from); minute < end; minute++)
            {
                use.Minutes.Slopes[minute - from]++;
            }
        }
    }

    /// <summary>Less what the dearest that fits is worth, minute by minute.</summary>
    public double Settle()
    {
        var sum = 0.0;
        for (var minute = 0; minute < (uses.Length == 0 ? 0 : uses[0].Minutes.Values.Length); minute++)
        {
            foreach (var (shelves, together) in ovens)
            {
                var (most, best) = (0.0, 0UL);
                foreach (var set in together)
                {
                    var (value, taken) = Dearest(set, shelves, minute);
                    (most, best) = value > most ? (value, taken) : (most, best);
                }

                sum -= most;
                for (; best != 0; best &= best - 1)
                {
                    uses[BitOperations.TrailingZeroCount(best)].Minutes.Slopes[minute]--;
                }
            }
        }

        return sum;
    }

    /// <summary>Sums the prices up, once they have moved.</summary>
    public void Begin()
    {
        foreach (var use in uses)
        {
            for (var minute = 0; minute < use.Minutes.Values.Length; minute++)
            {
                use.Until[from + minute + 1] = use.Until[from + minute] + use.Minutes.Values[minute];
            }
        }
    }

    /// <summary>The fewest that meet every range: the hottest of the range that ends first, and so on with what that does not meet.</summary>
    private int Temperatures(Work work)
    {
        var (count, at) = (0, int.MinValue);
        foreach (var celsius in uses.Where(use => work.Steps[use.Step].Ways.Length == 1)
            .Select(use => Places.Within(work.Meal.Kitchen.Ovens[0], use.Wanted.Celsius)!.Value).OrderBy(celsius => celsius.Max))
        {
            (count, at) = celsius.Min > at ? (count + 1, celsius.Max) : (count, at);
        }

        return count;
    }

    private static OvenUse Wanted(QuickStep step, QuickWay way) => step.Step.Ways.First(one => one.Option == way.Option).Way.Uses.Oven!;

    private Use? Of(int step, int way) => Array.Find(uses, use => use.Step == step && use.Way == way);

    /// <summary>As many of them as the shelves hold, for the most they are worth: a knapsack.</summary>
    private (double Worth, ulong Inside) Dearest(Use[] together, int shelves, int minute)
    {
        Array.Clear(worth);
        Array.Clear(inside);
        foreach (var use in together)
        {
            var price = use.Minutes.Values[minute];
            for (var left = shelves; price > 0 && left >= use.Wanted.Shelves; left--)
            {
                if (worth[left - use.Wanted.Shelves] + price > worth[left])
                {
                    (worth[left], inside[left]) = (worth[left - use.Wanted.Shelves] + price, inside[left - use.Wanted.Shelves] | (1UL << use.Bit));
                }
            }
        }

        return (worth[shelves], inside[shelves]);
    }

    /// <summary>A step in an oven.</summary>
    private sealed class Use(int bit, int step, int way, OvenUse wanted, int priced, int clock)
    {
        public int Bit => bit;

        public int Step => step;

        public int Way => way;

        public OvenUse Wanted => wanted;

        public Multipliers Minutes { get; } = new(priced);

        public double[] Until { get; } = new double[clock];
    }
}
