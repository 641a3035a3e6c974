using System.Collections.Immutable;

namespace CookAlong.Domain.Shopping;

/// <summary>Something typed in beside what the dishes want: "candles".</summary>
public sealed record Extra(string Key, string Text);

/// <summary>Where a list stands, from all taps in their order.</summary>
/// <param name="Marks">Of lines that are not open, by key, with the amount as it was then.</param>
/// <param name="Prices">What was typed, by the line's key.</param>
/// <param name="Currency">By ISO 4217; "" = nobody has chosen one.</param>
public sealed record ShoppingState(
    ImmutableDictionary<string, (Mark Mark, string Amount)> Marks,
    ImmutableArray<Extra> Extras,
    ImmutableDictionary<DishId, decimal> Portions,
    ImmutableArray<Aisle> Aisles,
    ImmutableDictionary<string, decimal> Prices,
    string Currency)
{
    /// <summary>Lines typed in; more is no shopping list.</summary>
    public const int MostExtras = 200;

    public static ShoppingState Empty { get; } = new(
        ImmutableDictionary<string, (Mark, string)>.Empty, [], ImmutableDictionary<DishId, decimal>.Empty, [.. Enum.GetValues<Aisle>()], ImmutableDictionary<string, decimal>.Empty, "");

    /// <summary>Whether one more line may be typed in.</summary>
    public bool HasRoom => Extras.Length < MostExtras;

    /// <summary>The later tap counts. One about something that is not there changes nothing.</summary>
    public ShoppingState Apply(ShoppingTap tap) => tap switch
    {
        ShoppingTap.MarkLine { Mark: Mark.Open } mark => this with { Marks = Marks.Remove(mark.Line) },
        ShoppingTap.MarkLine mark => this with { Marks = Marks.SetItem(mark.Line, (mark.Mark, mark.Amount)) },
        ShoppingTap.AddExtra add when Extras.Any(extra => extra.Key == add.Key) => this,
        ShoppingTap.AddExtra add => this with { Extras = Extras.Add(new Extra(add.Key, add.Text.Trim())) },
        ShoppingTap.RemoveExtra remove => this with { Extras = Extras.RemoveAll(extra => extra.Key == remove.Key), Marks = Marks.Remove(remove.Key), Prices = Prices.Remove(remove.Key) },
        ShoppingTap.SetPortions portions => this with { Portions = Portions.SetItem(portions.Dish, portions.Portions) },
        ShoppingTap.ArrangeAisles aisles => this with { Aisles = [.. aisles.Order, .. Empty.Aisles.Except(aisles.Order)] },
        ShoppingTap.SetPrice { Price: { } cost } price => this with { Prices = Prices.SetItem(price.Line, cost) },
        ShoppingTap.SetPrice price => this with { Prices = Prices.Remove(price.Line) },
        ShoppingTap.SetCurrency currency => this with { Currency = currency.Code },
        _ => throw new System.Diagnostics.UnreachableException($"An unknown tap: {tap.GetType().Name}."),
    };
}
