using System.Text;
using System.Text.Json.Nodes;
using CookAlong.Domain.Planning;
using CookAlong.Intake.PlanFiles;
using CookAlong.Web.Features.Api.Tokens;
using CookAlong.Web.Features.Household;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Features.Plans;

namespace CookAlong.Web.Features.Api;

/// <summary>Plans as plan files.</summary>
static class PlanApi
{
    /// <summary>Whether the plan was made for the meal as it is now: "true" or "false".</summary>
    const string CurrentHeader = "CookAlong-Plan-Current";

    public static void MapPlanApi(this RouteGroupBuilder api)
    {
        var plans = api.MapGroup("/meals/{meal:guid}/plan").WithTags("Plans");
        plans.MapGet("", GetAsync)
            .Needs(ApiScope.Plans).WithSummary("The latest plan as its plan file")
            .WithDescription($"The header {CurrentHeader} says whether it was made for the meal as it is now.").Produces<JsonObject>();
        plans.MapPost("", MakeAsync)
            .Needs(ApiScope.Plans).WithSummary("Make a plan, keep it, and answer with its plan file")
            .WithDescription("Takes some seconds. Where no plan keeps the kitchen's promises the plan's status is \"none\", and it says why.").Produces<JsonObject>();
    }

    static async Task<IResult> GetAsync(HttpContext http, Guid meal, MealBook book, PlanningDesk desk)
    {
        if (await book.OpenAsync(meal, http.RequestAborted) is not { } kept)
        {
            return ApiProblem.NotFound.Answer();
        }

        return await desk.LatestAsync(kept.Row, kept.Meal, http.RequestAborted) is var (plan, isCurrent)
            ? File(http, kept, plan, isCurrent)
            : ApiProblem.NotFound.Answer("The meal has no plan yet. Post to this address to have one made.");
    }

    static async Task<IResult> MakeAsync(HttpContext http, Guid meal, MealBook book, PlanningDesk desk, Paces paces)
    {
        if (paces.Take(Visitor.Of(http.User)!.Session, Deed.Heavy) is { Ticks: > 0 } wait)
        {
            PaceLimit.SayWhen(http, wait);
            return ApiProblem.TooMany.Answer("Plans are searched for with the whole machine: 60 at once, then one every 5 seconds.");
        }

        if (await book.OpenAsync(meal, http.RequestAborted) is not { } kept)
        {
            return ApiProblem.NotFound.Answer();
        }

        // Nobody stops it halfway: whoever goes away drops it, and everybody else gets a plan.
        var plan = await desk.PlanAsync(kept.Row, kept.Meal, PlanRequest.UsualCushion, Leans.None, progress: null, stop: CancellationToken.None, leave: http.RequestAborted);
        return File(http, kept, plan!, isCurrent: true);
    }

    static IResult File(HttpContext http, KeptMeal meal, Plan plan, bool isCurrent)
    {
        http.Response.Headers[CurrentHeader] = isCurrent ? "true" : "false";
        return Results.Text(PlanFile.Write(plan, meal.Meal), "application/json", Encoding.UTF8);
    }
}
