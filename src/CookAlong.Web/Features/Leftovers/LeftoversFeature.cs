using CookAlong.Domain.Runs;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Household;
using CookAlong.Web.Features.Meals;
using Microsoft.AspNetCore.Http.HttpResults;

namespace CookAlong.Web.Features.Leftovers;

/// <summary>What is left after the meal. The page itself is interactive; its labels and reminders are taken away whole.</summary>
public static class LeftoversFeature
{
    public static IServiceCollection AddLeftovers(this IServiceCollection services) => services.AddSingleton<LeftoverBook>();

    public static void MapLeftovers(this IEndpointRouteBuilder app)
    {
        var left = app.MapGroup("/meals/{meal:guid}/leftovers").RequireAuthorization(HouseholdFeature.HostPolicy);
        left.MapGet("/labels", async (Guid meal, LeftoverBook book, CancellationToken stop) =>
            await book.OfAsync(meal, stop) is { } kept ? new RazorComponentResult<LabelsPage>(new { Kept = kept }) : Results.NotFound());
        left.MapGet("/reminders.ics", async (Guid meal, LeftoverBook book, TimeProvider time, CancellationToken stop) =>
            await book.OfAsync(meal, stop) is { } kept
                ? Results.File(System.Text.Encoding.UTF8.GetBytes(LeftoverCalendar.Write(kept, time.GetUtcNow())), "text/calendar; charset=utf-8", $"{FileNames.Of(kept.Meal.Row.Name)}-leftovers.ics")
                : Results.NotFound());

        // A run's screens know their run and not its meal.
        app.MapGet("/cook/{run:guid}/leftovers", async (Guid run, EventLog log) =>
            await log.MealOfAsync(new RunId(run)) is { } meal ? Results.Redirect($"/meals/{meal}/leftovers") : Results.NotFound()).RequireAuthorization(HouseholdFeature.HostPolicy);
    }
}
