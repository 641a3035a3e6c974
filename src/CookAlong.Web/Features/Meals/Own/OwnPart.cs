using CookAlong.Domain.Meals;
using CookAlong.Intake.MealFiles;
using Microsoft.AspNetCore.Components;

namespace CookAlong.Web.Features.Meals.Own;

/// <summary>A part of a meal that is changed in place, field by field; what is refused leaves its field again.</summary>
public abstract class OwnPart : ComponentBase
{
    /// <summary>Drawn with every key: a refused value must leave its field.</summary>
    protected int Tries { get; private set; }

    [Parameter, EditorRequired] public required Meal Meal { get; set; }

    [Parameter, EditorRequired] public EventCallback<Action<MealDocument>> Change { get; set; }

    [Parameter] public EventCallback<string> Say { get; set; }

    protected Task Keep(Action<MealDocument> edit)
    {
        Tries++;
        return Change.InvokeAsync(edit);
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
