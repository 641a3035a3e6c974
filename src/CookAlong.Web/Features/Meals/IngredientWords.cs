using CookAlong.Domain.Quantities;
using CookAlong.Intake.Recipes;

namespace CookAlong.Web.Features.Meals;

/// <summary>Ingredients in words.</summary>
public static class IngredientWords
{
    /// <summary>"2 to 3 tbsp · sugar · sifted · or honey · not read: heaped": each part that was found.</summary>
    public static string Read(IngredientRead ingredient)
    {
        var unit = Units.Of(ingredient.Unit);
        var amount = (ingredient.Least, ingredient.Most) switch
        {
            ({ } least, { } most) when least != most => $"{CooksRounding.Number(least, unit)} to {CooksRounding.Number(most, unit)} {ingredient.Unit}",
            ({ } least, _) => $"{CooksRounding.Number(least, unit)} {ingredient.Unit}",
            _ => "",
        };
        IEnumerable<string> parts =
        [
            amount.Trim(), ingredient.Name, ingredient.Preparation ?? "",
            .. ingredient.Alternatives.Select(one => $"or {one}"),
            ingredient.Unread.IsEmpty ? "" : $"not read: {string.Join(", ", ingredient.Unread)}",
        ];
        return string.Join(" · ", parts.Where(part => part.Length > 0));
    }
}
