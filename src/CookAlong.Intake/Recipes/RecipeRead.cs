using System.Collections.Immutable;

namespace CookAlong.Intake.Recipes;

/// <summary>A recipe as it was read.</summary>
/// <param name="Name">Empty when none was found.</param>
/// <param name="Serves">Null when it does not say.</param>
/// <param name="Ingredients">A line each, as written.</param>
/// <param name="Unread">Lines that are neither, so that nothing is lost without a word.</param>
public sealed record RecipeRead(string Name, int? Serves, ImmutableArray<string> Ingredients, ImmutableArray<StepRead> Steps, ImmutableArray<string> Unread)
{
    /// <summary>Of the whole, where it says so at its head.</summary>
    public StatedTimes Stated { get; init; } = StatedTimes.None;

    /// <summary>Characters of a text that is read at all: the longest recipe of a book has a hundredth of it.</summary>
    public const int Longest = 2_000_000;

    /// <summary>More is no recipe.</summary>
    public const int MostSteps = 200;

    public RecipeForm Form { get; init; }

    /// <summary>False: nothing said "this is a recipe", its words were read.</summary>
    public bool IsMarked => Form == RecipeForm.Marked;

    /// <summary>A web page or a part of one, JSON-LD, or plain text: whichever it is. Never throws.</summary>
    public static RecipeRead Of(string text)
    {
        var cut = WholeCharacters.Of(text.Length > Longest ? text[..Longest] : text);
        var read = RecipePage.Read(cut) ?? RecipeText.Read(cut);
        return text.Length <= Longest ? read
            : read with { Unread = [FormattableString.Invariant($"The text is longer than {Longest:N0} characters: the last {text.Length - Longest:N0} were not read, from “{cut[^40..].ReplaceLineEndings(" ").Trim()}” on."), .. read.Unread] };
    }

    internal static RecipeRead Of(string name, int? serves, IEnumerable<string> ingredients, IEnumerable<string> steps, IEnumerable<string> unread)
    {
        List<string> all = [.. steps];
        var read = all[..Math.Min(all.Count, MostSteps)];
        return new RecipeRead(name, serves, [.. ingredients], [.. read.Select(StepRead.Of)], [.. unread, .. all[read.Count..]]);
    }
}
