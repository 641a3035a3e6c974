using System.Diagnostics;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Planner;
using CookAlong.Planner.Quick;

namespace CookAlong.Benchmarks.Planners;

/// <summary>Both planners on the families of meals, side by side: what a plan of the quick search costs as a ratio to the solver's, in the same time.</summary>
static class MealFigures
{
    const int Meals = 5;

    static readonly (string Name, TimeSpan Time, Func<int, Meal> Make)[] Kinds =
    [
        ("full meal, 1 cook", TimeSpan.FromSeconds(3), seed => Families.Full(seed, 1)),
        ("full meal, 2 cooks", TimeSpan.FromSeconds(1), seed => Families.Full(seed, 2)),
        ("full meal, 4 cooks", TimeSpan.FromSeconds(1), seed => Families.Full(seed, 4)),
        ("large meal, 4 cooks", TimeSpan.FromSeconds(5), Families.Large),
    ];

    public static IEnumerable<(string What, string Figure)> Measure()
    {
        foreach (var (name, time, make) in Kinds)
        {
            var solved = Enumerable.Range(0, Meals).Select(seed => Once(new CpSatPlanner(), make(seed), time)).ToArray();
            var quick = Enumerable.Range(0, Meals).Select(seed => Once(new QuickPlanner(), make(seed), time)).ToArray();
            yield return ($"{name}: first plan (median of {Meals})", $"{Median(solved.Select(one => one.First)):F0} ms");
            yield return ($"{name}: planned on time after {time.TotalSeconds:F0} s, solver / quick search", $"{solved.Count(IsOnTime)} / {quick.Count(IsOnTime)} of {Meals}");
            yield return ($"{name}: gap to the proven bound (median)", $"{Median(solved.Select(one => one.Plan.Gap)):P0}");
            yield return ($"{name}: cost of the quick search's plan to the solver's (median)", $"{Median(quick.Zip(solved, (one, other) => (double)one.Plan.Cost.Objective / other.Plan.Cost.Objective)):F2}");
        }
    }

    static bool IsOnTime((double First, Plan Plan) one) => one.Plan is { Status: not PlanStatus.None, Cost.LateMinutes: 0 };

    static (double First, Plan Plan) Once(IMealPlanner planner, Meal meal, TimeSpan time)
    {
        double? first = null;
        var watch = Stopwatch.StartNew();
        var plan = planner.Plan(new PlanRequest(meal, new PlanLimits(time)), new FirstTold(() => first ??= watch.Elapsed.TotalMilliseconds));
        return (first ?? double.PositiveInfinity, plan);
    }

    static double Median(IEnumerable<double> figures) => figures.Order().ElementAt(Meals / 2);
}
