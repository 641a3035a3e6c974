using System.Collections.Immutable;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Quantities;

namespace CookAlong.Domain.Guests;

public enum CanEat
{
    /// <summary>Nothing was found in what the dish says of itself. Labels decide.</summary>
    NothingFound,

    /// <summary>It may hold what the guest avoids, or too little is known: ask, and read the label.</summary>
    Ask,

    /// <summary>It holds what the guest avoids.</summary>
    No,
}

/// <summary>One reason for an answer.</summary>
/// <param name="Why">The guest's own word: "milk", "vegetarian".</param>
/// <param name="Ingredient">Null when the dish lists none.</param>
/// <param name="IsCertain">Otherwise it is to be asked about.</param>
/// <param name="IsUnknown">Nothing is known of the ingredient, the diet or the dish.</param>
public sealed record Found(string Why, Ingredient? Ingredient, bool IsCertain, bool IsUnknown);

/// <summary>A dish for a guest.</summary>
public sealed record DishForGuest(Guest Guest, Dish Dish, CanEat Answer, ImmutableArray<Found> Reasons);

/// <summary>
/// Which guest can eat which dish, from the names of its ingredients and what they are said to contain. It errs on the side
/// of asking: what is not known is never fine.
/// </summary>
public static class WhoCanEat
{
    /// <summary>Grams a portion of what fills a plate that make a dish a main one; common practice, no source.</summary>
    const decimal MainGrams = 40;

    public static DishForGuest Judge(Guest guest, Dish dish)
    {
        var needs = Needs.Of(guest);
        var reasons = ImmutableArray.CreateBuilder<Found>();
        if (needs.IsNone)
        {
            return new(guest, dish, CanEat.NothingFound, []);
        }

        reasons.AddRange(needs.Unknown.Select(diet => new Found(diet, null, IsCertain: false, IsUnknown: true)));
        if (dish.Ingredients.IsEmpty)
        {
            reasons.Add(new Found(FirstWord(needs), null, IsCertain: false, IsUnknown: true));
        }

        foreach (var ingredient in dish.Ingredients)
        {
            reasons.AddRange(Reasons(needs, ingredient));
        }

        var found = reasons.OrderByDescending(one => one.IsCertain).DistinctBy(one => (one.Why, one.Ingredient?.Name)).ToImmutableArray();
        return new(guest, dish, found.Any(one => one.IsCertain) ? CanEat.No : found.IsEmpty ? CanEat.NothingFound : CanEat.Ask, found);
    }

    /// <summary>Guests for whom every main dish of a course holds what they avoid; false = all but some that must be asked about.</summary>
    public static IEnumerable<(Guest Guest, Course Course, bool IsCertain)> WithoutMainDish(Meal meal)
    {
        foreach (var course in meal.Courses)
        {
            var mains = meal.Dishes.Where(dish => dish.Course == course.Id && IsMain(dish)).ToList();
            foreach (var guest in mains.Count == 0 ? [] : meal.Guests)
            {
                var best = mains.Min(dish => Judge(guest, dish).Answer);
                if (best != CanEat.NothingFound)
                {
                    yield return (guest, course, best == CanEat.No);
                }
            }
        }
    }

    /// <summary>It has enough of what fills a plate to be more than a side.</summary>
    public static bool IsMain(Dish dish) => dish.Ingredients
        .Where(ingredient => FoodWords.Read(ingredient.Name).IsMain)
        .Sum(ingredient => ingredient.Quantity is { } quantity ? Weighing.Grams(new Amount(quantity, Units.Of(ingredient.Unit)), ingredient.Name) ?? MainGrams * dish.Serves : 0) >= MainGrams * dish.Serves;

    static IEnumerable<Found> Reasons(Needs needs, Ingredient ingredient)
    {
        var read = FoodWords.Read(ingredient.Name);
        var said = ingredient.Contains.SelectMany(word => Needs.TraitsOf(word)).ToHashSet();
        foreach (var (trait, why) in needs.Never)
        {
            if (said.Contains(trait) || read.Certain.Contains(trait))
            {
                yield return new Found(why, ingredient, IsCertain: true, IsUnknown: false);
            }
            else if (read.Ask.Contains(trait) || (trait == Trait.Wheat && said.Contains(Trait.Gluten)))
            {
                yield return new Found(why, ingredient, IsCertain: false, IsUnknown: false);
            }
        }

        foreach (var (trait, why) in needs.Ask)
        {
            if (said.Contains(trait) || read.Certain.Contains(trait) || read.Ask.Contains(trait))
            {
                yield return new Found(why, ingredient, IsCertain: false, IsUnknown: false);
            }
        }

        foreach (var word in needs.Words)
        {
            if (ingredient.Contains.Contains(word, StringComparer.OrdinalIgnoreCase) || $" {FoodNames.Key(ingredient.Name)} ".Contains($" {FoodNames.Key(word)} ", StringComparison.Ordinal))
            {
                yield return new Found(word, ingredient, IsCertain: true, IsUnknown: false);
            }
        }

        if (!read.IsKnown)
        {
            yield return new Found(FirstWord(needs), ingredient, IsCertain: false, IsUnknown: true);
        }
    }

    static string FirstWord(Needs needs) => needs.Never.Values.Concat(needs.Ask.Values).Concat(needs.Words).Concat(needs.Unknown).First();
}
