using System.Globalization;
using CookAlong.Benchmarks.Planners;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Planner;

namespace CookAlong.Benchmarks.Instances;

/// <summary>
/// What the solver makes of hard instances and of the families of meals with the same effort, in its own units and by one worker:
/// figures that neither the machine nor what else it does can change, so that two versions of the planner can be told apart on a busy one.
/// </summary>
static class Effort
{
    /// <summary>Of each set, instances that its quick search and its bounds leave open.</summary>
    static readonly string[] Hard =
    [
        "j309_1", "j309_4", "j3013_1", "j3013_4", "j3013_8", "j3025_1", "j3025_4", "j3029_1", "j3029_4", "j3029_8", "j3041_1", "j3041_5", "j3045_1", "j3045_2", "j3045_7",
        "j605_1", "j609_3", "j6013_2", "j6021_4", "j6025_5", "j6030_2",
    ];

    const double Units = 1;
    const double UnitsOfAMeal = 0.7;
    const int Meals = 10;

    public static IEnumerable<(string What, string Figure)> Measure()
    {
        if (Environment.GetEnvironmentVariable("COOKALONG_BENCHMARKS") is { Length: > 0 } folder)
        {
            foreach (var set in new[] { "j30", "j60" })
            {
                var hard = Files.Projects(folder, set).Where(one => Hard.Contains(one.Name)).ToArray();
                var found = Array.ConvertAll(hard, one => Told(one.Name, Ours.Planner(one, Limits(Units))));
                yield return ($"{set}, hard ({hard.Length}): planner, {Units} unit of effort", InstanceFigures.Words(hard, Array.ConvertAll(hard, one => one.Best), found));
            }
        }

        for (var cooks = 1; cooks <= 4; cooks *= 2)
        {
            var plans = Enumerable.Range(0, Meals).Select(seed => Told($"{cooks} cooks, {seed}", Plan(Families.Full(seed, cooks)))).ToArray();
            var cost = Math.Exp(plans.Average(plan => Math.Log(plan.Cost.Objective)));
            yield return (
                string.Create(CultureInfo.InvariantCulture, $"full meal, {cooks} cooks ({Meals}): cost, gap after {UnitsOfAMeal} units of effort"),
                string.Create(CultureInfo.InvariantCulture, $"{cost:F0}, {plans.Average(plan => plan.Gap):P0}"));
        }
    }

    static PlanLimits Limits(double units) => new(TimeSpan.FromMinutes(5), Workers: 1, Deterministic: units);

    static Plan Plan(Meal meal) => CpSatPlanner.PlanOnly(new PlanRequest(meal, Limits(UnitsOfAMeal)));

    /// <summary>One by one where somebody looks into it.</summary>
    static T Told<T>(string name, T found)
    {
        if (Environment.GetEnvironmentVariable("EFFORT_EACH") is not null)
        {
            Console.Error.WriteLine($"{name}: {(found is Plan plan ? $"{plan.Cost.Objective} gap {plan.Gap:P1}" : found)}");
        }

        return found;
    }
}
