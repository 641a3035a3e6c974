using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Planner;

/// <summary>
/// What the planner minimises, in one place. All prices are in twentieths of the price of one minute's waiting, so that
/// whole numbers can say "three an hour". A plan on time is always preferred to a late one; these prices choose among
/// plans on time, and among late ones where there is none on time.
/// </summary>
internal static class Prices
{
    public const int OfOneWaitingMinute = 20;

    /// <summary>For each minute each course is late.</summary>
    public const int LateMinute = 1000 * OfOneWaitingMinute;

    /// <summary>For each minute from the first hands-on start to the last table time, up to <see cref="KitchenMost"/>.</summary>
    public const int KitchenMinute = OfOneWaitingMinute;

    /// <summary>Work a day ahead is not pressed towards its day's end: who overruns there loses the whole night.</summary>
    public const int KitchenMost = 720;

    /// <summary>For each hands-on minute of each helper within <see cref="RushMinutes"/> of its course's table time.</summary>
    public const int RushMinute = OfOneWaitingMinute;

    public const int RushMinutes = 30;

    /// <summary>For each minute a step starts earlier than <see cref="AheadMinutes"/> before its course's table time, up to <see cref="AheadMost"/>: three an hour.</summary>
    public const int AheadMinute = 1;

    public const int AheadMinutes = 180;

    public const int AheadMost = 540;

    /// <summary>
    /// For each minute that a dish is ready later than <see cref="CushionMinutes"/> before the table, as far as its hold lets
    /// it wait that long for nothing: a plan pushed hard against the table is late with the first thing that takes longer.
    /// </summary>
    public const int CushionMinute = 2 * OfOneWaitingMinute;

    public const int CushionMinutes = PlanRequest.UsualCushion;

    /// <summary>For each minute that what has already begun forces a hold or a gap beyond its limit (only while a meal runs).</summary>
    public const int BeyondLimitMinute = 200 * OfOneWaitingMinute;

    /// <summary>For each minute a step is moved from what people were told (only while a meal runs).</summary>
    public const int MovedMinute = 2 * OfOneWaitingMinute;

    /// <summary>
    /// For each minute a step is moved where a meal that does not run yet is planned again after a change. Nobody acts on it
    /// yet, so half a waiting minute: enough that a small wish moves a few steps, little enough that a clearly better plan wins.
    /// </summary>
    public const int MovedAgainMinute = OfOneWaitingMinute / 2;

    /// <summary>For each person newly given a step that was told before; decides names, not times.</summary>
    public const int ChangedPerson = 5;

    /// <summary>The objective of a finished plan, from the plan alone: what moving from an earlier one cost is not in it.</summary>
    /// <param name="cushion">The minutes asked for in the request.</param>
    public static long Of(Meal meal, Plan plan, int cushion = CushionMinutes)
    {
        long sum = plan.Courses.Sum(course => (long)course.LateMinutes) * LateMinute;
        sum += (long)Math.Min(KitchenMost, KitchenMinutes(meal, plan)) * KitchenMinute;
        foreach (var dish in meal.Dishes)
        {
            var table = plan.TableTime(dish.Course);
            sum += Waiting(dish, plan) * OfOneWaitingMinute;
            sum += (long)MissingCushion(dish, plan, cushion) * CushionMinute;
            foreach (var step in dish.Steps)
            {
                var planned = plan.Step(step.Id);
                var way = step.WayOf(planned.Option);
                sum += Math.Clamp(table - planned.Start - AheadMinutes, 0, AheadMost) * AheadMinute;
                if (way.Attention == Attention.HandsOn)
                {
                    sum += (long)Math.Clamp(planned.End - (table - RushMinutes), 0, planned.Minutes) * way.People * RushMinute;
                }
            }
        }

        return sum;
    }

    /// <summary>What the chosen hold of a dish costs; a wait no hold allows, forced by what has begun, is priced by the same hold.</summary>
    public static long Waiting(Dish dish, Plan plan)
    {
        if (dish.Steps.IsEmpty)
        {
            return 0;
        }

        var (hold, minutes) = Wait(dish, plan);
        return hold.CostOf(minutes);
    }

    /// <summary>The part of a cushion that a hold has room for, in minutes: for nothing, or for who asks for more, as long as the food is good.</summary>
    public static int Cushion(Hold hold, int minutes) => Math.Min(minutes, minutes > CushionMinutes ? hold.GoodFor : hold.BestWithin);

    private static int MissingCushion(Dish dish, Plan plan, int cushion)
    {
        if (dish.Steps.IsEmpty)
        {
            return 0;
        }

        var (hold, minutes) = Wait(dish, plan);
        return Math.Max(0, Cushion(hold, cushion) - minutes);
    }

    private static (Hold Hold, int Minutes) Wait(Dish dish, Plan plan)
    {
        var held = plan.Holds.Single(hold => hold.Dish == dish.Id);
        return (dish.Holds[held.Hold], held.To - dish.Steps.Max(step => plan.Step(step.Id).End));
    }

    public static int KitchenMinutes(Meal meal, Plan plan)
    {
        var starts = meal.Steps
            .Select(step => (Planned: plan.Step(step.Id), Step: step))
            .Where(one => one.Step.WayOf(one.Planned.Option).Attention == Attention.HandsOn)
            .Select(one => one.Planned.Start)
            .ToList();
        return starts.Count == 0 ? 0 : plan.Courses.Max(course => course.TableTime) - starts.Min();
    }
}
