using System.Collections.Immutable;
using CookAlong.Domain.Doneness.Forecasts;

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

    readonly IReadOnlyList<Timing> timings;
    readonly Dictionary<object, int> places = [];
    readonly List<double> spreads = [];
    readonly int[][] parts;
    readonly double[] means;
    readonly Cholesky precision;

    /// <summary>How many times as wide as thought chance is here.</summary>
    readonly double wider = 1;

    public HouseholdPace(IEnumerable<Timing> timings)
    {
        // The same log read twice is one meal.
        this.timings = [.. timings.DistinctBy(timing => (timing.Run, timing.Step))];
        var household = Place("household", OfHousehold);
        parts =
        [
            .. this.timings.Select(timing => (int[])
            [
                household,
                Place(("kind", timing.Kind), OfKind),
                Place(("day", timing.Run), OfDay),
                Place(timing.Step, timing.Written.Spread),
                .. timing.Person is { } person ? (int[])[Place(("person", person), OfPerson)] : [],
            ]),
        ];
        means = new double[spreads.Count];
        var weights = Enumerable.Repeat(1.0, parts.Length).ToArray();
        precision = Precision(weights);
        for (var round = 0; round < Rounds; round++)
        {
            precision = Precision(weights);
            means = precision.Solve(Right(weights));
            wider = Wider(weights);
            weights = [.. Enumerable.Range(0, parts.Length).Select(at => (Patience + 1) / (Patience + Square(Left(at) / Chance(this.timings[at].Written))))];
        }
    }

    /// <summary>How long a step will take, seen before or not.</summary>
    public LearnedTime Of(StepKey step, string kind, WrittenTime written)
    {
        var seen = timings.Where(timing => timing.Step == step).ToArray();
        (int, double)[] places = [.. Known("household", ("kind", kind), step), .. Anybody()];
        var factor = Sum(places);
        var unseen = (this.places.ContainsKey(step) ? 0 : Square(written.Spread)) + (this.places.ContainsKey(("kind", kind)) ? 0 : Square(OfKind));
        var spread = Math.Sqrt(Variance(places) + unseen + Square(OfDay) + Square(Chance(written)));
        double At(double spreadsAway) => written.Likely * Math.Exp(factor + (spreadsAway * spread));
        return new(step, written, new WrittenTime(At(-WrittenTime.Ninth), At(0), At(WrittenTime.Ninth)), seen.Select(timing => timing.Run).Distinct().Count());
    }

    /// <summary>Per kind of work seen: how many times as long as written, and from how many meals.</summary>
    public ImmutableArray<Pace> Kinds => Paces(timing => timing.Kind, kind => [.. Known("household", ("kind", kind)), .. Anybody()]);

    /// <summary>Per person who did something alone.</summary>
    public ImmutableArray<Pace> People => Paces(timing => timing.Person, person => Known("household", ("person", person)));

    ImmutableArray<Pace> Paces(Func<Timing, string?> of, Func<string, (int, double)[]> parts) =>
    [
        .. from timing in timings
           where of(timing) is not null
           group timing by of(timing)! into same
           orderby same.Key
           select new Pace(same.Key, Math.Exp(Sum(parts(same.Key))), same.Count(), same.Select(timing => timing.Run).Distinct().Count()),
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

    double Sum(IEnumerable<(int Place, double Weight)> parts) => parts.Sum(part => part.Weight * means[part.Place]);

    double Observed(int at) => Math.Log(timings[at].Minutes / timings[at].Written.Likely);

    double Left(int at) => Observed(at) - parts[at].Sum(place => means[place]);

    double Chance(WrittenTime written) => wider * Math.Min(MostChance, written.Spread);

    double Wider(double[] weights) => Math.Sqrt(
        (ChanceSeen + Enumerable.Range(0, parts.Length).Sum(at =>
            weights[at] * (Square(Left(at)) + Variance(parts[at].Select(place => (place, 1.0)))) / Square(Math.Min(MostChance, timings[at].Written.Spread)))) / (ChanceSeen + parts.Length));

    double Variance(IEnumerable<(int Place, double Weight)> parts)
    {
        var picked = new double[spreads.Count];
        foreach (var (place, weight) in parts)
        {
            picked[place] = weight;
        }

        return precision.Solve(picked).Zip(picked, (one, other) => one * other).Sum();
    }

    Cholesky Precision(double[] weights)
    {
        var matrix = new double[spreads.Count, spreads.Count];
        for (var place = 0; place < spreads.Count; place++)
        {
            matrix[place, place] = 1 / Square(spreads[place]);
        }

        for (var at = 0; at < parts.Length; at++)
        {
            foreach (var one in parts[at])
            {
                foreach (var other in parts[at])
                {
                    matrix[one, other] += weights[at] / Square(Chance(timings[at].Written));
                }
            }
        }

        return new Cholesky(matrix);
    }

    double[] Right(double[] weights)
    {
        var right = new double[spreads.Count];
        for (var at = 0; at < parts.Length; at++)
        {
            foreach (var place in parts[at])
            {
                right[place] += weights[at] * Observed(at) / Square(Chance(timings[at].Written));
            }
        }

        return right;
    }

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
