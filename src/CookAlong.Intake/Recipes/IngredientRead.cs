using System.Collections.Immutable;
using CookAlong.Domain.Quantities;

namespace CookAlong.Intake.Recipes;

/// <summary>A line of a recipe's ingredients as it was read, beside its words.</summary>
/// <param name="Text">The line as written.</param>
/// <param name="Least">Null for "some", "to taste", and where no quantity was found.</param>
/// <param name="Most">The same as the least unless it is a range.</param>
/// <param name="Unit">As written ("tbsp", "tins"); null for pieces.</param>
/// <param name="Name">What it is; never empty unless the line is.</param>
/// <param name="Preparation">"finely chopped", "to taste"; null when nothing is said.</param>
/// <param name="Alternatives">What may be taken instead: "margarine".</param>
/// <param name="Unread">Words that are none of these, so that nothing is lost without a word: what stands in brackets.</param>
/// <param name="Pieces">Which words were read as what, in their order.</param>
public sealed record IngredientRead(
    string Text,
    decimal? Least,
    decimal? Most,
    string? Unit,
    string Name,
    string? Preparation,
    ImmutableArray<string> Alternatives,
    ImmutableArray<string> Unread,
    ImmutableArray<IngredientPiece> Pieces)
{
    /// <summary>Characters of a line that are looked at; a longer one is no ingredient and stays as it is.</summary>
    public const int Longest = 1_000;

    /// <summary>Whatever the line, it is read; never throws.</summary>
    /// <param name="spoons">Whose spoons and cups are added up in "1 cup plus 2 tbsp".</param>
    public static IngredientRead Of(string line, SpoonSizes spoons) => IngredientLine.Read(line, spoons);
}

public enum IngredientPart
{
    Unread,
    Amount,
    Name,
    Preparation,
    Alternative,

    /// <summary>"of", "or", a comma: holds the others together.</summary>
    Joint,
}

/// <param name="At">Where its words begin in the line.</param>
public readonly record struct IngredientPiece(IngredientPart Part, int At, int Length);
