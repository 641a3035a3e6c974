using System.Collections.Immutable;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Planning.Checks;

/// <summary>A planned step beside the step of the meal it stands for.</summary>
readonly record struct Work(PlannedStep Planned, Step Step, Way Way);

/// <summary>A warm hold in a place, beside what the meal says of it.</summary>
readonly record struct WarmWait(PlannedHold Planned, Dish Dish, WarmOven Warm);

/// <summary>Something that takes a helper whole: a hands-on step, or a tend.</summary>
readonly record struct Job(HelperId Helper, Step Step, Tend? Tend, Minute Start, Minute End);

/// <summary>Something inside an oven.</summary>
readonly record struct Inside(OvenId Oven, CelsiusRange Celsius, int Shelves, Minute Start, Minute End, StepId? Step, DishId? Dish);

/// <summary>
/// A meal and a plan side by side, paired by id. What cannot be paired (an unknown id, a missing step, no such option)
/// is left out here and found by the one rule that it breaks, so that no other rule stumbles over it.
/// </summary>
sealed class PlanInQuestion
{
    readonly Dictionary<StepId, Step> steps = [];
    readonly Dictionary<DishId, Dish> dishes = [];
    readonly Dictionary<HelperId, Helper> helpers = [];
    readonly Dictionary<StepId, PlannedStep> planned = [];

    public PlanInQuestion(Meal meal, Plan plan)
    {
        (Meal, Plan) = (meal, plan);
        foreach (var dish in meal.Dishes)
        {
            dishes.TryAdd(dish.Id, dish);
            foreach (var step in dish.Steps)
            {
                steps.TryAdd(step.Id, step);
            }
        }

        foreach (var helper in meal.Helpers)
        {
            helpers.TryAdd(helper.Id, helper);
        }

        foreach (var step in Given(plan.Steps))
        {
            planned.TryAdd(step.Step, step);
        }

        Works =
        [
            .. from one in planned.Values
               where steps.ContainsKey(one.Step)
               let step = steps[one.Step]
               where one.Option >= -1 && one.Option < step.Options.Length
               select new Work(one, step, step.WayOf(one.Option)),
        ];
        WarmWaits =
        [
            .. from hold in Given(plan.Holds)
               let dish = Dish(hold.Dish)
               where dish is not null && hold.Hold >= 0 && hold.Hold < dish.Holds.Length && dish.Holds[hold.Hold].Oven is not null
               select new WarmWait(hold, dish, dish.Holds[hold.Hold].Oven!),
        ];
        Jobs = [.. StepJobs().Concat(TendJobs())];
        Insides = [.. StepsInside().Concat(DishesInside())];
    }

    public Meal Meal { get; }

    public Plan Plan { get; }

    public ImmutableArray<Work> Works { get; }

    public ImmutableArray<WarmWait> WarmWaits { get; }

    public ImmutableArray<Job> Jobs { get; }

    public ImmutableArray<Inside> Insides { get; }

    public static ImmutableArray<T> Given<T>(ImmutableArray<T> list) => list.IsDefault ? [] : list;

    public Step? Step(StepId id) => steps.GetValueOrDefault(id);

    public Dish? Dish(DishId id) => dishes.GetValueOrDefault(id);

    public Helper? Helper(HelperId id) => helpers.GetValueOrDefault(id);

    public PlannedStep? Planned(StepId id) => planned.GetValueOrDefault(id);

    public Oven? Oven(OvenId? id) => Meal.Kitchen.Ovens.FirstOrDefault(oven => oven.Id == id);

    /// <summary>The planned table time of a dish; null when its course is not planned.</summary>
    public Minute? TableTime(Dish dish) => Given(Plan.Courses).FirstOrDefault(course => course.Course == dish.Course)?.TableTime;

    /// <summary>The end of the last of a dish's steps; null unless all of them are planned.</summary>
    public Minute? LastEnd(Dish dish) =>
        dish.Steps.All(step => planned.ContainsKey(step.Id)) ? dish.Steps.Max(step => planned[step.Id].End) : null;

    IEnumerable<Job> StepJobs() =>
        from work in Works
        where work.Way.Attention == Attention.HandsOn
        from helper in Given(work.Planned.Helpers).Distinct()
        where helpers.ContainsKey(helper)
        select new Job(helper, work.Step, null, work.Planned.Start, work.Planned.End);

    IEnumerable<Job> TendJobs() =>
        from tend in Given(Plan.Tends)
        let step = Step(tend.Step)
        where step is not null && tend.Tend >= 0 && tend.Tend < step.Tends.Length && helpers.ContainsKey(tend.Helper)
        select new Job(tend.Helper, step, step.Tends[tend.Tend], tend.At, tend.End);

    IEnumerable<Inside> StepsInside() =>
        from work in Works
        let use = work.Way.Uses.Oven
        where use is not null && Oven(work.Planned.Oven) is not null
        select new Inside(work.Planned.Oven!.Value, use.Celsius, use.Shelves, work.Planned.Start, work.Planned.End, work.Step.Id, null);

    IEnumerable<Inside> DishesInside() =>
        from wait in WarmWaits
        where Oven(wait.Planned.Oven) is not null
        select new Inside(wait.Planned.Oven!.Value, wait.Warm.Celsius, wait.Warm.Shelves, wait.Planned.From, wait.Planned.To, null, wait.Dish.Id);
}
