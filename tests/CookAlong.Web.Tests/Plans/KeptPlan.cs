using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Intake.MealFiles;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Features.Plans;

namespace CookAlong.Web.Tests.Plans;

/// <summary>A meal with its plan in the household's own database.</summary>
static class KeptPlan
{
    public static async Task<KeptMeal> KeepAsync(this AppFactory app, Meal meal, Plan? plan)
    {
        var stop = TestContext.Current.CancellationToken;
        _ = app.FirstStartSecret;
        var kept = Assert.IsType<MealEdit.Kept>(await app.Get<MealBook>().AddAsync(MealFile.Write(meal), fromNow: false, stop)).Meal;
        if (plan is not null)
        {
            await app.Get<PlanningDesk>().KeepAsync(kept.Row, kept.Meal, plan, stop);
        }

        return kept;
    }
}
