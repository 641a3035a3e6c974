namespace CookAlong.Domain.Quantities;

/// <summary>What a unit measures, and with it what it can be converted into.</summary>
public enum Dimension
{
    /// <summary>In grams.</summary>
    Mass,

    /// <summary>In millilitres.</summary>
    Volume,

    /// <summary>In pieces: a piece, a dozen.</summary>
    Count,

    /// <summary>In millimetres.</summary>
    Length,

    /// <summary>A container or a handful ("tins", "sprigs"): only ever added to its own kind.</summary>
    Own,
}

/// <summary>A unit of a recipe.</summary>
/// <param name="Name">As it is written after a number: "tbsp", "g"; "" for pieces.</param>
/// <param name="Size">How many grams, millilitres, pieces or millimetres one is, exactly; 1 for <see cref="Dimension.Own"/>.</param>
public sealed record Unit(string Name, Dimension Dimension, decimal Size)
{
    /// <summary>Spoons, cups and the like, which kitchens measure by the part: a half, a third, a quarter.</summary>
    public bool IsSpoonOrCup { get; init; }

    /// <summary>The spoon that many of it are measured with instead: a teaspoon's is the tablespoon.</summary>
    public Unit? Larger { get; init; }

    public override string ToString() => Name;
}

/// <summary>So much of a unit. 0 or more.</summary>
public readonly record struct Amount(decimal Value, Unit Unit)
{
    /// <summary>In grams, millilitres, pieces or millimetres.</summary>
    public decimal Base => Value * Unit.Size;

    /// <summary>The same in another unit of the same dimension.</summary>
    /// <exception cref="ArgumentException">They measure different things.</exception>
    public Amount In(Unit other) => other.Dimension == Unit.Dimension && (Unit.Dimension != Dimension.Own || other == Unit)
        ? this with { Value = Base / other.Size, Unit = other }
        : throw new ArgumentException($"{Unit.Name} cannot be told in {other.Name}", nameof(other));

    public static Amount operator *(Amount amount, decimal factor) => amount with { Value = amount.Value * factor };
}
