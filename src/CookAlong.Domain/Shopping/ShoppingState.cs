using System.Collections.Immutable;

namespace CookAlong.Domain.Shopping;

public enum Mark
{
    Open,
    Bought,

    /// <summary>It is in the cupboard at home.</summary>
    Cupboard,
}

/// <summary>Something typed in beside what the dishes want: "candles".</summary>
public sealed record Extra(string Key, string Text);

/// <summary>What people have done to a list.</summary>
public abstract record ShoppingTap
{
    /// <param name="Line">The line's key.</param>
    /// <param name="Amount">As it stood on the screen, so that more wanted later is seen.</param>
    public sealed record MarkLine(string Line, Mark Mark, string Amount) : ShoppingTap;

    public sealed record AddExtra(string Key, string Text) : ShoppingTap;

    public sealed record RemoveExtra(string Key) : ShoppingTap;

    public sealed record SetPortions(DishId Dish, decimal Portions) : ShoppingTap;

    /// <param name="By">-1 = one up, 1 = one down.</param>
    public sealed record MoveAisle(Aisle Aisle, int By) : ShoppingTap;
}

/// <summary>Where a list stands, from all taps in their order.</summary>
/// <param name="Marks">Of lines that are not open, by key, with the amount as it was then.</param>
public sealed record ShoppingState(
    ImmutableDictionary<string, (Mark Mark, string Amount)> Marks, ImmutableArray<Extra> Extras, ImmutableDictionary<DishId, decimal> Portions, ImmutableArray<Aisle> Aisles)
{
    /// <summary>Characters of a line that is typed in.</summary>
    public const int LongestText = 120;

    /// <summary>Lines typed in; more is no shopping list.</summary>
    public const int MostExtras = 200;

    public static ShoppingState Empty { get; } = new(ImmutableDictionary<string, (Mark, string)>.Empty, [], ImmutableDictionary<DishId, decimal>.Empty, [.. Enum.GetValues<Aisle>()]);

    /// <summary>A tap that could not be kept: its line is too long, its dish is none, its list is full.</summary>
    public static bool IsSound(ShoppingTap tap) => tap switch
    {
        ShoppingTap.MarkLine mark => mark.Line.Length is > 0 and <= 2_000 && mark.Amount.Length <= 2_000 && Enum.IsDefined(mark.Mark),
        ShoppingTap.AddExtra add => add.Key.Length is > 0 and <= 60 && add.Text.Trim().Length is > 0 and <= LongestText,
        ShoppingTap.RemoveExtra => true,
        ShoppingTap.SetPortions portions => portions.Portions is > 0 and <= 1_000,
        ShoppingTap.MoveAisle move => Enum.IsDefined(move.Aisle) && move.By is -1 or 1,
        _ => throw new System.Diagnostics.UnreachableException($"An unknown tap: {tap.GetType().Name}."),
    };

    /// <summary>The later tap counts. One about something that is not there changes nothing.</summary>
    public ShoppingState Apply(ShoppingTap tap) => tap switch
    {
        ShoppingTap.MarkLine { Mark: Mark.Open } mark => this with { Marks = Marks.Remove(mark.Line) },
        ShoppingTap.MarkLine mark => this with { Marks = Marks.SetItem(mark.Line, (mark.Mark, mark.Amount)) },
        ShoppingTap.AddExtra add when Extras.Length >= MostExtras || Extras.Any(extra => extra.Key == add.Key) => this,
        ShoppingTap.AddExtra add => this with { Extras = Extras.Add(new Extra(add.Key, add.Text.Trim())) },
        ShoppingTap.RemoveExtra remove => this with { Extras = Extras.RemoveAll(extra => extra.Key == remove.Key), Marks = Marks.Remove(remove.Key) },
        ShoppingTap.SetPortions portions => this with { Portions = Portions.SetItem(portions.Dish, portions.Portions) },
        ShoppingTap.MoveAisle move => this with { Aisles = Moved(move) },
        _ => throw new System.Diagnostics.UnreachableException($"An unknown tap: {tap.GetType().Name}."),
    };

    ImmutableArray<Aisle> Moved(ShoppingTap.MoveAisle move)
    {
        var (from, to) = (Aisles.IndexOf(move.Aisle), Aisles.IndexOf(move.Aisle) + move.By);
        return to < 0 || to >= Aisles.Length ? Aisles : Aisles.RemoveAt(from).Insert(to, move.Aisle);
    }
}
