using System.Diagnostics;
using System.Globalization;
using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Intake.PlanFiles;

/// <summary>The one place that says in the cook's words what would help a meal; the plan file and every screen use it.</summary>
public static class ConflictWords
{
    /// <summary>What to change and what it brings, as one sentence.</summary>
    public static string Sentence(Conflict conflict, Meal meal)
    {
        var change = Change(conflict.Change, meal);
        return conflict switch
        {
            { GainMinutes: null } => $"{change}: then there is a plan.",
            { Change: PlanChange.ServeLater } => $"{change}: by then everything is ready.",
            { GainMinutes: 0 } => $"{change}.",
            { GainMinutes: { } gain } => $"{change}: that serves {Minutes(gain)} earlier.",
        };
    }

    /// <summary>The change alone, without a full stop, for a button or a list.</summary>
    public static string Change(PlanChange change, Meal meal) => change switch
    {
        PlanChange.ServeLater later => $"Serve {CourseName(later.Course, meal)} {Minutes(later.Minutes)} later",
        PlanChange.StartEarlier earlier => $"Start {Minutes(earlier.Minutes)} earlier",
        PlanChange.AddOven { During: { } during } => $"Borrow a second oven from {Clock(during.From, meal)} to {Clock(during.To, meal)}",
        PlanChange.AddOven => "Borrow a second oven",
        PlanChange.AddRings { Rings: 1 } => "Find one more ring, a camping cooker perhaps",
        PlanChange.AddRings more => $"Find {more.Rings} more rings",
        PlanChange.AddHelper helper => $"Ask one more adult to help from {Clock(helper.From, meal)} to {Clock(helper.To, meal)}",
        PlanChange.WaitLonger wait => $"Let {DishName(wait.Dish, meal)} wait {Minutes(wait.Minutes)} longer before it is served",
        PlanChange.MakeAhead ahead => $"Make {DishName(ahead.Dish, meal)} the day before, as far as it keeps",
        PlanChange.LeaveOut dish => $"Leave out {DishName(dish.Dish, meal)}",
        _ => throw new UnreachableException($"no words for {change}"),
    };

    private static string CourseName(CourseId id, Meal meal) => meal.Courses.FirstOrDefault(course => course.Id == id)?.Name ?? id.Value;

    private static string DishName(DishId id, Meal meal) => meal.Dishes.FirstOrDefault(dish => dish.Id == id)?.Name ?? id.Value;

    private static string Minutes(int minutes) => minutes switch
    {
        1 => "1 minute",
        < 120 => $"{minutes} minutes",
        _ when minutes % 60 == 0 => $"{minutes / 60} hours",
        _ => $"{minutes / 60} h {minutes % 60} min",
    };

    /// <summary>The day is named only where it is not the first table's.</summary>
    private static string Clock(Minute at, Meal meal)
    {
        var local = LocalTime.Show(at, meal.TimeZone);
        var isSameDay = local.Date == LocalTime.Show(meal.FirstTableTime, meal.TimeZone).Date;
        return local.ToString(isSameDay ? "HH:mm" : "dddd HH:mm", CultureInfo.InvariantCulture);
    }
}
