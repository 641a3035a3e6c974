using System.Diagnostics;
using CookAlong.Benchmarks.Planners;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Planner;

namespace CookAlong.Benchmarks;

/// <summary>The demo meal planned again and again: how soon a first plan stands, and how far from the proven bound a second of search gets.</summary>
static class Planning
{
    public static IEnumerable<(string What, string Figure)> Measure(Meal meal)
    {
        var planner = new CpSatPlanner();
        var cold = Once(planner, meal);
        var warm = Enumerable.Range(0, 5).Select(_ => Once(planner, meal)).ToArray();
        yield return ("demo meal, first plan, cold", Milliseconds(cold.First));
        yield return ("demo meal, first plan, warm (median of 5)", Milliseconds(Median(warm.Select(one => one.First))));
        yield return ("demo meal, whole planning, searching 1 s (median of 5)", Milliseconds(Median(warm.Select(one => one.Whole))));
        yield return ("demo meal, gap to the proven bound (median of 5)", $"{Median(warm.Select(one => one.Plan.Gap)):P1}");
        yield return ("demo meal, minutes late", $"{warm.Max(one => one.Plan.Cost.LateMinutes)}");
        var days = Enumerable.Range(0, 60).Select(_ => Days(meal, cold.Plan)).Skip(10).Order().ToArray();
        yield return ("10,000 simulated days of it, warm (median of 50)", $"{days[days.Length / 2]:F1} ms");
        foreach (var cushion in new[] { 0, 5, 10, 15 })
        {
            var plan = Cushions.Rehearsed(meal, planner.Plan(new PlanRequest(meal, new PlanLimits(TimeSpan.FromSeconds(1), Workers: 2)) { Cushion = cushion }));
            yield return ($"served within 10 min with a cushion of {cushion} min; price of its waiting", $"{plan.Confidence!.OnTimeWithin10:P0}; {plan.Cost.Waiting}");
        }
    }

    static double Days(Meal meal, Plan plan)
    {
        var watch = Stopwatch.StartNew();
        Domain.Confidence.Simulation.Run(meal, plan, 10_000, 1);
        return watch.Elapsed.TotalMilliseconds;
    }

    static (double First, double Whole, Plan Plan) Once(CpSatPlanner planner, Meal meal)
    {
        double? first = null;
        var watch = Stopwatch.StartNew();
        var told = new Heard(_ => first ??= watch.Elapsed.TotalMilliseconds);
        var plan = planner.Plan(new PlanRequest(meal, new PlanLimits(TimeSpan.FromSeconds(1), Workers: 2)), told);
        return (first ?? watch.Elapsed.TotalMilliseconds, watch.Elapsed.TotalMilliseconds, plan);
    }

    static double Median(IEnumerable<double> figures) => figures.Order().ElementAt(2);

    static string Milliseconds(double figure) => $"{figure:F0} ms";
}
