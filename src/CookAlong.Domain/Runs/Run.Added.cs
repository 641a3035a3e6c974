using System.Collections.Immutable;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Domain.Planning.Menu;

namespace CookAlong.Domain.Runs;

// A dish that nobody had planned is cooked as well.
public sealed partial record Run
{
    Decision Add(Dish dish, DateTimeOffset now) =>
        Meal.Courses.FirstOrDefault(course => course.Id == dish.Course) is not { } course ? new Refusal.UnknownCourse(dish.Course)
        : course.TableTime <= Minute.Of(now) ? new Refusal.TableTimePast(course.Id)
        : Menu.Any(one => one.Id == dish.Id || one.Steps.Select(step => step.Id).Intersect(dish.Steps.Select(step => step.Id)).Any()) ? new Refusal.DishIsThere(dish.Id)
        : dish.Steps.IsEmpty ? new Refusal.NothingToCook(dish.Name)
        : dish.Steps.FirstOrDefault(step => PlaceFor(step) is null) is { } homeless ? new Refusal.NoPlaceFor(homeless.Text)
        : new RunEvent.DishAdded(dish, StartsOf(dish, Minute.Of(now)));

    /// <summary>When a dish would be ready for its course by its own steps alone; null = this kitchen has no place for one of them.</summary>
    public Minute? SoonestOf(Dish dish, DateTimeOffset now) =>
        dish.Steps.IsEmpty || dish.Steps.Any(step => PlaceFor(step) is null) ? null
        : StartsOf(dish, Minute.Of(now)).Max(one => one.Start + PlaceFor(dish.Steps.Single(step => step.Id == one.Step))!.Value.Way.Minutes.Likely);

    /// <summary>As late as the recipe allows, and not before now: nobody's work yet, and in nobody's way until a plan makes room for it.</summary>
    ImmutableArray<StepStart> StartsOf(Dish dish, Minute now)
    {
        var bounds = new Bounds(Meal with { Dishes = [dish] });
        var starts = new Dictionary<StepId, Minute>();

        Minute Start(Step step)
        {
            if (!starts.TryGetValue(step.Id, out var start))
            {
                start = Minute.Later(now, bounds.LatestStart(step));
                foreach (var after in step.After)
                {
                    var before = dish.Steps.Single(one => one.Id == after.Step);
                    start = Minute.Later(start, Start(before) + PlaceFor(before)!.Value.Way.Minutes.Likely + after.Least);
                }

                starts[step.Id] = start;
            }

            return start;
        }

        return [.. dish.Steps.Select(step => new StepStart(step.Id, Start(step)))];
    }

    /// <summary>The first of its ways that this kitchen has the oven, the grill and the things for; null = none.</summary>
    (int Option, Way Way, OvenId? Oven, GrillId? Grill)? PlaceFor(Step step)
    {
        foreach (var (option, way) in step.Ways)
        {
            var kitchen = Meal.Kitchen;
            var oven = way.Uses.Oven is { } heat ? kitchen.Ovens.FirstOrDefault(one => (heat.Oven is null || heat.Oven == one.Id) && heat.Shelves <= one.Shelves && one.Min <= heat.Celsius.Max && heat.Celsius.Min <= one.Max) : null;
            var grill = way.Uses.Grill is { } under ? kitchen.Grills.FirstOrDefault(one => under.Grill is null || under.Grill == one.Id) : null;
            if ((way.Uses.Oven is null || oven is not null)
                && (way.Uses.Grill is null || grill is not null)
                && way.Uses.Rings <= kitchen.Rings
                && way.Uses.Appliances.All(use => kitchen.Appliances.Any(one => one.Id == use)))
            {
                return (option, way, oven?.Id, grill?.Id);
            }
        }

        return null;
    }

    Run WithAdded(Dish dish, ImmutableArray<StepStart> starts) => this with
    {
        Menu = Menu.Add(dish),
        Meal = Meal with { Dishes = Meal.Dishes.Add(dish) },
        Plan = With(Plan, dish, starts),
    };

    /// <summary>A plan in which the dish is cooked as well, as if there were room for everything.</summary>
    internal Plan With(Plan plan, Dish dish, ImmutableArray<StepStart> starts)
    {
        ImmutableArray<PlannedStep> steps =
        [
            .. from step in dish.Steps
               let place = PlaceFor(step)!.Value
               let start = starts.Single(one => one.Step == step.Id).Start
               select new PlannedStep(step.Id, start, start + place.Way.Minutes.Likely, place.Option, Helpers: [], place.Oven, place.Grill, place.Way.Uses.Appliances, Slack: 0),
        ];
        var ready = steps.Max(step => step.End);
        var (hold, how) = dish.Holds.Index().MinBy(hold => hold.Item.Place == HoldPlace.WarmOven);
        var oven = how.Place == HoldPlace.WarmOven ? Meal.Kitchen.Ovens[0].Id : (OvenId?)null;
        return plan with
        {
            Steps = [.. plan.Steps, .. steps],
            Holds = plan.Holds.Add(new PlannedHold(dish.Id, hold, how.Place, ready, Minute.Later(ready, plan.TableTime(dish.Course)), oven)),
        };
    }
}

/// <summary>When a step is to begin.</summary>
public readonly record struct StepStart(StepId Step, Minute Start);
