using System.Globalization;
using CookAlong.Domain;
using CookAlong.Domain.Debrief;
using CookAlong.Domain.Meals;

namespace CookAlong.Web.Features.Debrief.Again;

/// <summary>What the last time says to the next one.</summary>
public static class AgainWords
{
    /// <summary>"Order goose, oven-ready, 4.8 kg".</summary>
    public static string What(Reminder one) => one switch
    {
        { Order: { } order } => string.Create(CultureInfo.InvariantCulture, $"Order {order.Name}, {order.Quantity:0.##} {order.Unit}"),
        { Step: { } step } => step.Text,
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    public static string Before(Reminder one, Meal meal)
    {
        var days = (LocalTime.Show(meal.FirstTableTime, meal.TimeZone).Date - LocalTime.Show(one.At, meal.TimeZone).Date).Days;
        return days switch { 14 => "two weeks before", 7 => "a week before", 1 => "the day before", 0 => "on the day", _ => $"{days} days before" };
    }

    /// <summary>"a third of it came back"; null where next to nothing did.</summary>
    public static string? CameBack(int portions, decimal serves)
    {
        var share = serves <= 0 ? 0 : portions / serves;
        return portions == 0 ? null : share switch
        {
            >= 0.9m => "all of it came back",
            >= 0.7m => "three quarters of it came back",
            >= 0.58m => "two thirds of it came back",
            >= 0.42m => "half of it came back",
            >= 0.29m => "a third of it came back",
            >= 0.2m => "a quarter of it came back",
            _ => portions == 1 ? "one portion came back" : $"{portions} portions came back",
        };
    }

    /// <summary>What to do differently, of one dish; null = cook it as it was.</summary>
    public static string? Differently(string dish, string verdict, string? cameBack) => (verdict, cameBack) switch
    {
        ("more", _) => $"Make more of {dish}",
        ("less", null) => $"Make less of {dish}",
        ("less", { } back) => $"Make less of {dish}: {back}",
        ("never", _) => $"Cook something else in place of {dish}",
        ("", { } back) when !back.Contains("portion", StringComparison.Ordinal) => $"Make less of {dish}: {back}",
        _ => null,
    };

    /// <summary>A note's sentences, each a thing to do.</summary>
    public static IEnumerable<string> Sentences(string note) =>
        note.Split(['\n', '.', '!'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Where(sentence => sentence.Length > 0);
}
