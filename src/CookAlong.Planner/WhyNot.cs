using System.Collections.Immutable;
using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Planner;

/// <summary>
/// Why a meal is late or cannot be planned, as the changes that would mend it: each is tried on the meal itself in a short
/// solve, and named with what it gains. At most two seconds in all.
/// </summary>
internal static class WhyNot
{
    private static readonly TimeSpan Whole = TimeSpan.FromSeconds(2);

    public static ImmutableArray<Conflict> Find(PlanRequest request, Plan plan, CancellationToken stop)
    {
        var clock = new Search(request.Limits with { Time = Whole }, null, stop);
        var found = plan.Courses.Where(course => course.LateMinutes > 0)
            .Select(course => new Conflict(new PlanChange.ServeLater(course.Course, course.LateMinutes), course.LateMinutes))
            .ToList();
        var changes = Changes(request.Meal, plan).ToList();
        for (var index = 0; index < changes.Count && clock.Left > TimeSpan.Zero && !stop.IsCancellationRequested; index++)
        {
            var limits = request.Limits with
            {
                Time = clock.Left / (changes.Count - index),
                Deterministic = request.Limits.Deterministic / changes.Count,
            };
            var changed = CpSatPlanner.Best(request with { Meal = changes[index].Meal, Limits = limits }, new Search(limits, null, stop));
            if (Gain(plan, changed) is { } gain)
            {
                found.Add(new Conflict(changes[index].Change, gain.Minutes));
            }
        }

        return [.. found.OrderByDescending(conflict => conflict.GainMinutes ?? int.MaxValue)];
    }

    /// <summary>Null when the change does not help.</summary>
    private static (int? Minutes, bool Helps)? Gain(Plan plan, Plan changed)
    {
        if (changed.Status == PlanStatus.None)
        {
            return null;
        }

        if (plan.Status == PlanStatus.None)
        {
            return (null, true);
        }

        var gain = plan.Cost.LateMinutes - changed.Cost.LateMinutes;
        return gain > 0 ? (gain, true) : null;
    }

    private static IEnumerable<(PlanChange Change, Meal Meal)> Changes(Meal meal, Plan plan)
    {
        if (meal.NotBefore is { } notBefore)
        {
            var sooner = Math.Max(30, plan.Cost.LateMinutes);
            yield return (new PlanChange.StartEarlier(sooner), meal with { NotBefore = notBefore - sooner });
        }

        var kitchen = meal.Kitchen;
        if (!kitchen.Ovens.IsEmpty && UsesOven(meal))
        {
            var second = kitchen.Ovens[0] with { Id = new OvenId(NewName("another-oven", kitchen.Ovens.Select(oven => oven.Id.Value))) };
            yield return (new PlanChange.AddOven(), meal with { Kitchen = kitchen with { Ovens = kitchen.Ovens.Add(second) } });
        }

        if (meal.Steps.SelectMany(step => step.Ways).Any(way => way.Way.Uses.Rings > 0))
        {
            yield return (new PlanChange.AddRings(1), meal with { Kitchen = kitchen with { Rings = kitchen.Rings + 1 } });
        }

        var from = plan.NotBefore;
        var to = plan.Courses.Max(course => course.TableTime);
        var hands = new Helper(new HelperId(NewName("another-helper", meal.Helpers.Select(helper => helper.Id.Value))), "", [new Window(from, to)], null, IsChild: false);
        yield return (new PlanChange.AddHelper(from, to), meal with { Helpers = meal.Helpers.Add(hands) });

        foreach (var dish in meal.Dishes)
        {
            var minutes = Math.Max(15, plan.Cost.LateMinutes);
            var longer = dish with { Holds = [.. dish.Holds.Select(hold => hold with { Limit = hold.Limit + minutes })] };
            yield return (new PlanChange.WaitLonger(dish.Id, minutes), meal with { Dishes = meal.Dishes.Replace(dish, longer) });
        }
    }

    private static bool UsesOven(Meal meal) => meal.Steps.SelectMany(step => step.Ways).Any(way => way.Way.Uses.Oven is not null);

    private static string NewName(string wanted, IEnumerable<string> taken)
    {
        var names = taken.ToHashSet();
        while (names.Contains(wanted))
        {
            wanted += "-2";
        }

        return wanted;
    }
}
