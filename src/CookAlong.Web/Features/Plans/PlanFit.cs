using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Web.Features.Plans;

/// <summary>Whether a plan can still be told of a meal that has been changed since. Times may differ: that is what planning again is for.</summary>
static class PlanFit
{
    /// <summary>Every step of the meal is planned, and no other.</summary>
    public static bool HasStepsOf(this Plan plan, Meal meal) =>
        plan.Status == PlanStatus.None || plan.Steps.Select(step => step.Step).ToHashSet().SetEquals(meal.Steps.Select(step => step.Id));

    /// <summary>And whatever else the plan names is there: whoever shows it would look for it in vain.</summary>
    public static bool IsOf(this Plan plan, Meal meal) =>
        plan.HasStepsOf(meal)
        && plan.Courses.Select(course => course.Course).ToHashSet().SetEquals(meal.Courses.Select(course => course.Id))
        && plan.Steps.SelectMany(step => step.Helpers).Concat(plan.Tends.Select(tend => tend.Helper)).All(id => meal.Helpers.Any(helper => helper.Id == id))
        && plan.Steps.Select(step => step.Oven).Concat(plan.Holds.Select(hold => hold.Oven)).OfType<OvenId>().Concat(plan.Ovens.Select(oven => oven.Oven))
            .All(id => meal.Kitchen.Ovens.Any(oven => oven.Id == id))
        && plan.Steps.Select(step => step.Grill).OfType<GrillId>().All(id => meal.Kitchen.Grills.Any(grill => grill.Id == id))
        && plan.Steps.All(planned => IsWay(planned, meal.Step(planned.Step)))
        && plan.Tends.All(tend => meal.Steps.Any(step => step.Id == tend.Step && tend.Tend < step.Tends.Length))
        && plan.Holds.All(hold => meal.Dishes.Any(dish => dish.Id == hold.Dish && hold.Hold < dish.Holds.Length && (hold.Oven is null || dish.Holds[hold.Hold].Oven is not null)));

    static bool IsWay(PlannedStep planned, Step step) =>
        planned.Option < step.Options.Length && (planned.Oven is null || step.WayOf(planned.Option).Uses.Oven is not null);
}
