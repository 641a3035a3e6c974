using CookAlong.Domain.Meals;
using CookAlong.Intake.MealFiles;
using Microsoft.AspNetCore.Components;

namespace CookAlong.Web.Features.Meals;

/// <summary>A part of a meal that is changed in place, field by field; what is refused leaves its field again.</summary>
public abstract class MealPart : ComponentBase
{
    /// <summary>Part of every field's key: a refused value must leave its field. One that was kept leaves all fields as they are, for somebody may be typing in the next.</summary>
    protected int Tries { get; private set; }

    [Parameter, EditorRequired] public required Meal Meal { get; set; }

    /// <summary>Keeps an edit of the meal as it is by then, and says whether it was kept.</summary>
    [Parameter, EditorRequired] public required Func<Action<MealDocument>, Task<bool>> Change { get; set; }

    [Parameter] public EventCallback<string> Say { get; set; }

    protected async Task Keep(Action<MealDocument> edit)
    {
        if (!await Change(edit))
        {
            Tries++;
        }
    }

    protected Task Refuse(string why)
    {
        Tries++;
        return Say.InvokeAsync(why);
    }

    protected Task Number(ChangeEventArgs change, string what, int least, int most, Func<int, Action<MealDocument>> edit) =>
        int.TryParse(change.Value as string, System.Globalization.NumberStyles.AllowLeadingSign, System.Globalization.CultureInfo.InvariantCulture, out var number) && least <= number && number <= most
            ? Keep(edit(number))
            : Refuse($"{what} is a whole number from {least} to {most}. Nothing was changed.");

    protected Task Words(ChangeEventArgs change, string what, Func<string, Action<MealDocument>> edit) =>
        change.Value is string words && words.Trim() is { Length: > 0 and <= 120 } text ? Keep(edit(text)) : Refuse($"{what} needs a name. Nothing was changed.");

    /// <summary>"nuts, celery" as two; none of nothing.</summary>
    protected static System.Collections.Immutable.ImmutableArray<string> Listed(object? words) =>
        [.. ((words as string) ?? "").Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Distinct(StringComparer.OrdinalIgnoreCase)];
}
