using System.Collections.Immutable;
using CookAlong.Domain.Meals;
using CookAlong.Intake.MealFiles;
using Microsoft.AspNetCore.Components;

namespace CookAlong.Web.Features.Dishes;

/// <summary>A part of the dish's page: it shows the dish, and asks the page for every change.</summary>
public abstract class DishPart : ComponentBase
{
    [Parameter, EditorRequired]
    public required Dish Dish { get; set; }

    /// <summary>Makes the change and keeps it, or says on the page why not.</summary>
    [Parameter, EditorRequired]
    public required Func<Action<DishDocument>, Task> Change { get; set; }

    protected Task SetAsync(Func<Dish, Dish> change) => Change(document => document.Change(change));

    protected async Task<string?> DurationAsync(string words, Func<Durations, Task> keep)
    {
        if (DurationWords.Read(words) is not { } minutes)
        {
            return $"“{words}” is not such a time. {DurationWords.Remedy}";
        }

        await keep(minutes);
        return null;
    }

    /// <summary>One time, 0 included.</summary>
    protected async Task<string?> OneAsync(string words, Func<int, Task> keep)
    {
        if (DurationWords.ReadOne(words) is not { } minutes)
        {
            return $"“{words}” is not one time. Write minutes or hours: 0, 20, 1 h 30, 2 days.";
        }

        await keep(minutes);
        return null;
    }

    protected static string Words(ChangeEventArgs change) => (string?)change.Value ?? "";

    protected static string? OrNull(ChangeEventArgs change) => Words(change).Trim() is { Length: > 0 } words ? words : null;

    /// <summary>What stands between commas.</summary>
    protected static ImmutableArray<string> List(ChangeEventArgs change) => [.. Words(change).Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)];
}
