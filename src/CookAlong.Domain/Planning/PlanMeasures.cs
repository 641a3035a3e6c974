using System.Collections.Immutable;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Planning;

/// <summary>What a plan asks of its kitchen, in minutes and counts: what its price is made of, and what two plans of a meal are compared by.</summary>
public sealed class PlanMeasures(Meal meal, Plan plan)
{
    /// <summary>How long before the last table a kitchen day may begin; what is done before that is done ahead. Minutes.</summary>
    public const int LongestDay = 720;

    readonly ImmutableArray<(Dish Dish, PlannedStep Planned, Way Way)> steps =
        [.. meal.Dishes.SelectMany(dish => dish.Steps.Select(step => (dish, plan.Step(step.Id)))).Select(one => (one.dish, one.Item2, meal.Step(one.Item2.Step).WayOf(one.Item2.Option)))];

    Minute LastTable => plan.Courses.Max(course => course.TableTime);

    IEnumerable<(Dish Dish, PlannedStep Planned, Way Way)> Work => steps.Where(one => one.Way.Attention == Attention.HandsOn);

    /// <summary>Minutes from the first hands-on start, work done ahead included, to the last table time.</summary>
    public int KitchenMinutes => Work.Select(one => LastTable - one.Planned.Start).DefaultIfEmpty(0).Max();

    /// <summary>Minutes from the first hands-on start of the table's day to the last table time; 0 to <see cref="LongestDay"/>.</summary>
    public int KitchenDay => Work.Select(one => LastTable - one.Planned.Start).Where(minutes => minutes <= LongestDay).DefaultIfEmpty(0).Max();

    /// <summary>How many steps are done before the table's day.</summary>
    public int DoneAhead => steps.Count(one => LastTable - one.Planned.Start > LongestDay);

    /// <summary>What the holds cost: minutes of waiting beyond what the food likes, the worse ones counted more.</summary>
    public long Waiting => meal.Dishes.Sum(dish => WaitingOf(dish, plan));

    /// <summary>How often a dial is turned from one temperature to another; on and off not counted.</summary>
    public int DialTurns => plan.Ovens.Sum(oven => Turns([.. oven.Dial.Select(dial => dial.Celsius).Where(celsius => celsius > 0)]));

    /// <summary>As often as that must be, at the least, for what is in the ovens and when.</summary>
    public int DialChanges => plan.Ovens.Sum(oven => Planning.DialChanges.Of(InOven(oven.Oven)).Count);

    /// <summary>Minutes of hands, for a course's own dishes, within the last <paramref name="minutes"/> before its table.</summary>
    public int HandsOn(CourseId course, int minutes)
    {
        var from = plan.TableTime(course) - minutes;
        return Work.Where(one => one.Dish.Course == course).Sum(one => Math.Clamp(one.Planned.End - from, 0, one.Planned.Minutes) * one.Way.People);
    }

    /// <summary>Whose hands are at work for how long, tends included; in the meal's order.</summary>
    public ImmutableArray<(Helper Helper, int Minutes)> Shares =>
    [
        .. meal.Helpers.Select(helper => (helper,
            Work.Where(one => one.Planned.Helpers.Contains(helper.Id)).Sum(one => one.Planned.Minutes)
            + plan.Tends.Where(tend => tend.Helper == helper.Id).Sum(tend => tend.Minutes))),
    ];

    static int Turns(int[] celsius) => celsius.Zip(celsius.Skip(1)).Count(pair => pair.First != pair.Second);

    IEnumerable<(int Start, int End, CelsiusRange Celsius)> InOven(OvenId oven)
    {
        int At(Minute at) => at - plan.NotBefore;
        return
        [
            .. steps.Where(one => one.Planned.Oven == oven).Select(one => (At(one.Planned.Start), At(one.Planned.End), one.Way.Uses.Oven!.Celsius)),
            .. plan.Holds.Where(hold => hold.Oven == oven)
                .Select(hold => (At(hold.From), At(hold.To), meal.Dishes.Single(dish => dish.Id == hold.Dish).Holds[hold.Hold].Oven!.Celsius)),
        ];
    }

    /// <summary>What the chosen hold of a dish costs; a wait no hold allows, forced by what has begun, is priced by the same hold.</summary>
    public static long WaitingOf(Dish dish, Plan plan)
    {
        if (dish.Steps.IsEmpty)
        {
            return 0;
        }

        var (hold, minutes) = Wait(dish, plan);
        return hold.CostOf(minutes);
    }

    /// <summary>How a dish waits for its table, and for how many minutes. Only for a dish with steps.</summary>
    public static (Hold Hold, int Minutes) Wait(Dish dish, Plan plan)
    {
        var held = plan.Holds.Single(hold => hold.Dish == dish.Id);
        return (dish.Holds[held.Hold], held.To - dish.Steps.Max(step => plan.Step(step.Id).End));
    }
}
