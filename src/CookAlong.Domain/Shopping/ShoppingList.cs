using System.Collections.Immutable;
using CookAlong.Domain.Guests;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Quantities;

namespace CookAlong.Domain.Shopping;

/// <summary>For how many portions a dish is bought.</summary>
/// <param name="IsChosen">Somebody said so; otherwise it follows from who eats of it.</param>
public sealed record DishPortions(Dish Dish, decimal Portions, bool IsChosen)
{
    public decimal Factor => Scaling.Factor(Dish, Portions);
}

/// <summary>What a meal takes, all its dishes together, for its guests.</summary>
public sealed record ShoppingList(ImmutableArray<ShoppingLine> Lines, ImmutableArray<DishPortions> Dishes)
{
    /// <summary>A recipe is made as it is written while it comes this near; common practice, no source.</summary>
    const decimal NearEnough = 0.15m;

    /// <param name="chosen">Portions that somebody set.</param>
    /// <param name="spoons">The household's.</param>
    public static ShoppingList Of(Meal meal, IReadOnlyDictionary<DishId, decimal> chosen, SpoonSizes spoons)
    {
        var wanted = Wanted(meal);
        var dishes = meal.Dishes.Select(dish => chosen.TryGetValue(dish.Id, out var portions) ? new DishPortions(dish, portions, true) : new DishPortions(dish, wanted[dish.Id], false)).ToImmutableArray();
        var uses = from dish in dishes
                   from ingredient in dish.Dish.Ingredients
                   let amount = ingredient.Quantity is { } quantity ? ToBuy(ingredient, new Amount(quantity, Units.Of(ingredient.Unit, spoons)) * dish.Factor) : (Amount?)null
                   group new ShoppingUse(dish.Dish, ingredient, amount) by ShoppingLine.KeyOf(ingredient.Name);
        return new([.. uses.Select(use => ShoppingLine.Of(use.Key, [.. use])).OrderBy(line => line.Name, StringComparer.OrdinalIgnoreCase)], dishes);
    }

    /// <summary>A recipe that weighs what is peeled and trimmed ("peeled weight") wants more bought.</summary>
    static Amount ToBuy(Ingredient ingredient, Amount amount) =>
        amount.Unit.Dimension == Dimension.Mass && (ingredient.Preparation?.Contains("peeled weight", StringComparison.OrdinalIgnoreCase) == true || ingredient.Preparation?.Contains("trimmed weight", StringComparison.OrdinalIgnoreCase) == true) && Yields.ToBuy(ingredient.Name, amount) is { } more
            ? more
            : amount;

    /// <summary>
    /// The appetites of those who eat of it: of a course's main dishes each guest takes the first they can eat, of everything
    /// else all take who can. Where that is near what the dish is written for, it is made as it is written.
    /// </summary>
    static Dictionary<DishId, decimal> Wanted(Meal meal)
    {
        var eaters = meal.Dishes.ToDictionary(dish => dish.Id, _ => 0m);
        var mains = meal.Dishes.Where(WhoCanEat.IsMain).ToHashSet();
        foreach (var guest in meal.Guests)
        {
            var can = meal.Dishes.Select(dish => WhoCanEat.Judge(guest, dish)).Where(one => one.Answer != CanEat.No).ToLookup(one => mains.Contains(one.Dish));
            foreach (var one in can[false].Concat(can[true].GroupBy(one => one.Dish.Course).Select(course => course.MinBy(one => one.Answer)!)))
            {
                eaters[one.Dish.Id] += guest.Portion;
            }
        }

        return meal.Dishes.ToDictionary(dish => dish.Id, dish => eaters[dish.Id] is var portions && (portions == 0 || Math.Abs(portions - dish.Serves) <= NearEnough * dish.Serves) ? dish.Serves : portions);
    }
}
