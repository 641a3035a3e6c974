using System.Collections.Immutable;
using System.Diagnostics;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Planning;

/// <summary>A meal after a change that may help it.</summary>
public static class ChangedMeal
{
    /// <summary>How long after its last table time a step may still lie, in minutes: as late as any plan may serve.</summary>
    const int MostLate = 360;

    public static Meal Of(Meal meal, PlanChange change) => change switch
    {
        PlanChange.ServeLater later => meal with { Courses = [.. meal.Courses.Select(course => course.Id == later.Course ? course with { TableTime = course.TableTime + later.Minutes } : course)] },
        PlanChange.StartEarlier earlier => meal with { NotBefore = meal.NotBefore - earlier.Minutes },
        PlanChange.AddOven => meal with { Kitchen = meal.Kitchen with { Ovens = meal.Kitchen.Ovens.Add(meal.Kitchen.Ovens[0] with { Id = NewOven(meal), Name = "Second oven" }) } },
        PlanChange.AddRings more => meal with { Kitchen = meal.Kitchen with { Rings = meal.Kitchen.Rings + more.Rings } },
        PlanChange.AddHelper helper => meal with { Helpers = meal.Helpers.Add(new Helper(NewHelper(meal), "One more", [new Window(helper.From, helper.To)], null, IsChild: false)) },
        PlanChange.WaitLonger wait => meal with { Dishes = [.. meal.Dishes.Select(dish => dish.Id == wait.Dish ? dish with { Holds = [.. dish.Holds.Select(hold => hold with { Limit = hold.Limit + wait.Minutes })] } : dish)] },
        PlanChange.MakeAhead ahead => Ahead(meal, ahead),
        PlanChange.LeaveOut dish => meal with { Dishes = [.. meal.Dishes.Where(one => one.Id != dish.Dish)] },
        _ => throw new UnreachableException($"no change {change}"),
    };

    /// <summary>The id that a second oven gets.</summary>
    public static OvenId NewOven(Meal meal) => new(NewName("another-oven", meal.Kitchen.Ovens.Select(oven => oven.Id.Value)));

    /// <summary>The id that one more pair of hands gets.</summary>
    public static HelperId NewHelper(Meal meal) => new(NewName("another-helper", meal.Helpers.Select(helper => helper.Id.Value)));

    /// <summary>The day begins earlier for what is made ahead; everything else keeps to its own first minute.</summary>
    static Meal Ahead(Meal meal, PlanChange.MakeAhead ahead)
    {
        var first = meal.NotBefore ?? throw new ArgumentException("a meal without a first minute is made ahead anyway", nameof(meal));
        var early = DaysAhead.StepsOf(meal, meal.Dishes.Single(dish => dish.Id == ahead.Dish), ahead.To).ToHashSet();
        var theDay = new Window(first, meal.LastTableTime + MostLate);
        Step Placed(Step step) =>
            early.Contains(step.Id) ? step with { Window = new Window(ahead.From, ahead.To) }
            : step.At is not null ? step
            : step with { Window = step.Window is { } window ? window with { From = Minute.Later(window.From, first) } : theDay };
        return meal with { NotBefore = ahead.From, Dishes = [.. meal.Dishes.Select(dish => dish with { Steps = [.. dish.Steps.Select(Placed)] })] };
    }

    static string NewName(string wanted, IEnumerable<string> taken)
    {
        var names = taken.ToHashSet();
        while (names.Contains(wanted))
        {
            wanted += "-2";
        }

        return wanted;
    }
}
