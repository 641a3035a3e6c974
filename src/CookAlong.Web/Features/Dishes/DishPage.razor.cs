using System.Diagnostics;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using CookAlong.Domain;
using CookAlong.Intake.MealFiles;
using CookAlong.Web.Features.Meals;
using Microsoft.AspNetCore.Components;

namespace CookAlong.Web.Features.Dishes;

/// <summary>The dish editor. Every change is kept at once; what cannot be kept is said, and what was typed stays.</summary>
[SuppressMessage("Design", "CA1001", Justification = "A change may still be under way when the page goes, and a semaphore that nobody asked for its wait handle holds nothing.")]
public sealed partial class DishPage(DishBook book, MealBook mealBook, NavigationManager navigation)
{
    readonly EditHistory history = new();

    // A field that is left and the button that was pressed come as two events, and the second must see what the first made.
    readonly SemaphoreSlim turn = new(1);

    KeptDish? kept;
    IReadOnlyList<DishVersion> versions = [];
    IReadOnlyList<(Guid Meal, string Name)> used = [];
    IReadOnlyList<KeptMeal> meals = [];
    bool isMissing;
    int? sitting;
    int changes;
    string? problem;
    string note = "";
    StepId? open;
    int? dragged;

    [Parameter]
    public Guid DishId { get; set; }

    protected override async Task OnParametersSetAsync()
    {
        (sitting, changes, problem, note, open) = (null, 0, null, "Every change is saved by itself", null);
        await LoadAsync();
    }

    async Task LoadAsync()
    {
        var dish = await book.OpenAsync(DishId);
        if (dish is not null)
        {
            (used, meals, versions) = (await book.UsedInAsync(DishId), await mealBook.AllAsync(), await book.VersionsAsync(DishId));
            history.Restart(dish.Version.Document);
        }

        // Last: the page is drawn as soon as there is a dish, and its parts take what they are first given.
        (kept, isMissing) = (dish, dish is null);
    }

    async Task ChangeAsync(Action<DishDocument> edit)
    {
        await turn.WaitAsync();
        try
        {
            var changed = kept!.Document;
            var before = changed.Text;
            edit(changed);
            if (changed.Text != before && await KeepAsync(changed.Text, sitting))
            {
                history.Note(changed.Text);
            }
        }
        finally
        {
            turn.Release();
        }
    }

    async Task<bool> KeepAsync(string text, int? goingOn)
    {
        var edit = await book.KeepAsync(kept!, text, goingOn);
        problem = DishWords.WhyNotKept(edit, kept!.Dish);
        switch (edit)
        {
            case DishEdit.Kept(var dish):
                (kept, sitting) = (dish, dish.Row.Number);
                note = $"Saved, {MealWords.Many(++changes, "change", "changes")} so far";
                versions = await book.VersionsAsync(DishId);
                StateHasChanged();
                return true;
            case DishEdit.Refused:
                StateHasChanged();
                return false;
            case DishEdit.Outdated:
                await LoadAsync();
                StateHasChanged();
                return false;
            default:
                throw new UnreachableException();
        }
    }

    Task UndoAsync() => StepInHistoryAsync(history.Undo);

    Task RedoAsync() => StepInHistoryAsync(history.Redo);

    async Task StepInHistoryAsync(Func<string?> step)
    {
        await turn.WaitAsync();
        try
        {
            if (step() is { } state)
            {
                await KeepAsync(state, sitting);
            }
        }
        finally
        {
            turn.Release();
        }
    }

    /// <summary>What an older version said becomes the newest; the one it takes the place of stays.</summary>
    async Task GoBackAsync(int number)
    {
        await turn.WaitAsync();
        try
        {
            var document = await book.DocumentAsync(DishId, number);
            if (await KeepAsync(document, null))
            {
                history.Note(document);
                note = $"As it was in version {number}";
            }
        }
        finally
        {
            turn.Release();
        }
    }

    async Task MoveAsync((int From, int To) move)
    {
        IReadOnlyList<string> freed = [];
        await ChangeAsync(document => freed = document.MoveStep(move.From, move.To));
        if (problem is null && freed.Count > 0)
        {
            note = $"Saved. {string.Join(" and ", freed.Select(text => $"“{text}”"))} no longer waits for what now comes later.";
        }
    }

    async Task DropAsync(int to)
    {
        if (dragged is { } from && from != to)
        {
            await MoveAsync((from, to));
        }

        dragged = null;
    }

    async Task AddStepAsync()
    {
        await ChangeAsync(document => document.AddStep("What to do", 10));
        open = kept!.Dish.Steps[^1].Id;
    }

    async Task<string?> ServeAsync(string words)
    {
        if (!decimal.TryParse(words.Trim().Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var serves) || serves is <= 0 or > 10_000)
        {
            return $"“{words}” is no number of people. Write one such as 8.";
        }

        await ChangeAsync(document => document.Change(dish => dish with { Serves = serves }));
        return null;
    }

    async Task CopyAsync()
    {
        if (await book.CopyAsync(kept!) is DishEdit.Kept(var copy))
        {
            navigation.NavigateTo($"dishes/{copy.Row.Id}");
        }
    }

    async Task DeleteAsync()
    {
        await book.DeleteAsync(DishId);
        navigation.NavigateTo($"dishes?deleted={DishId}");
    }

    static string Words(ChangeEventArgs change) => (string?)change.Value ?? "";
}
