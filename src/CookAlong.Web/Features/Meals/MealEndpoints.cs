using System.Text;
using CookAlong.Intake.PlanFiles;
using CookAlong.Web.Features.Household;
using CookAlong.Web.Features.Plans;

namespace CookAlong.Web.Features.Meals;

/// <summary>Meals and plans as files to take away. They come in on the page of meals.</summary>
public static class MealEndpoints
{
    public static void MapMeals(this IEndpointRouteBuilder app)
    {
        var meals = app.MapGroup("/meals").RequireAuthorization(HouseholdFeature.HostPolicy);
        meals.MapGet("/{meal:guid}/file", ExportAsync);
        meals.MapGet("/{meal:guid}/plan/file", ExportPlanAsync);
    }

    /// <summary>The file as it came in and was edited, unknown fields and all.</summary>
    static async Task<IResult> ExportAsync(Guid meal, MealBook book, CancellationToken stop) =>
        await book.OpenAsync(meal, stop) is { } kept ? File(kept.Row.Document, kept.Row.Name) : Results.NotFound();

    static async Task<IResult> ExportPlanAsync(Guid meal, MealBook book, PlanningDesk desk, CancellationToken stop) =>
        await book.OpenAsync(meal, stop) is { } kept && await desk.LatestAsync(kept.Row, kept.Meal, stop) is { } latest
            ? File(PlanFile.Write(latest.Plan, kept.Meal), $"{kept.Row.Name} plan")
            : Results.NotFound();

    static IResult File(string json, string name) => Results.File(Encoding.UTF8.GetBytes(json), "application/json", $"{FileNames.Of(name)}.json");
}
