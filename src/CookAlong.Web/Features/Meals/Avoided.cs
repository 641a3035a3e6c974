using System.Collections.Immutable;
using CookAlong.Domain.Meals;

namespace CookAlong.Web.Features.Meals;

/// <summary>A guest must not eat what a dish holds.</summary>
/// <param name="What">The guest's own word for it.</param>
/// <param name="Ingredients">Those that are said to contain it.</param>
public sealed record Avoided(Guest Guest, string What, Dish Dish, ImmutableArray<Ingredient> Ingredients)
{
    /// <summary>Every dish that its ingredients say holds something a guest avoids. What a file does not say, nobody can find: labels decide.</summary>
    public static ImmutableArray<Avoided> In(Meal meal) =>
    [
        .. from guest in meal.Guests
           from what in guest.Avoids
           from dish in meal.Dishes
           let holding = dish.Ingredients.Where(ingredient => ingredient.Contains.Contains(what, StringComparer.OrdinalIgnoreCase)).ToImmutableArray()
           where !holding.IsEmpty
           select new Avoided(guest, what, dish, holding),
    ];
}
