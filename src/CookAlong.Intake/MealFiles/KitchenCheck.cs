using System.Globalization;
using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Intake.Reading;

namespace CookAlong.Intake.MealFiles;

/// <summary>What this kitchen can never do, at whatever hour. A step with options needs one way that is possible.</summary>
internal static class KitchenCheck
{
    public static void Check(Place root, Meal meal, MealIds ids)
    {
        foreach (var step in meal.Steps)
        {
            if (step.Ways.All(one => Lack(one.Way.Uses, meal.Kitchen) is not null))
            {
                var (problem, remedy) = Lack(step.Ways.First().Way.Uses, meal.Kitchen)!.Value;
                (root with { Pointer = ids.PlaceOf(step) }).Note("uses", problem, step.Options.IsEmpty ? remedy : $"{remedy} None of its options is possible either.");
            }
        }

        foreach (var dish in meal.Dishes.Where(dish => dish.Holds.All(hold => Lack(hold, meal.Kitchen) is not null)))
        {
            var (problem, remedy) = Lack(dish.Holds[0], meal.Kitchen)!.Value;
            (root with { Pointer = ids.PlaceOf(dish) }).Note("holds", problem, remedy);
        }
    }

    private static (string Problem, string Remedy)? Lack(Hold hold, Kitchen kitchen) =>
        hold.Oven is { } warm ? Lack(new OvenUse(null, warm.Shelves, warm.Celsius), kitchen) : null;

    private static (string Problem, string Remedy)? Lack(Uses uses, Kitchen kitchen)
    {
        if (uses.Rings > kitchen.Rings)
        {
            return ($"The step takes {Count(uses.Rings, "ring")}, but the kitchen has {kitchen.Rings}.", "Use fewer rings, or correct the kitchen.");
        }

        foreach (var kind in uses.Appliances.GroupBy(id => id))
        {
            var count = kitchen.Appliances.Where(one => one.Id == kind.Key).Sum(one => one.Count);
            if (kind.Count() > count && count > 0)
            {
                return ($"The step takes {kind.Count()} of \"{kind.Key}\", but the kitchen has {count}.", "Use fewer, or correct the kitchen.");
            }
        }

        if (uses.Grill is { Grill: null } && kitchen.Grills.IsEmpty)
        {
            return ("The step uses a grill, but the kitchen has none.", "Do it another way, or add the grill to the kitchen.");
        }

        return uses.Oven is { } oven ? Lack(oven, kitchen) ?? LackApart(oven, uses.Grill, kitchen) : null;
    }

    private static (string Problem, string Remedy)? Lack(OvenUse use, Kitchen kitchen)
    {
        var asked = kitchen.Ovens.Where(oven => use.Oven is null || oven.Id == use.Oven).ToList();
        if (asked.Count == 0)
        {
            // An oven asked for by a wrong id is noted where it is named.
            return use.Oven is null ? ("This takes an oven, but the kitchen has none.", "Do it another way, or add the oven to the kitchen.") : null;
        }

        if (asked.All(oven => oven.Shelves < use.Shelves))
        {
            return ($"This takes {Count(use.Shelves, "oven shelf", "oven shelves")}, but there are {asked.Max(oven => oven.Shelves)}.", "Spread it over several bakes, or correct the oven.");
        }

        if (!asked.Any(oven => Reaches(oven, use)))
        {
            var ovens = string.Join("; ", asked.Select(oven => string.Create(CultureInfo.InvariantCulture, $"\"{Place.Short(oven.Name)}\" goes from {oven.Min} to {oven.Max} °C")));
            return ($"This needs {use.Celsius.Min} to {use.Celsius.Max} °C, which no oven here reaches: {ovens}.", "Choose a range an oven reaches, or correct the oven.");
        }

        return null;
    }

    private static (string Problem, string Remedy)? LackApart(OvenUse use, GrillUse? grill, Kitchen kitchen) =>
        grill is null
        || kitchen.Grills.Any(one => (grill.Grill is null || one.Id == grill.Grill)
            && kitchen.Ovens.Any(oven => oven.Id != one.InsideOven && (use.Oven is null || oven.Id == use.Oven) && Reaches(oven, use)))
            ? null
            : ("The step uses an oven and the grill inside it at once.", "Split it into two steps.");

    private static bool Reaches(Oven oven, OvenUse use) =>
        oven.Shelves >= use.Shelves && oven.Min <= use.Celsius.Max && use.Celsius.Min <= oven.Max;

    private static string Count(int number, string one, string? more = null) => number == 1 ? $"1 {one}" : $"{number} {more ?? one + "s"}";
}
