using System.Globalization;
using CookAlong.Intake.Recipes;
using CookAlong.Web.Features.Dishes;

namespace CookAlong.Web.Features.Meals.Recipes;

/// <summary>What a recipe says of its times, and where that cannot be, as sentences.</summary>
static class RecipeWords
{
    /// <summary>Null where there is nothing to say of it.</summary>
    public static string? Of(RecipeForm form) => form switch
    {
        RecipeForm.Marked or RecipeForm.PlainText => null,
        RecipeForm.UnmarkedPage => "This page marks no recipe as one, so its words were read: more of it may be wrong than usual.",
        RecipeForm.OtherData => "This is data without a recipe in it, so there is no dish to bring in. Paste the recipe's own words.",
        _ => throw new System.Diagnostics.UnreachableException($"A form without a sentence: {form}."),
    };

    public static string Of(StatedTimes stated)
    {
        string?[] parts = [Part(stated.Prep, "to prepare"), Part(stated.Cook, "to cook"), Part(stated.Total, "in all")];
        return $"The recipe says: {string.Join(", ", parts.Where(part => part is not null))}.";
    }

    static string? Part(StatedTime? time, string what) => time is null ? null
        : time.Least == time.Most ? $"{Long(time.Most)} {what}"
        : $"{Long(time.Least)} to {Long(time.Most)} {what}";

    public static string Of(TimeDoubt doubt) => doubt switch
    {
        TimeDoubt.PartsBeyondTotal one => $"Its times contradict each other: {Long(one.Prep)} to prepare and {Long(one.Cook)} to cook are more than {Long(one.Total)} in all. Which is right shows in its steps.",
        TimeDoubt.StepsBeyondTotal one => $"Its steps take at least {Long(one.Steps)} one after the other, and it says {Long(one.Total)} in all. The steps count here: look at the longest.",
        TimeDoubt.HeatIsOther one when one.Least > one.Cook => $"A step is on the heat for {Long(one.Least)}, and it says {Long(one.Cook)} to cook. The step counts here.",
        TimeDoubt.HeatIsOther one => $"Its steps are on the heat for {Long(one.Most)} at the most, and it says {Long(one.Cook)} to cook. Is a step missing, or a time too short?",
        TimeDoubt.SumOfStep one => $"“{one.Step}”: its parts come to {Long(one.Parts)}, and it says {Long(one.Total)} in all. The parts count here.",
        _ => throw new System.Diagnostics.UnreachableException($"A doubt without a sentence: {doubt.GetType().Name}."),
    };

    public static string Guessed(StepDraft step) => step.IsByTheWhole
        ? $"No time is written: {Long(step.Likely)} are what the recipe's own times leave for it."
        : $"No time is written: {Long(step.Likely)} are a guess.";

    /// <summary>"2 kg of beef at 20 min a pound, and 20 min more: 1 h 48 min." Null for a time that does not go by weight.</summary>
    public static string? ByWeight(StepDraft step)
    {
        if (step.ByWeight is not { } weight || step.IsByTheWhole)
        {
            return null;
        }

        var rate = $"{Range(weight.Rate.Least, weight.Rate.Most, Long)} {(weight.Rate.Role == TimeRole.PerPound ? "a pound" : "a kilogram")}";
        var more = step.Read.Times.Where(time => time.Role == TimeRole.Takes).ToList() is { Count: > 0 } takes
            ? $", and {Range(takes.Sum(time => time.Least), takes.Sum(time => time.Most), Long)} more" : "";
        var kilograms = $"{Range(weight.Least, weight.Most, one => one.ToString("0.##", CultureInfo.InvariantCulture))} kg";
        return weight.Food is { } food ? $"{kilograms} of {food} at {rate}{more}."
            : $"It goes by weight, and no weight of a main food is written among the ingredients: {kilograms} is a guess, at {rate}{more}.";
    }

    static string Range(double least, double most, Func<double, string> write) => write(least) == write(most) ? write(least) : $"{write(least)} to {write(most)}";

    /// <summary>Beside a field.</summary>
    public static string Of(Sureness from) => from switch
    {
        Sureness.Read => "read",
        Sureness.Usual => "usual",
        Sureness.Guessed => "guessed",
        Sureness.Corrected => "yours",
        _ => throw new System.Diagnostics.UnreachableException($"Sureness without a word: {from}."),
    };

    public static string Long(Sureness from) => from switch
    {
        Sureness.Read => "The words say it.",
        Sureness.Usual => "The words say it as cooks do; the usual is taken.",
        Sureness.Guessed => "No words say it.",
        Sureness.Corrected => "You said so.",
        _ => throw new System.Diagnostics.UnreachableException($"Sureness without a sentence: {from}."),
    };

    static string Long(double minutes) => DurationWords.Write((int)Math.Round(minutes, MidpointRounding.AwayFromZero));
}
