namespace CookAlong.Domain.Debrief.Learning;

/// <summary>A step as it is known from meal to meal: its dish and its words, small letters.</summary>
public readonly record struct StepKey(string Dish, string Text)
{
    public static StepKey Of(string dish, string text) => new(Plain(dish), Plain(text));

    /// <summary>What is done, by the first word of a step's headline: "peel" of "Peel the potatoes".</summary>
    public static string KindOf(string text) => Plain(text).Split(' ', 2)[0].Trim(',', '.', ':', ';');

    static string Plain(string text) => string.Join(' ', text.ToLowerInvariant().Split(' ', StringSplitOptions.RemoveEmptyEntries));
}
