using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Planner;

/// <summary>What people were told: the plan that runs, or the one they last saw of a meal that has been changed since.</summary>
/// <param name="Price">Of a step that moves from it.</param>
internal sealed record Told(Meal Meal, Plan Plan, MovePrice Price)
{
    private readonly Dictionary<StepId, PlannedStep> steps = Plan.Steps.ToDictionary(step => step.Step);

    public static Told? Of(PlanRequest request) => request switch
    {
        { So: { } so } => new Told(request.Meal, so.Current, Prices.Moved),
        { Previous: { Status: not PlanStatus.None } plan } => new Told(request.Meal, plan, Prices.MovedAgain),
        _ => null,
    };

    /// <summary>Null for a step that is new.</summary>
    public PlannedStep? Step(StepId step) => steps.GetValueOrDefault(step);

    /// <summary>When the dish's work lay, carried along where the promised table time has been changed since.</summary>
    public Minute Carried(Dish dish, Minute at)
    {
        var promised = Meal.Courses.Single(course => course.Id == dish.Course).TableTime;
        return Plan.Courses.FirstOrDefault(course => course.Course == dish.Course) is { } course ? at + (promised - course.Promised) : at;
    }

    public IReadOnlyList<HelperId> HelpersOf(Job job) => job.Tend is { } tend
        ? [.. Plan.Tends.Where(one => one.Step == job.Step.Id && (one.Tend, one.Turn) == tend).Select(one => one.Helper)]
        : Step(job.Step.Id)?.Helpers ?? [];

    /// <summary>What moving from it costs, beside the plan's own cost.</summary>
    public long PriceOf(Plan plan) => Meal.Dishes.Sum(dish => dish.Steps.Sum(step =>
        Step(step.Id) is { } was ? Price.Of(plan.Step(step.Id).Start - Carried(dish, was.Start)) : 0));
}
