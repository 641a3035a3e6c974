using System.Diagnostics;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Planner;
using CookAlong.Planner.Quick;

namespace CookAlong.Benchmarks.Planners;

/// <summary>Both planners on the families of meals, side by side: what a plan of the quick search costs as a ratio to the solver's, in the same time.</summary>
static class MealFigures
{
    const int Meals = 10;

    /// <summary>Of those, how many are searched long.</summary>
    const int Patient = 5;

    static readonly TimeSpan Minute = TimeSpan.FromMinutes(1);

    /// <param name="Time">What is given to both planners.</param>
    /// <param name="Long">Stands for the optimum, which nobody knows.</param>
    /// <param name="Within">How near to what is found by then is good.</param>
    sealed record Kind(string Name, TimeSpan Time, TimeSpan Long, double Within, Func<int, Meal> Make);

    static readonly Kind[] Kinds =
    [
        new("full meal, 1 cook", TimeSpan.FromSeconds(3), TimeSpan.FromSeconds(20), 0.05, seed => Families.Full(seed, 1)),
        new("full meal, 2 cooks", TimeSpan.FromSeconds(1.5), TimeSpan.FromSeconds(10), 0.05, seed => Families.Full(seed, 2)),
        new("full meal, 4 cooks", TimeSpan.FromSeconds(1.5), TimeSpan.FromSeconds(10), 0.05, seed => Families.Full(seed, 4)),
        new("menu of 1896, 2 cooks", TimeSpan.FromSeconds(1.5), TimeSpan.FromSeconds(10), 0.05, seed => Menus.Of(seed, 2)),
        new("menu of 1896, 4 cooks", TimeSpan.FromSeconds(1.5), TimeSpan.FromSeconds(10), 0.05, seed => Menus.Of(seed, 4)),
        new("large meal, 4 cooks", TimeSpan.FromSeconds(5), TimeSpan.FromMinutes(5), 0.1, Families.Large),
    ];

    /// <param name="isQuick">A long search is a minute at the most.</param>
    public static IEnumerable<(string What, string Figure)> Measure(bool isQuick)
    {
        foreach (var (name, time, longest, within, make) in Kinds)
        {
            _ = Once(new CpSatPlanner(), make(Meals), time);
            var solved = Enumerable.Range(0, Meals).Select(seed => Once(new CpSatPlanner(), make(seed), time)).ToArray();
            var quick = Enumerable.Range(0, Meals).Select(seed => Once(new QuickPlanner(), make(seed), time)).ToArray();
            var ratios = quick.Zip(solved, (one, other) => (double)one.Plan.Cost.Objective / other.Plan.Cost.Objective);
            yield return ($"{name}: first plan (median, longest of {Meals})", $"{Median(solved.Select(one => one.First)):F0} ms, {solved.Max(one => one.First):F0} ms");
            yield return ($"{name}: planned on time after {time.TotalSeconds:0.#} s, solver / quick search", $"{solved.Count(IsOnTime)} / {quick.Count(IsOnTime)} of {Meals}");
            yield return ($"{name}: proved; whole planning (median, longest of {Meals})", $"{solved.Count(IsProved)}; {Median(solved.Select(one => one.Whole)):F2} s, {solved.Max(one => one.Whole):F2} s");
            yield return ($"{name}: cost (average); gap to the proven bound (average)", $"{solved.Average(one => one.Plan.Cost.Objective):N0}; {solved.Average(one => one.Plan.Gap):P0}");
            yield return ($"{name}: cost of the quick search's plan to the solver's (median)", $"{Median(ratios):F2}");
            var patient = isQuick && longest > Minute ? Minute : longest;
            var good = Enumerable.Range(0, Patient).Select(seed => Within(make(seed), patient, within)).ToArray();
            yield return ($"{name}: within {within:P0} of what {patient.TotalSeconds:F0} s find (median, longest of {Patient}); proved", $"{Median(good.Select(one => one.Seconds)):F2} s, {good.Max(one => one.Seconds):F2} s; {good.Count(one => one.Plan.Status == PlanStatus.Optimal)}");
            var dearer = solved.Zip(good, (one, other) => ((double)one.Plan.Cost.Objective / other.Plan.Cost.Objective) - 1).ToArray();
            yield return ($"{name}: what {time.TotalSeconds:0.#} s end with is dearer than that by (average, most of {Patient})", $"{dearer.Average():P1}, {dearer.Max():P1}");
        }
    }

    /// <summary>When the solver first had a plan so near to the one it ends with.</summary>
    static (double Seconds, Plan Plan) Within(Meal meal, TimeSpan time, double part)
    {
        var told = new List<PlanProgress>();
        var plan = new CpSatPlanner().Plan(new PlanRequest(meal, new PlanLimits(time)), new Heard(told.Add));
        return (told.Where(one => one.Objective <= plan.Cost.Objective * (1 + part)).Select(one => one.After).Append(time).Min().TotalSeconds, plan);
    }

    static bool IsOnTime((double, double, Plan Plan) one) => one.Plan is { Status: not PlanStatus.None, Cost.LateMinutes: 0 };

    static bool IsProved((double, double, Plan Plan) one) => one.Plan.Status == PlanStatus.Optimal;

    /// <returns>Milliseconds to the first plan, seconds to the last, and that.</returns>
    static (double First, double Whole, Plan Plan) Once(IMealPlanner planner, Meal meal, TimeSpan time)
    {
        double? first = null;
        var watch = Stopwatch.StartNew();
        var plan = planner.Plan(new PlanRequest(meal, new PlanLimits(time)), new Heard(_ => first ??= watch.Elapsed.TotalMilliseconds));
        return (first ?? double.PositiveInfinity, watch.Elapsed.TotalSeconds, plan);
    }

    static double Median(IEnumerable<double> figures)
    {
        double[] all = [.. figures.Order()];
        return (all[(all.Length - 1) / 2] + all[all.Length / 2]) / 2;
    }
}
