using System.Collections.Immutable;

namespace CookAlong.Intake.Recipes;

/// <summary>One step of a recipe as it was read, each thing with the words it was read from.</summary>
/// <param name="On">What the first span of time takes place on, or the step where it names none.</param>
public sealed record StepRead(string Text, ImmutableArray<TimeRead> Times, ImmutableArray<HeatRead> Heats, CookedOn On)
{
    /// <summary>Deterministic, linear in the text, and never throws: what cannot be read is left out.</summary>
    public static StepRead Of(string text)
    {
        var tokens = Token.Read(text);
        var times = Recipes.Times.Read(tokens);
        var first = times.FirstOrDefault(time => time.Role is TimeRole.Takes or TimeRole.PerPound or TimeRole.PerKilo);
        var near = first is null ? (int?)null : tokens.FindIndex(token => token.At == first.At);
        return new StepRead(text, [.. times], [.. Recipes.Heats.Read(text, tokens)], CookedOnWords.Of(text, tokens, near));
    }
}
