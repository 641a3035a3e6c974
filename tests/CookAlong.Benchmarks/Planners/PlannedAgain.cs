using System.Collections.Immutable;
using System.Diagnostics;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Planner;

namespace CookAlong.Benchmarks.Planners;

/// <summary>A meal that has a plan is changed and planned again, beside planning the changed meal as if it were new, in the same time.</summary>
static class PlannedAgain
{
    const int Meals = 3;

    static readonly PlanLimits Limits = new(TimeSpan.FromSeconds(3));

    static readonly (string Name, Func<int, Meal> Make)[] Kinds =
    [
        ("full meal, 1 cook", seed => Families.Full(seed, 1)),
        ("full meal, 2 cooks", seed => Families.Full(seed, 2)),
        ("large meal, 4 cooks", Families.Large),
    ];

    static readonly (string Name, Func<Meal, Meal> Change)[] Changes =
    [
        ("five steps take 5 min longer", FiveLonger),
        ("a ring less", meal => meal with { Kitchen = meal.Kitchen with { Rings = meal.Kitchen.Rings - 1 } }),
        ("a pair of hands less", meal => meal with { Helpers = [.. meal.Helpers.Take(Math.Max(1, meal.Helpers.Length - 1))] }),
    ];

    public static IEnumerable<(string What, string Figure)> Measure()
    {
        foreach (var (kind, make) in Kinds)
        {
            _ = Again(make(Meals), previous: null);
            foreach (var (change, changed) in Changes)
            {
                var all = Enumerable.Range(0, Meals).Select(seed =>
                {
                    var before = Again(make(seed), previous: null).Plan;
                    var meal = changed(make(seed));
                    var (first, plan) = Again(meal, before);
                    var anew = Again(meal, previous: null).Plan;
                    return (First: first, Ratio: plan.Cost.Objective / (double)anew.Cost.Objective, Moved: Moved(meal, before, plan), MovedAnew: Moved(meal, before, anew));
                }).ToArray();
                yield return (
                    $"{kind}, {change}: first plan (longest of {Meals}); cost to that of planning anew (each); of {make(0).Steps.Count()} steps moved (each; anew)",
                    $"{all.Max(one => one.First):F0} ms; {string.Join(", ", all.Select(one => $"{one.Ratio:F2}"))}; {string.Join(", ", all.Select(one => one.Moved))}; {string.Join(", ", all.Select(one => one.MovedAnew))}");
            }
        }
    }

    static (double First, Plan Plan) Again(Meal meal, Plan? previous)
    {
        double? first = null;
        var watch = Stopwatch.StartNew();
        var plan = new CpSatPlanner().Plan(new PlanRequest(meal, Limits, Previous: previous), new Heard(_ => first ??= watch.Elapsed.TotalMilliseconds));
        return (first ?? double.PositiveInfinity, plan);
    }

    static int Moved(Meal meal, Plan before, Plan after) => meal.Steps.Count(step => before.Step(step.Id).Start != after.Step(step.Id).Start);

    static Meal FiveLonger(Meal meal) => meal with { Dishes = [.. meal.Dishes.Select((dish, index) => index < 5 ? dish with { Steps = Longer(dish.Steps) } : dish)] };

    static ImmutableArray<Step> Longer(ImmutableArray<Step> steps)
    {
        var minutes = steps[1].Way.Minutes;
        return steps.SetItem(1, steps[1] with { Way = steps[1].Way with { Minutes = new Durations(minutes.Least, minutes.Likely + 5, minutes.Most + 5) } });
    }
}
