using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Planner;
using CookAlong.Planner.Quick;

namespace CookAlong.Benchmarks.Instances;

/// <summary>What the planner of dinners makes of an instance, put to it as a meal.</summary>
static class Ours
{
    public static Outcome Planner(Instance instance, PlanLimits limits)
    {
        var meal = instance.Meal();
        var plan = CpSatPlanner.PlanOnly(new PlanRequest(meal, limits with { WithoutPlan = TimeSpan.Zero }) { Cushion = 0 });
        return plan.Status == PlanStatus.None ? Outcome.None : new(instance.Bound + plan.Cost.LateMinutes, Proves(meal, plan));
    }

    /// <summary>The quick search alone, so many layouts; half as many again where all of those were spent on time and brought nothing.</summary>
    public static Outcome Quick(Instance instance, int layouts)
    {
        var meal = instance.Meal();
        var clock = new Clock(meal.NotBefore!.Value, Earliest: 0, Clock.MostLateMinutes);
        var search = QuickSearch.Of(meal, clock, told: null, Prices.Of(cushion: 0, Leans.None), seed: 1)!;
        var left = layouts * 3 / 2;
        // Cooks come at the first minute and not before, so a schedule that begins too early says nothing: a plan first, then a better one.
        var first = instance.Hands ? 1000 : layouts;
        search.Run(first, layouts - first, () => left-- <= 0);
        return search.Found is null ? Outcome.None : new(instance.Bound + search.Late, search.Late == 0);
    }

    /// <summary>The bound on the cost leaves no room for a minute less late, whatever else such a plan would cost.</summary>
    static bool Proves(Meal meal, Plan plan)
    {
        if (plan.Gap == 0 || plan.Cost.LateMinutes == 0)
        {
            return true;
        }

        var most = (long)meal.Steps.Count() * Prices.Ahead;
        most += meal.Steps.Any(step => step.Way.Attention == Attention.HandsOn) ? Prices.LateMinute : 0;
        return plan.Cost.Objective * (1 - plan.Gap) > ((plan.Cost.LateMinutes - 1L) * Prices.LateMinute) + most;
    }
}
