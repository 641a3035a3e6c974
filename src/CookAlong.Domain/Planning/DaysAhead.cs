using System.Collections.Immutable;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Planning;

/// <summary>What of a dish may be done the evening before.</summary>
public static class DaysAhead
{
    /// <summary>Hours of the wall clock in which somebody cooks ahead after their day's work (common practice, no source).</summary>
    static readonly (int From, int To) Evening = (17, 21);

    /// <summary>
    /// Steps that may be finished by <paramref name="evening"/>'s end and keep until the day: every gap after them reaches that far,
    /// or, where the whole dish is made ahead, one of its holds does. In order; empty where the food does not allow it.
    /// </summary>
    /// <param name="evening">The evening's last minute.</param>
    public static ImmutableArray<StepId> StepsOf(Meal meal, Dish dish, Minute evening)
    {
        if (meal.NotBefore is not { } day || evening > day)
        {
            return [];
        }

        var untilTable = meal.CourseOf(dish).TableTime - evening;
        var (ahead, keeps) = (dish.Steps.Select(step => step.Id).ToHashSet(), dish.Holds.Any(hold => hold.Limit >= untilTable));
        bool MustStay(Step step) =>
            step.At is not null || step.Window is not null
            || step.After.Any(after => !ahead.Contains(after.Step))
            || meal.Steps.Any(next => !ahead.Contains(next.Id) && next.After.Any(after => after.Step == step.Id && after.Most < day - evening))
            || (!keeps && !meal.Steps.Any(next => next.After.Any(after => after.Step == step.Id)));
        while (dish.Steps.FirstOrDefault(step => ahead.Contains(step.Id) && MustStay(step)) is { } stays)
        {
            ahead.Remove(stays.Id);
        }

        return [.. dish.Steps.Where(step => ahead.Contains(step.Id)).Select(step => step.Id)];
    }

    /// <summary>The evening before the meal's first table; null where it is past, or belongs to the day's own time already.</summary>
    public static Window? EveningBefore(Meal meal, Minute? now)
    {
        var before = LocalTime.Show(meal.FirstTableTime, meal.TimeZone).Date.AddDays(-1);
        return LocalTime.Resolve(before.AddHours(Evening.From), meal.TimeZone) is { } from
            && LocalTime.Resolve(before.AddHours(Evening.To), meal.TimeZone) is { } to
            && meal.NotBefore >= to
            && !(now > from)
            ? new Window(from, to)
            : null;
    }
}
