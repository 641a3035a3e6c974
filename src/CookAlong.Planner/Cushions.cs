using CookAlong.Domain;
using CookAlong.Domain.Confidence;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Planner;

/// <summary>
/// Looks for the smallest cushion with which a plan is as sure as somebody wishes. Buffers stand where every delay of a dish ends
/// up, before the table, as long as the food keeps: minutes kept in reserve behind each step would mostly be spent in vain.
/// </summary>
public static class Cushions
{
    /// <summary>How sure a plan should be where nobody says.</summary>
    public const double UsualWish = 0.9;

    /// <summary>Days cooked to say how sure a plan is.</summary>
    public const int Days = 10_000;

    /// <summary>Tried in turn; more than the last keeps no food that stands well for an hour. Minutes.</summary>
    private static readonly int[] Sizes = [10, 15, 20, 30, 45];

    /// <summary>
    /// A plan that is on time as surely as wished, or the surest of those tried when none is. Each cushion tried takes about
    /// the time of one planning. A plan that is late without any buffer gets none.
    /// </summary>
    /// <param name="plain">The plan without wishes, made for <paramref name="request"/>.</param>
    /// <param name="wish">Chance of serving within 10 minutes of every promise, 0 to 1.</param>
    public static Buffered Reach(IMealPlanner planner, PlanRequest request, Plan plain, double wish, IProgress<PlanProgress>? progress = null, CancellationToken stop = default)
    {
        var first = Rehearsed(request.Meal, plain);
        var surest = first;
        foreach (var size in Sizes.Where(size => size > first.Cost.Cushion))
        {
            if (surest is not { Status: not PlanStatus.None, Cost.LateMinutes: 0 } || surest.Confidence!.OnTimeWithin10 >= wish || stop.IsCancellationRequested)
            {
                break;
            }

            var plan = Rehearsed(request.Meal, planner.Plan(request with { Cushion = size }, progress, stop));
            surest = plan is { Status: not PlanStatus.None, Cost.LateMinutes: 0 } && plan.Confidence!.OnTimeWithin10 > surest.Confidence.OnTimeWithin10 ? plan : surest;
        }

        return new Buffered(request.Meal, first, surest);
    }

    /// <summary>With how sure it is, where nobody has said yet.</summary>
    public static Plan Rehearsed(Meal meal, Plan plan) =>
        plan.Status == PlanStatus.None || plan.Confidence is not null ? plan : plan with { Confidence = Simulation.Run(meal, plan, Days, seed: 1) };
}

/// <summary>A surer plan beside the plain one, and what it costs. The same plan twice when no buffer was needed or none helped.</summary>
public sealed record Buffered(Meal Meal, Plan Plain, Plan Plan)
{
    public bool IsSurer => !ReferenceEquals(Plain, Plan);

    /// <summary>Minutes the kitchen is at work for longer, from the first hands-on start on the day of the table; below 0 when shorter.</summary>
    public int KitchenMinutes => FirstOfDay(Plain) - FirstOfDay(Plan);

    /// <summary>Minutes that all dishes together wait longer for the table.</summary>
    public int WaitingMinutes => Meal.Dishes.Sum(dish => WaitsLonger(dish.Id));

    /// <summary>The dish whose wait grows most, with the minutes; null when none waits longer.</summary>
    public (Dish Dish, int Minutes)? LongestWait => Meal.Dishes.Select(dish => (dish, WaitsLonger(dish.Id)))
        .Where(one => one.Item2 > 0).OrderByDescending(one => one.Item2).Select(one => ((Dish, int)?)one).FirstOrDefault();

    private int WaitsLonger(DishId dish) => WaitOf(Plan, dish) - WaitOf(Plain, dish);

    private int WaitOf(Plan plan, DishId id)
    {
        var dish = Meal.Dishes.Single(one => one.Id == id);
        return dish.Steps.IsEmpty ? 0 : plan.TableTime(dish.Course) - dish.Steps.Max(step => plan.Step(step.Id).End);
    }

    /// <summary>Work of another day is another story: what counts is when the cook must be up.</summary>
    private int FirstOfDay(Plan plan)
    {
        var morning = plan.Courses.Min(course => course.TableTime) - PlanMeasures.LongestDay;
        var starts = plan.Steps.Where(step => step.Start >= morning && Meal.Step(step.Step).WayOf(step.Option).Attention == Attention.HandsOn).ToList();
        return starts.Count == 0 ? 0 : starts.Min(step => step.Start) - morning;
    }
}
