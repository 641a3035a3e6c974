using CookAlong.Domain.Guests;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Quantities;
using CookAlong.Web.Features.Dishes;

namespace CookAlong.Web.Features.Leftovers;

/// <summary>A dish of the library, and the words for its main ingredients.</summary>
public sealed record DishToMake(KeptDish Dish, IReadOnlySet<string> Mains);

/// <summary>Which dishes of the library can be made of what is left: those with one of its main ingredients.</summary>
public static class UsesLeftovers
{
    const int Most = 5;

    /// <summary>Every ingredient is looked up for it: once for a page.</summary>
    public static IReadOnlyList<DishToMake> Read(IEnumerable<KeptDish> library) =>
        [.. library.Where(one => one.Row.DeletedAt is null).Select(one => new DishToMake(one, Mains(one.Dish)))];

    public static IEnumerable<KeptDish> Of(Dish left, IEnumerable<DishToMake> library)
    {
        var wanted = Mains(left);
        return library
            .Where(one => one.Dish.Dish.Name != left.Name && one.Mains.Overlaps(wanted))
            .Select(one => one.Dish)
            .Take(Most);
    }

    /// <summary>"goose", "potato": the words for what fills a plate; where nothing does, what its first ingredient is.</summary>
    static HashSet<string> Mains(Dish dish)
    {
        var mains = dish.Ingredients.SelectMany(one => FoodNames.Words(one.Name)).Where(word => FoodWords.Read(word).IsMain).ToHashSet(StringComparer.Ordinal);
        if (mains.Count == 0 && dish.Ingredients is [var first, ..] && FoodNames.Words(first.Name.Split([',', '('], 2)[0]) is [.., var head])
        {
            mains.Add(head);
        }

        return mains;
    }
}
