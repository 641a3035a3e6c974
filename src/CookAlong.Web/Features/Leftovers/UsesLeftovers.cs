using CookAlong.Domain.Guests;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Quantities;
using CookAlong.Web.Features.Dishes;

namespace CookAlong.Web.Features.Leftovers;

/// <summary>Which dishes of the library can be made of what is left: those with one of its main ingredients.</summary>
public static class UsesLeftovers
{
    const int Most = 5;

    public static IEnumerable<KeptDish> Of(Dish left, IEnumerable<KeptDish> library)
    {
        var wanted = Mains(left);
        return library
            .Where(one => one.Row.DeletedAt is null && one.Dish.Name != left.Name && Mains(one.Dish).Overlaps(wanted))
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
