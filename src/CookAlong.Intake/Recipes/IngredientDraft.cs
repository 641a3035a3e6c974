namespace CookAlong.Intake.Recipes;

/// <summary>An ingredient as it was read, for a person to correct; the line stays as it was written.</summary>
public sealed class IngredientDraft
{
    public required IngredientRead Read { get; init; }

    /// <summary>Of a range the most: what is bought must do. Null for "some", "to taste", and where none was found.</summary>
    public decimal? Quantity { get; set; }

    /// <summary>As written; null or empty for pieces.</summary>
    public string? Unit { get; set; }

    public required string Name { get; set; }

    public static IngredientDraft Of(IngredientRead read) => new() { Read = read, Quantity = read.Most, Unit = read.Unit, Name = read.Name };

    /// <summary>Of the quantity and its unit: a number says them, "a knob" is taken as one, or nothing was found.</summary>
    public Sureness AmountFrom =>
        (Quantity, Unit ?? "") != (Read.Most, Read.Unit ?? "") ? Sureness.Corrected
        : Read.Most is null ? Sureness.Guessed
        : Read.Pieces.Any(piece => piece.Part == IngredientPart.Amount && Token.Read(Read.Text.Substring(piece.At, piece.Length)).Any(IsNumber)) ? Sureness.Read
        : Sureness.Usual;

    static bool IsNumber(Token token) => token.Value is not null || Recipes.Quantity.One([token], 0) is not null;
}
