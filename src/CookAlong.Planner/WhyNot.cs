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
    public static ImmutableArray<Conflict> Find(PlanRequest request, Plan plan, CancellationToken stop)
    {
        var asking = new Asking(request, plan, stop);
        var found = plan.Courses.Where(course => course.LateMinutes > 0)
            .Select(course => new Conflict(new PlanChange.ServeLater(course.Course, course.LateMinutes), course.LateMinutes))
            .ToList();
        var changes = Changes(request.Meal, plan).ToList();

        // Everything may wait longer: one solve says whether that helps at all, and which dishes use it.
        found.AddRange(changes.Select((change, index) => asking.Helps(change.Change, change.Meal, changes.Count + 1 - index)).OfType<Conflict>());
        found.AddRange(LongerWaits(request.Meal, plan, asking));
        return [.. found.OrderByDescending(conflict => conflict.GainMinutes ?? int.MaxValue)];
    }

    private static IEnumerable<Conflict> LongerWaits(Meal meal, Plan plan, Asking asking)
    {
        var minutes = Math.Max(15, plan.Cost.LateMinutes);
        if (asking.Try(meal with { Dishes = [.. meal.Dishes.Select(dish => Longer(dish, minutes))] }, solvesToCome: 3) is not { } all
            || asking.Gain(all) is null)
        {
            yield break;
        }

        var waits = meal.Dishes.Select(dish => (Dish: dish, More: Wait(dish, all) - dish.Holds.Max(hold => hold.Limit)))
            .Where(one => one.More > 0).ToList();
        for (var index = 0; index < waits.Count; index++)
        {
            var (dish, more) = waits[index];
            var changed = meal with { Dishes = meal.Dishes.Replace(dish, Longer(dish, more)) };
            if (asking.Helps(new PlanChange.WaitLonger(dish.Id, more), changed, waits.Count - index) is { } conflict)
            {
                yield return conflict;
            }
        }
    }

    private static int Wait(Dish dish, Plan plan) => plan.TableTime(dish.Course) - dish.Steps.Max(step => plan.Step(step.Id).End);

    private static Dish Longer(Dish dish, int minutes) => dish with { Holds = [.. dish.Holds.Select(hold => hold with { Limit = hold.Limit + minutes })] };

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
