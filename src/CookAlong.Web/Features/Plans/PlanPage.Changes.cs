using CookAlong.Domain.Planning;
using CookAlong.Web.Features.Meals;

namespace CookAlong.Web.Features.Plans;

public sealed partial class PlanPage
{
    /// <summary>What was last made of the meal at one touch, with the meal as it was before; null when there is nothing to take back.</summary>
    (PlanChange Change, KeptMeal Before)? made;

    /// <summary>Changes the meal as the planner advised, and plans it again.</summary>
    async Task MakeAsync(PlanChange change)
    {
        var (before, wished) = (kept!, plan!.Cost);
        if (await SettleAsync(await Book.EditAsync(before, meal => meal.Apply(change), fromNow: false, leave.Token)))
        {
            made = (change, before);
            await PlanAsync(wished.Cushion, wished.Leans);
        }
    }

    async Task TakeBackAsync()
    {
        var wished = plan?.Cost;
        if (await SettleAsync(await Book.PutBackAsync(kept!, made!.Value.Before.Row.Document, leave.Token)))
        {
            made = null;
            await PlanAsync(wished?.Cushion, wished?.Leans ?? Leans.None);
        }
    }

    /// <summary>True when it was kept.</summary>
    async Task<bool> SettleAsync(MealEdit changed)
    {
        problem = MealWords.WhyNotKept(changed);
        switch (changed)
        {
            case MealEdit.Kept(var meal):
                Show(meal);
                return true;
            case MealEdit.Refused:
                return false;
            case MealEdit.Outdated:
                await LoadAsync();
                return false;
            default:
                throw new System.Diagnostics.UnreachableException();
        }
    }
}
