using System.Collections.Immutable;

namespace CookAlong.Domain.Debrief.Learning;

/// <summary>
/// How long this household takes beside what is written. The logarithm of minutes to minutes written is a sum of what is
/// the household's, the kind of work's, the person's, the step's and that day's, and chance; each is a normal number
/// around none before anything was seen, so that little seen changes little and what is seen of one helps the others.
/// </summary>
public sealed class HouseholdPace
{
    // Spreads of the parts before anything was seen, of logarithms. Own estimates; that of chance is what the recipe's range
    // says, and at the most a little less than what lies between people (CaptainCook4D, arXiv 2312.14556: 0.57).
    const double OfHousehold = .15, OfKind = .15, OfPerson = .15, OfDay = .2, MostChance = .48;

    /// <summary>As many timings as what is thought of chance is worth before there are any.</summary>
    const double ChanceSeen = 20;

    /// <summary>How far out a timing may lie before it counts for less (the degrees of freedom of Student's t).</summary>
    const double Patience = 4;

    const int Rounds = 8;

    /// <summary>Meals that count, the latest: a household changes, and the work grows with the third power of what is looked at.</summary>
    public const int MostMeals = 50;

    readonly IReadOnlyList<Timing> timings;
    readonly Dictionary<object, int> places = [];
    readonly List<double> spreads = [];
    readonly Dictionary<StepKey, int> steps = [];
    readonly PartsSeen seen;

    /// <summary>How many times as wide as thought chance is here.</summary>
    readonly double wider = 1;

    /// <param name="timings">Those of the latest meal first.</param>
    public HouseholdPace(IEnumerable<Timing> timings)
    {
        // The same log read twice is one meal.
        this.timings = [.. timings.DistinctBy(timing => (timing.Run, timing.Step)).GroupBy(timing => timing.Run).Take(MostMeals).SelectMany(meal => meal)];
        var household = Place("household", OfHousehold);
        var parts = this.timings.Select(timing => (int[])
        [
            household,
            Place(("kind", timing.Kind), OfKind),
            Place(("day", timing.Run), OfDay),
            .. timing.Person is { } person ? (int[])[Place(("person", person), OfPerson)] : [],
        ]).ToArray();
        var stepSpreads = new List<double>();
        foreach (var timing in this.timings.Where(timing => steps.TryAdd(timing.Step, steps.Count)))
        {
            stepSpreads.Add(timing.Written.Spread);
        }

        PartsSeen Seen(double[] weights) => new(spreads, stepSpreads, [.. this.timings.Select((timing, at) =>
            new Seen(parts[at], steps[timing.Step], weights[at] / Square(Chance(timing.Written)), Observed(timing)))]);
        var weights = Enumerable.Repeat(1.0, parts.Length).ToArray();
        seen = Seen(weights);
        for (var round = 0; round < Rounds; round++)
        {
            var fit = seen = Seen(weights);
            var left = this.timings.Select((timing, at) => Observed(timing) - fit.Mean(All(parts[at]), steps[timing.Step])).ToArray();
            wider = Math.Sqrt((ChanceSeen + this.timings.Select((timing, at) =>
                weights[at] * (Square(left[at]) + fit.Variance(All(parts[at]), steps[timing.Step])) / Square(Math.Min(MostChance, timing.Written.Spread))).Sum()) / (ChanceSeen + parts.Length));
            weights = [.. this.timings.Select((timing, at) => (Patience + 1) / (Patience + Square(left[at] / Chance(timing.Written))))];
        }
    }

    /// <summary>How long a step will take, seen before or not.</summary>
    public LearnedTime Of(StepKey step, string kind, WrittenTime written)
    {
        int? known = steps.TryGetValue(step, out var place) ? place : null;
        (int, double)[] parts = [.. Known("household", ("kind", kind)), .. Anybody()];
        var factor = seen.Mean(parts, known);
        var unseen = (known is null ? Square(written.Spread) : 0) + (places.ContainsKey(("kind", kind)) ? 0 : Square(OfKind));
        var spread = Math.Sqrt(seen.Variance(parts, known) + unseen + Square(OfDay) + Square(Chance(written)));
        double At(double spreadsAway) => written.Likely * Math.Exp(factor + (spreadsAway * spread));
        return new(step, written, new WrittenTime(At(-WrittenTime.Ninth), At(0), At(WrittenTime.Ninth)), timings.Where(timing => timing.Step == step).Select(timing => timing.Run).Distinct().Count());
    }

    /// <summary>Per kind of work seen: how many times as long as written, and from how many meals.</summary>
    public ImmutableArray<Pace> Kinds => Paces(timing => timing.Kind, kind => [.. Known("household", ("kind", kind)), .. Anybody()]);

    /// <summary>Per person who did something alone.</summary>
    public ImmutableArray<Pace> People => Paces(timing => timing.Person, person => Known("household", ("person", person)));

    ImmutableArray<Pace> Paces(Func<Timing, string?> of, Func<string, (int, double)[]> parts) =>
    [
        .. from timing in timings.OrderBy(of, StringComparer.Ordinal)
           where of(timing) is not null
           group timing by of(timing)! into same
           select new Pace(same.Key, Math.Exp(seen.Mean(parts(same.Key), step: null)), same.Count(), same.Select(timing => timing.Run).Distinct().Count()),
    ];

    int Place(object part, double spread)
    {
        if (!places.TryGetValue(part, out var place))
        {
            places[part] = place = spreads.Count;
            spreads.Add(spread);
        }

        return place;
    }

    (int Place, double Weight)[] Known(params object[] wanted) => [.. wanted.Where(places.ContainsKey).Select(part => (places[part], 1.0))];

    /// <summary>Who will do it is not known yet: the middle of those who were seen.</summary>
    IEnumerable<(int Place, double Weight)> Anybody()
    {
        var people = timings.Select(timing => timing.Person).OfType<string>().Distinct().ToArray();
        return people.Select(person => (places[("person", person)], 1.0 / people.Length));
    }

    static IEnumerable<(int Place, double Weight)> All(int[] parts) => parts.Select(part => (part, 1.0));

    static double Observed(Timing timing) => Math.Log(timing.Minutes / timing.Written.Likely);

    double Chance(WrittenTime written) => wider * Math.Min(MostChance, written.Spread);

    static double Square(double number) => number * number;
}

/// <summary>What a step takes here.</summary>
/// <param name="Minutes">From least to most lie eight of ten.</param>
/// <param name="Meals">In how many it was timed.</param>
public sealed record LearnedTime(StepKey Step, WrittenTime Written, WrittenTime Minutes, int Meals)
{
    /// <summary>Times as long as written.</summary>
    public double Factor => Minutes.Likely / Written.Likely;
}

/// <param name="Factor">Times as long as written.</param>
/// <param name="Timings">Steps it was seen in.</param>
public sealed record Pace(string Name, double Factor, int Timings, int Meals);
