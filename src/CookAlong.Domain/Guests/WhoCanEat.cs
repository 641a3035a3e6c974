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

    /// <summary>What things become under hands: "ground to a paste".</summary>
    static readonly string[] shapes = ["paste", "powder", "mix", "mixture", "sauce", "dough", "batter"];

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
        var holds = new[] { FoodWords.Read(ingredient.Name) }.Concat(ingredient.Contains.Select(Said)).ToList();
        var instead = ingredient.Alternatives.Select(FoodWords.Read).ToList();
        var certain = holds.SelectMany(read => read.Certain).ToHashSet();
        var ask = holds.SelectMany(read => read.Ask).Concat(instead.Append(Prepared(ingredient.Preparation)).SelectMany(read => read.Certain.Union(read.Ask))).ToHashSet();
        foreach (var (trait, why) in needs.Never)
        {
            if (certain.Contains(trait))
            {
                yield return new Found(why, ingredient, IsCertain: true, IsUnknown: false);
            }
            else if (MayBe(trait))
            {
                yield return new Found(why, ingredient, IsCertain: false, IsUnknown: false);
            }
        }

        foreach (var (trait, why) in needs.Ask)
        {
            if (certain.Contains(trait) || MayBe(trait))
            {
                yield return new Found(why, ingredient, IsCertain: false, IsUnknown: false);
            }
        }

        foreach (var word in needs.Words)
        {
            if (ingredient.Contains.Append(ingredient.Name).Any(name => Names(name, word)))
            {
                yield return new Found(word, ingredient, IsCertain: true, IsUnknown: false);
            }
            else if (ingredient.Alternatives.Append(ingredient.Preparation ?? "").Any(name => Names(name, word)))
            {
                yield return new Found(word, ingredient, IsCertain: false, IsUnknown: false);
            }
        }

        if (holds.Concat(instead).Any(read => !read.IsKnown))
        {
            yield return new Found(FirstWord(needs), ingredient, IsCertain: false, IsUnknown: true);
        }

        // Which cereal is seldom said where there is gluten.
        bool MayBe(Trait trait) => ask.Contains(trait) || (trait == Trait.Wheat && (ask.Contains(Trait.Gluten) || certain.Contains(Trait.Gluten)));
    }

    /// <summary>A word of "contains": a kind ("crustaceans") or a food ("almonds", "wheat", which is a cereal with gluten).</summary>
    static FoodRead Said(string word) => FoodWords.Read(word) is var read && Needs.TraitsOf(word) is { IsEmpty: false } kinds
        ? read with { Certain = read.Certain.Union(kinds), IsKnown = true }
        : read;

    /// <summary>How it comes: "dusted with flour", "in brine". What it is for has a line of its own, and what becomes of it says nothing of what it holds.</summary>
    static FoodRead Prepared(string? preparation) => FoodWords.Read(string.Join(", ", (preparation ?? "").Split([',', ';', '(']).Select(part =>
    {
        var words = FoodNames.Words(part);
        return string.Join(' ', words.TakeWhile((_, at) => words.AsSpan(at) is not ["for", "the", ..]).Where((word, at) => at == 0 || words[at - 1] is not ("a" or "the") || !shapes.Contains(word)));
    })));

    static bool Names(string name, string word) => $" {FoodNames.Key(name)} ".Contains($" {FoodNames.Key(word)} ", StringComparison.Ordinal);

    static string FirstWord(Needs needs) => needs.Never.Values.Concat(needs.Ask.Values).Concat(needs.Words).Concat(needs.Unknown).First();
}
