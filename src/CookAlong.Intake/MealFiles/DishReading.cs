using System.Collections.Immutable;
using CookAlong.Domain.Meals;
using CookAlong.Intake.Reading;

namespace CookAlong.Intake.MealFiles;

internal static class DishReading
{
    private const int MostDishes = 100;
    private const int MostStepsInDish = 200;
    private const int MostSteps = 1_000;

    public static ImmutableArray<Dish> Dishes(Place root, MealIds ids, ImmutableArray<Guest> guests)
    {
        var entries = root.Objects("dishes", MostDishes)
            .Select(dish => (Dish: dish, Id: ids.Dishes.Give(dish), Steps: dish.Objects("steps", MostStepsInDish)))
            .ToList();
        if (entries.Count == 0)
        {
            root.Note("dishes", "The meal has no dish.", "Add at least one with an id, a course and steps.");
        }

        if (entries.Sum(entry => entry.Steps.Count) is > MostSteps and var count)
        {
            root.Note("dishes", $"The meal has {count} steps; {MostSteps} is the most that can be planned.", "Leave some out, or make two meals of it.");
        }

        // A step may wait for a step of a later dish, so every step's id is known before the first is read.
        var stepIds = entries.Select(entry => entry.Steps.Select(ids.Steps.Give).ToList()).ToList();
        var serves = Math.Max(1, guests.Sum(guest => guest.Portion));
        return [.. entries.Select((entry, index) => Dish(entry.Dish, entry.Id, entry.Steps, stepIds[index], ids, serves))];
    }

    private static Dish Dish(Place dish, string id, IReadOnlyList<Place> entries, List<string> stepIds, MealIds ids, decimal serves)
    {
        var course = dish.Text("course", Place.LongestId);
        if (dish.Member("course") is { } at)
        {
            ids.Courses.Refer(course, at);
        }

        if (entries.Count == 0)
        {
            dish.Note("steps", "The dish has no step.", "Add at least one, if only \"put it on the table\".");
        }

        var steps = entries.Select((step, index) =>
            StepReading.Step(step, stepIds[index], index == 0 ? null : stepIds[index - 1], ids));
        var holds = dish.Objects("holds", 10);
        return new Dish(
            new(id),
            dish.OptionalText("name") ?? id,
            new(course),
            dish.Number("serves", above: 0, most: 10_000, fallback: serves),
            [.. dish.Objects("ingredients", 200).Select(Ingredient)],
            holds.Count == 0 ? [Hold.OnTheTable] : [.. holds.Select(HoldReading.Hold)],
            [.. steps]);
    }

    private static Ingredient Ingredient(Place ingredient) => new(
        ingredient.Text("name"),
        ingredient.Has("quantity") ? ingredient.Number("quantity", above: 0, most: 1_000_000) : null,
        ingredient.OptionalText("unit"),
        ingredient.OptionalText("preparation"),
        [.. ingredient.Texts("contains", 50).Select(allergen => allergen.Text)])
    {
        Alternatives = [.. ingredient.Texts("alternatives", 500, Place.LongestText).Select(one => one.Text)],
        Written = ingredient.OptionalText("written"),
    };
}
