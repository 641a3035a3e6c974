using System.Diagnostics;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Quantities;
using CookAlong.Domain.Shopping;

namespace CookAlong.Web.Features.Shopping;

/// <summary>The shopping list in words.</summary>
public static class ShoppingWords
{
    public const string NotAList = "The server did not take that tap. Reload the page and try again.";

    public const string NotLetIn = "This list is for the host and for helpers who have joined this meal.";

    /// <summary>For the household's log; null for a tap that sets nothing.</summary>
    public static string? Setting(ShoppingTap tap) => tap switch
    {
        ShoppingTap.ArrangeAisles => "the order of the aisles",
        ShoppingTap.SetCurrency one => $"the currency: {one.Code}",
        _ => null,
    };

    public const string HostSets = "The order of the aisles and the currency count for every meal of this household: its host sets them.";

    /// <summary>Said by the browser as well, beside the field.</summary>
    public static readonly string PriceForm = FormattableString.Invariant($"A price is a number from 0 to {Cost.Most}, with two decimals at most.");

    public const string CurrencyForm = "A currency is its three letters by ISO 4217.";

    public static readonly string Full = $"{ShoppingState.MostExtras} lines are typed in, and the list takes no more. Take one off first.";

    public static string Title(Meal meal) => $"Shopping for {meal.Name}";

    /// <summary>Why a tap that no screen offers is not taken.</summary>
    public static string Unsound(ShoppingTap tap) => tap switch
    {
        ShoppingTap.SetPrice => PriceForm,
        ShoppingTap.SetCurrency => CurrencyForm,
        _ => NotAList,
    };

    /// <summary>"12.50"; the currency, where there is one, stands behind it.</summary>
    public static string Number(decimal? price) => price is { } typed ? FormattableString.Invariant($"{typed:0.00}") : "";

    public static string Of(Aisle aisle) => aisle switch
    {
        Aisle.Produce => "Vegetables, fruit and herbs",
        Aisle.Bread => "Bread",
        Aisle.MeatAndFish => "Meat and fish",
        Aisle.DairyAndEggs => "Milk, cheese and eggs",
        Aisle.DryGoods => "Flour, rice, nuts and other dry goods",
        Aisle.TinsAndJars => "Tins, jars, oil and vinegar",
        Aisle.SpicesAndBaking => "Spices and baking",
        Aisle.Frozen => "Frozen",
        Aisle.Drinks => "Drinks",
        Aisle.Household => "Household",
        Aisle.Other => "Everything else",
        Aisle.AtHome => "From the tap",
        _ => throw new UnreachableException($"An aisle without a name: {aisle}."),
    };

    /// <summary>"1.4 kg (about 9)", "2 tins and 300 g", "2 tbsp and some more".</summary>
    public static string Amount(ShoppingLine line)
    {
        var amounts = line.Amounts.Select(amount => CooksRounding.Round(Whole(amount)) + Pieces(line, amount)).ToList();
        return string.Join(" and ", line.HasSome && amounts.Count > 0 ? [.. amounts, "some more"] : amounts);
    }

    /// <param name="before">Marked so for another amount.</param>
    public static string? Note(ShoppingLine line, (Mark Mark, string Amount)? before)
    {
        var dishes = string.Join(", ", line.Uses.Select(use => use.Dish.Name).Distinct());
        return before is { } was ? $"{(was.Mark == Mark.Bought ? "Bought" : "At home")} before: {(was.Amount.Length > 0 ? was.Amount : "some")}. For {dishes}" : dishes;
    }

    public static string Of(ScalingCaution caution) => caution switch
    {
        ScalingCaution.OvenTime => "The oven's time does not grow with the amount: a thicker piece takes longer, more trays brown unevenly. A thermometer decides.",
        ScalingCaution.PanAndLiquid => "A wider pan boils away more: add liquid as needed, not all at once.",
        ScalingCaution.Seasoning => "Season less at first, and taste.",
        ScalingCaution.Raising => "Raising and setting agents go by the tin and the recipe, not by the number.",
        ScalingCaution.HandsOnTime => "Peeling and chopping take longer: give those steps more minutes in the plan.",
        _ => throw new UnreachableException($"A caution without words: {caution}."),
    };

    /// <summary>Nobody sells a third of a lemon; the last tenth of one is not missed.</summary>
    static Amount Whole(Amount amount) =>
        amount.Unit.Dimension is Dimension.Count or Dimension.Own ? amount with { Value = Math.Max(1, Math.Ceiling(amount.Value - 0.15m)) } : amount;

    /// <summary>Where some dishes want pieces and others weigh, both are told.</summary>
    static string Pieces(ShoppingLine line, Amount amount) =>
        amount.Unit.Dimension == Dimension.Mass && line.Uses.Any(use => use.Amount?.Unit.Dimension == Dimension.Count) && Weighing.Of(amount.Base, line.Name, Units.Piece) is { } pieces
            ? $" (about {CooksRounding.Number(Math.Ceiling(pieces.Value), Units.Piece)})"
            : "";
}
