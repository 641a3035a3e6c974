using CookAlong.Domain.Meals;
using CookAlong.Domain.Quantities;

namespace CookAlong.Domain.Guests;

/// <summary>Pans and trays that two dishes share, as far as a step's own words say so: "around the goose, in its tray".</summary>
static class Vessels
{
    static readonly string[] vessels = ["tray", "tin", "pan", "fat", "oil", "dripping", "wok", "griddle", "skillet", "board", "fryer"];

    /// <summary>How a dish is made says nothing of which one is meant.</summary>
    static readonly string[] common = ["roast", "roasted", "baked", "bake", "fried", "boiled", "with", "and", "sauce", "gravy", "salad", "warm", "cold", "winter", "summer", "little", "sweet"];

    /// <summary>Each pair both ways: either may bring what the other is free of.</summary>
    public static IEnumerable<(MeetingPlace Place, Dish First, Dish Second)> Shared(Meal meal) =>
        from dish in meal.Dishes
        from other in meal.Dishes
        where dish.Id != other.Id && Sentences(dish).Any(sentence => Says(sentence, dish, other))
        from pair in new[] { (MeetingPlace.Vessel, dish, other), (MeetingPlace.Vessel, other, dish) }
        select pair;

    static IEnumerable<string> Sentences(Dish dish) =>
        from step in dish.Steps
        from text in new[] { step.Text, step.How ?? "" }
        from sentence in text.Split(['.', ';', '!'], StringSplitOptions.RemoveEmptyEntries)
        select sentence;

    static bool Says(string sentence, Dish dish, Dish other)
    {
        var words = FoodNames.Words(sentence);
        return words.Intersect(vessels).Any() && Names(other).Except(Names(dish)).Intersect(words).Any();
    }

    static IEnumerable<string> Names(Dish dish) => FoodNames.Words(FoodNames.Head(dish.Name)).Where(word => word.Length > 3).Except(common);
}
