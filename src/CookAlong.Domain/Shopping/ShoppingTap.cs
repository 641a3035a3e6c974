using System.Collections.Immutable;

namespace CookAlong.Domain.Shopping;

public enum Mark
{
    Open,
    Bought,

    /// <summary>It is in the cupboard at home.</summary>
    Cupboard,
}

/// <summary>What people have done to a list.</summary>
public abstract record ShoppingTap
{
    /// <summary>Characters of a line that is typed in.</summary>
    public const int LongestText = 120;

    /// <summary>Characters of the key of such a line, which its screen makes up.</summary>
    public const int LongestKey = 60;

    /// <summary>Characters of a line's key and of its amount, which come from a meal file.</summary>
    const int LongestLine = 2_000;

    /// <summary>Characters of a dish's id, as a meal file has them.</summary>
    const int LongestDish = 100;

    /// <param name="Line">The line's key.</param>
    /// <param name="Amount">As it stood on the screen, so that more wanted later is seen.</param>
    public sealed record MarkLine(string Line, Mark Mark, string Amount) : ShoppingTap;

    public sealed record AddExtra(string Key, string Text) : ShoppingTap;

    public sealed record RemoveExtra(string Key) : ShoppingTap;

    public sealed record SetPortions(DishId Dish, decimal Portions) : ShoppingTap;

    /// <param name="Order">The whole order, so that it means the same whatever stood before it. Aisles that it does not name come last.</param>
    public sealed record ArrangeAisles(ImmutableArray<Aisle> Order) : ShoppingTap;

    /// <param name="Price">What it cost, in the household's currency, 0 to <see cref="Cost.Most"/> with two decimals; null = it is taken off again.</param>
    public sealed record SetPrice(string Line, decimal? Price) : ShoppingTap;

    /// <param name="Code">By ISO 4217, "EUR"; "" = prices are plain numbers.</param>
    public sealed record SetCurrency(string Code) : ShoppingTap;

    /// <summary>Whether a screen could have made it: nothing in it is empty, too long or out of bounds.</summary>
    public bool IsSound => this switch
    {
        MarkLine mark => mark.Line.Length is > 0 and <= LongestLine && mark.Amount.Length <= LongestLine && Enum.IsDefined(mark.Mark),
        AddExtra add => add.Key.Length is > 0 and <= LongestKey && add.Text.Trim().Length is > 0 and <= LongestText,
        RemoveExtra remove => remove.Key.Length is > 0 and <= LongestKey,
        SetPortions portions => portions.Dish.Value.Length is > 0 and <= LongestDish && portions.Portions is > 0 and <= 1_000,
        ArrangeAisles aisles => !aisles.Order.IsEmpty && aisles.Order.All(Enum.IsDefined) && aisles.Order.Distinct().Count() == aisles.Order.Length,
        SetPrice price => price.Line.Length is > 0 and <= LongestLine && (price.Price is not { } cost || Cost.IsPrice(cost)),
        SetCurrency currency => currency.Code.Length == 0 || Cost.IsCode(currency.Code),
        _ => throw new System.Diagnostics.UnreachableException($"An unknown tap: {GetType().Name}."),
    };
}
