using System.Globalization;
using CookAlong.Domain.Guests;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Intake;
using CookAlong.Intake.MealFiles;
using CookAlong.Web.Features.Meals;

namespace CookAlong.Web.Features.Dishes;

/// <summary>Dishes in sentences.</summary>
public static class DishWords
{
    /// <summary>"Serves 6, 8 steps, 1 h 20 min of hands, begun 3 h before the table".</summary>
    public static string Summary(Dish dish)
    {
        var line = DishTimeline.Of(dish);
        var hands = dish.Steps.Where(step => step.Way.Attention == Attention.HandsOn).Sum(step => step.Way.Minutes.Likely * step.Way.People);
        return string.Create(CultureInfo.InvariantCulture, $"Serves {dish.Serves:0.##}, {MealWords.Many(dish.Steps.Length, "step", "steps")}, {Whole(hands)} of hands, begun {Whole(-line.First)} before the table");
    }

    /// <summary>Never broken between a figure and its unit.</summary>
    static string Whole(int minutes) => DurationWords.Write(minutes).Replace(' ', '\u00a0');

    /// <summary>"egg, milk": what its ingredients are said to contain, and what their names say; null when nothing is known.</summary>
    public static string? Contains(Dish dish) => dish.Ingredients
        .SelectMany(one => one.Contains.Concat(FoodWords.Read(one.Name).Certain.Where(Traits.OfTheUnion.Contains).Select(trait => trait.ToString().ToLowerInvariant())))
        // "peanuts" on the packet, "peanut" by its name.
        .DistinctBy(word => word.TrimEnd('s', 'S'), StringComparer.OrdinalIgnoreCase).Order(StringComparer.OrdinalIgnoreCase).ToArray() is { Length: > 0 } all ? string.Join(", ", all) : null;

    /// <summary>For a portion's label: what is not known to be in it may still be, and nobody reads a packet in the fridge.</summary>
    public static string Label(Dish dish) => Contains(dish) is { } contains ? $"Contains {contains}. Anything else: ask the cook" : "Allergens: ask the cook";

    /// <summary>Every word is in the dish's name, kind, occasion, household or ingredients.</summary>
    public static bool IsFound(KeptDish dish, string words)
    {
        var all = string.Join(' ', [dish.Dish.Name, dish.Kind, dish.Occasion, dish.Household, .. dish.Dish.Ingredients.Select(one => one.Name), .. dish.Dish.Ingredients.SelectMany(one => one.Contains)]);
        return words.Split(' ', StringSplitOptions.RemoveEmptyEntries).All(word => CultureInfo.InvariantCulture.CompareInfo.IndexOf(all, word, CompareOptions.IgnoreCase | CompareOptions.IgnoreNonSpace) >= 0);
    }

    /// <summary>What a step is: "25-30 min, oven 170–190 °C, until 74 °C in the middle, by itself".</summary>
    public static string Of(Step step) => string.Join(", ",
        [DurationWords.Write(step.Way.Minutes), .. Places(step.Way.Uses), .. step.Core is { } core ? [$"until {core.Celsius} °C in the middle"] : Array.Empty<string>(), Hands(step)]);

    public static IEnumerable<string> Places(Uses uses)
    {
        if (uses.Oven is { } oven)
        {
            yield return $"oven {oven.Celsius.Min}–{oven.Celsius.Max} °C{(oven.Shelves > 1 ? $", {oven.Shelves} shelves" : "")}";
        }

        if (uses.Rings > 0)
        {
            yield return MealWords.Many(uses.Rings, "ring", "rings");
        }

        if (uses.Grill is not null)
        {
            yield return "grill";
        }

        foreach (var appliance in uses.Appliances)
        {
            yield return appliance.Value.Replace('-', ' ');
        }
    }

    public static string Hands(Step step) => step.Way.Attention switch
    {
        Attention.HandsOn => (step.Way.People == 1 ? "hands" : $"hands of {step.Way.People}") + (step.ChildSafe ? ", child-safe" : ""),
        Attention.Nearby => "somebody near",
        Attention.Unattended => "by itself",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>"a mixer and a blender", what the dish cannot do without and the kitchen has not; null when it has all.</summary>
    public static string? Lacks(Dish dish, Kitchen kitchen)
    {
        var lacking = dish.Steps.SelectMany(step => step.Way.Uses.Appliances).Except(kitchen.Appliances.Select(one => one.Id)).Select(id => $"a {id.Value.Replace('-', ' ')}").ToArray();
        return lacking.Length == 0 ? null : string.Join(" and ", lacking);
    }

    public static string Of(HoldPlace place) => place switch
    {
        HoldPlace.Table => "on the table",
        HoldPlace.Side => "on the side",
        HoldPlace.Covered => "covered",
        HoldPlace.WarmOven => "in a warm oven",
        HoldPlace.Fridge => "in the fridge",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>What is wrong, where in the cook's words, and what to do: "Step 3, Bake the pie: ...".</summary>
    public static string Of(FileError error, Dish? dish)
    {
        var parts = error.Place.Split('/', StringSplitOptions.RemoveEmptyEntries);
        var place = parts switch
        {
            ["steps", var step, ..] when int.TryParse(step, CultureInfo.InvariantCulture, out var index) =>
                $"Step {index + 1}{(dish is not null && index < dish.Steps.Length ? $", {dish.Steps[index].Text}" : "")}{OtherWay(parts)}: ",
            ["ingredients", var at, ..] when int.TryParse(at, CultureInfo.InvariantCulture, out var index) => $"Ingredient {index + 1}: ",
            ["holds", var at, ..] when int.TryParse(at, CultureInfo.InvariantCulture, out var index) => $"Hold {index + 1}: ",
            _ => "",
        };
        return $"{place}{error.Problem} {error.Remedy}";
    }

    static string OtherWay(string[] parts) => parts is [_, _, "options", var at, ..] && int.TryParse(at, CultureInfo.InvariantCulture, out var option) ? $", other way {option + 1}" : "";

    /// <summary>Null when it was kept.</summary>
    public static string? WhyNotKept(DishEdit edit, Dish? dish = null) => edit switch
    {
        DishEdit.Kept => null,
        DishEdit.Refused refused => string.Join(" ", refused.Errors.Take(3).Select(error => Of(error, dish))) + " Nothing was changed.",
        DishEdit.Outdated => "Somebody else changed this dish a moment ago. It is shown as it is now; please make your change again.",
        _ => throw new System.Diagnostics.UnreachableException(),
    };
}
