using System.Collections.Immutable;
using CookAlong.Domain.Guests;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Quantities;

namespace CookAlong.Domain.FoodSafety;

/// <summary>What kinds of food a dish holds, guessed from its words; whoever cooked it knows better.</summary>
public static class LeftoverKinds
{
    static readonly (LeftoverKind Kind, string[] Words)[] InAnyName =
    [
        (LeftoverKind.Rice, ["rice", "risotto", "pilaf", "pilau", "biryani", "paella"]),
        (LeftoverKind.Pasta, ["pasta", "spaghetti", "macaroni", "lasagne", "penne", "noodle", "tagliatelle", "gnocchi", "vermicelli"]),
        (LeftoverKind.Stuffing, ["stuffing"]),
        (LeftoverKind.Ham, ["ham", "gammon"]),
    ];

    /// <summary>Said by the dish's own name alone: a spoon of gravy in a pie does not make it one.</summary>
    static readonly (LeftoverKind Kind, string[] Words)[] InDishName =
    [
        (LeftoverKind.SoupOrStew, ["soup", "stew", "broth", "casserole", "curry", "ragout", "goulash", "hotpot", "chowder"]),
        (LeftoverKind.Gravy, ["gravy"]),
        (LeftoverKind.Salad, ["salad", "slaw", "coleslaw"]),
        (LeftoverKind.EggDish, ["omelette", "frittata", "quiche", "tortilla", "custard", "strata"]),
    ];

    /// <summary>What is made of rice, named after it, and is none: it does not spoil like it.</summary>
    static readonly string[] NoGrain = ["vinegar", "flour", "paper", "wine", "milk"];

    /// <summary>A name's words without those that only say what a vinegar is of.</summary>
    static string[] Grains(string name) => FoodNames.Words(name) is var words ? [.. words.Where((_, at) => at + 1 == words.Length || !NoGrain.Contains(words[at + 1]))] : [];

    static readonly Trait[] Flesh = [Trait.Meat, Trait.Fish, Trait.Crustaceans, Trait.Molluscs];

    /// <returns>One at the least.</returns>
    public static ImmutableSortedSet<LeftoverKind> In(Dish dish)
    {
        var ingredients = dish.Ingredients.SelectMany(one => one.Name.Split([',', ';', '(']).Select(Grains)).ToList();
        var name = FoodNames.Words(dish.Name);
        var kinds = InAnyName.Where(one => ingredients.Append(name).Any(words => words.Intersect(one.Words).Any())).Select(one => one.Kind)
            .Concat(InDishName.Where(one => name.Intersect(one.Words).Any()).Select(one => one.Kind))
            .ToImmutableSortedSet();
        if (dish.Ingredients.Select(one => one.Name).Append(dish.Name).Any(words => FoodWords.Read(words).Certain.Overlaps(Flesh)))
        {
            kinds = kinds.Add(LeftoverKind.MeatPoultryOrFish);
        }

        return kinds.IsEmpty ? [LeftoverKind.Vegetables] : kinds;
    }
}
