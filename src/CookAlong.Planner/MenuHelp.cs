using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Domain.Planning.Menu;
using CookAlong.Planner.Quick;

namespace CookAlong.Planner;

/// <summary>
/// Which change of the menu makes the day easier, tried on the meal itself by the quick search: each change with the plan it
/// leads to, beside the plan of the menu as it stands. Plans of one effort and one seed, so that they can be compared.
/// </summary>
public static class MenuHelp
{
    /// <summary>Dishes that are tried: those that ask most of the room that is fullest.</summary>
    private const int MostDishes = 4;

    /// <summary>The search's effort for each, in the limits' own units.</summary>
    private const double Effort = 1;

    /// <summary>A menu planned quickly. <see cref="PlanStatus.None"/> where no plan was found.</summary>
    public static Plan Plan(Meal meal, Minute? now, CancellationToken stop) =>
        new QuickPlanner().Plan(new PlanRequest(meal, new PlanLimits(TimeSpan.FromSeconds(5), Workers: 1, Deterministic: Effort), now), stop: stop);

    /// <summary>One after another, as each is planned; what cannot be planned is left out, and so is what helps with nothing.</summary>
    public static IEnumerable<MenuOffer> Each(Meal meal, Plan asItStands, Minute? now, CancellationToken stop)
    {
        var ease = asItStands.Status == PlanStatus.None ? null : MenuEase.Of(meal, asItStands);
        foreach (var change in Changes(meal, MenuLoad.Of(meal), now))
        {
            if (stop.IsCancellationRequested)
            {
                yield break;
            }

            var changed = ChangedMeal.Of(meal, change);
            var plan = Plan(changed, now, stop);
            if (plan.Status != PlanStatus.None && (ease is null || MenuEase.Of(changed, plan).IsEasierThan(ease)))
            {
                yield return new MenuOffer(change, changed, plan);
            }
        }
    }

    private static IEnumerable<PlanChange> Changes(Meal meal, MenuLoad load, Minute? now)
    {
        var fullest = load.Rooms.Where(room => room.Wants > 0).MaxBy(room => (double)room.Wants / Math.Max(1, room.Has));
        var dishes = load.Clashes.SelectMany(clash => new[] { clash.One, clash.Other }).Take(2)
            .Concat(fullest?.Dishes.Select(dish => dish.Dish) ?? [])
            .Distinct().Take(MostDishes).ToList();
        var evening = meal.NotBefore is null ? null : DaysAhead.EveningBefore(meal, now);
        foreach (var dish in dishes)
        {
            if (evening is { } window && DaysAhead.StepsOf(meal, meal.Dishes.Single(one => one.Id == dish), window.To).Any())
            {
                yield return new PlanChange.MakeAhead(dish, window.From, window.To);
            }

            if (meal.Dishes.Length > 1 && !meal.Steps.Any(step => meal.DishOf(step.Id).Id != dish && step.After.Any(after => meal.DishOf(after.Step).Id == dish)))
            {
                yield return new PlanChange.LeaveOut(dish);
            }
        }

        if (fullest?.Kind == RoomKind.Oven || !load.Clashes.IsEmpty)
        {
            yield return new PlanChange.AddOven();
        }
        else if (fullest?.Kind == RoomKind.Rings)
        {
            yield return new PlanChange.AddRings(1);
        }
        else if (fullest is not null)
        {
            yield return new PlanChange.AddHelper(load.From, load.To);
        }
    }
}

/// <param name="Meal">As it is after the change.</param>
/// <param name="Plan">Of that meal.</param>
public sealed record MenuOffer(PlanChange Change, Meal Meal, Plan Plan);
