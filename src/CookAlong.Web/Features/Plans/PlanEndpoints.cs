using CookAlong.Domain;
using CookAlong.Domain.Planning;
using CookAlong.Web.Features.Household;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Features.Plans.Paper;
using Microsoft.AspNetCore.Http.HttpResults;

namespace CookAlong.Web.Features.Plans;

/// <summary>The plan to take away: on paper, and into a calendar.</summary>
public static class PlanEndpoints
{
    public static void MapPlans(this IEndpointRouteBuilder app)
    {
        var plans = app.MapGroup("/meals/{meal:guid}/plan").RequireAuthorization(HouseholdFeature.HostPolicy);
        plans.MapGet("/paper", PaperAsync).WithMetadata(new Heavy());
        plans.MapGet("/calendar.ics", CalendarAsync);
    }

    /// <param name="people">"1" = a page for each person too.</param>
    /// <param name="large">"1" = large type.</param>
    static async Task<IResult> PaperAsync(Guid meal, string? people, string? large, MealBook book, PlanningDesk desk, CancellationToken stop)
    {
        if (await book.OpenAsync(meal, stop) is not { } kept)
        {
            return Results.NotFound();
        }

        var path = $"/meals/{meal}/plan";
        return await desk.LatestAsync(kept.Row, kept.Meal, stop) is { Plan.Status: not PlanStatus.None } latest
            ? new RazorComponentResult<PaperPage>(new { kept.Meal, latest.Plan, latest.IsCurrent, PlanPath = path, HasPeople = people == "1", IsLarge = large == "1" })
            // Nothing to print yet: the plan's page says why and makes one.
            : Results.Redirect(path);
    }

    /// <param name="person">A helper's id; null = everybody.</param>
    static async Task<IResult> CalendarAsync(Guid meal, string? person, MealBook book, PlanningDesk desk, TimeProvider clock, CancellationToken stop)
    {
        if (await book.OpenAsync(meal, stop) is not { } kept
            || await desk.LatestAsync(kept.Row, kept.Meal, stop) is not { Plan.Status: not PlanStatus.None } latest)
        {
            return Results.NotFound();
        }

        var helper = kept.Meal.Helpers.FirstOrDefault(one => one.Id.Value == person);
        if (person is not null && helper is null)
        {
            return Results.NotFound();
        }

        var text = PlanCalendar.Write(kept.Meal, latest.Plan, $"{meal}", helper?.Id, clock.GetUtcNow());
        return Results.File(System.Text.Encoding.UTF8.GetBytes(text), "text/calendar; charset=utf-8", $"{FileNames.Of(helper is null ? kept.Row.Name : $"{kept.Row.Name} {helper.Name}")}.ics");
    }
}
