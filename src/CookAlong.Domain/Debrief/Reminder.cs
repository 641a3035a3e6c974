using System.Collections.Immutable;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Domain.Debrief;

/// <summary>Something to see to before the day of the meal.</summary>
/// <param name="At">When.</param>
/// <param name="Order">The ingredient to be ordered; null where <paramref name="Step"/> is to be begun.</param>
public sealed record Reminder(Minute At, Dish Dish, Ingredient? Order, Step? Step)
{
    /// <summary>Days before the first table that a butcher or fishmonger wants to know of it; the first words that are in a name count. Common practice, no source.</summary>
    static readonly (int Days, decimal LeastGrams, string[] Words)[] Orders =
    [
        (14, 1000, ["goose", "capon", "venison", "wild boar", "hare", "suckling", "pheasant", "guinea fowl", "duck"]),
        (3, 800, ["salmon", "trout", "turbot", "carp", "pike", "sea bass", "cod", "monkfish", "lobster", "crab", "oysters", "mussels"]),
        (7, 1500, ["beef", "veal", "pork", "lamb", "mutton", "ham", "gammon", "brisket"]),
    ];

    /// <summary>Hour of the wall clock at which shops answer the telephone.</summary>
    const int ShopsAreOpen = 10;

    /// <summary>In order of time: what is to be ordered, and what hands begin before the day of the first table.</summary>
    /// <param name="plan">Its times count where there is one; else the latest at which each step could begin.</param>
    public static ImmutableArray<Reminder> Of(Meal meal, Plan? plan)
    {
        var day = LocalTime.Show(meal.FirstTableTime, meal.TimeZone).Date;
        var midnight = LocalTime.Resolve(day, meal.TimeZone) ?? meal.FirstTableTime;
        var orders = from dish in meal.Dishes
                     from one in dish.Ingredients
                     where DaysFor(one) is not null
                     let at = LocalTime.Resolve(day.AddDays(-DaysFor(one)!.Value).AddHours(ShopsAreOpen), meal.TimeZone)
                     where at is not null
                     select new Reminder(at.Value, dish, one, null);
        var latest = plan is null ? Latest(meal) : plan.Steps.ToDictionary(step => step.Step, step => step.Start);
        var ahead = from dish in meal.Dishes
                    from step in dish.Steps
                    where step.Way.Attention == Attention.HandsOn && latest.TryGetValue(step.Id, out var start) && start < midnight
                    select new Reminder(latest[step.Id], dish, null, step);
        return [.. orders.Concat(ahead).OrderBy(one => one.At)];
    }

    static int? DaysFor(Ingredient one) => Grams(one) is { } grams
        ? Orders.Where(order => grams >= order.LeastGrams && order.Words.Any(word => $" {one.Name.ToLowerInvariant().Replace(',', ' ')} ".Contains($" {word} ", StringComparison.Ordinal)))
            .Select(order => (int?)order.Days).FirstOrDefault()
        : null;

    static decimal? Grams(Ingredient one) => (one.Quantity, one.Unit) switch
    {
        ({ } kilograms, "kg") => kilograms * 1000,
        ({ } grams, "g") => grams,
        _ => null,
    };

    /// <summary>The latest start of each step by its likely minutes and least gaps, or the one that it was given.</summary>
    static Dictionary<StepId, Minute> Latest(Meal meal)
    {
        var latest = new Dictionary<StepId, Minute>();
        var followers = meal.Steps.SelectMany(step => step.After.Select(after => (Before: after.Step, After: step, after.Least))).ToLookup(link => link.Before);
        Minute Of(Step step)
        {
            if (latest.TryGetValue(step.Id, out var known))
            {
                return known;
            }

            var end = followers[step.Id].Select(link => Of(link.After) - link.Least).Append(meal.CourseOf(meal.DishOf(step.Id)).TableTime).Aggregate(Minute.Earlier);
            return latest[step.Id] = step.At ?? end - step.Way.Minutes.Likely;
        }

        foreach (var step in meal.Steps)
        {
            Of(step);
        }

        return latest;
    }
}
