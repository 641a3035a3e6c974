using System.Security.Claims;
using CookAlong.Domain.Runs;
using CookAlong.Domain.Runs.Rehearsing;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Household;
using CookAlong.Web.Features.Live.Line;
using CookAlong.Web.Features.Live.Runs;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Features.Plans;
using CookAlong.Web.Features.Settings;
using Microsoft.AspNetCore.Mvc;

namespace CookAlong.Web.Features.Live;

static class LiveEndpoints
{
    public static void MapLiveEndpoints(this WebApplication app)
    {
        // The form binding makes antiforgery look at it.
        app.MapPost("/meals/{meal:guid}/runs", (HttpContext http, Guid meal, MealBook book, PlanningDesk desk, EventLog log, LiveRuns runs, HouseholdRegion region, [FromForm] string? _) =>
            StartAsync(http, meal, rate: null, book, desk, log, runs, region)).RequireAuthorization(HouseholdFeature.HostPolicy);
        app.MapPost("/meals/{meal:guid}/rehearsals", (HttpContext http, Guid meal, MealBook book, PlanningDesk desk, EventLog log, LiveRuns runs, HouseholdRegion region, [FromForm] int rate) =>
            rate is < RunClock.Slowest or > RunClock.Fastest ? Task.FromResult(Results.BadRequest()) : StartAsync(http, meal, rate, book, desk, log, runs, region)).WithMetadata(new Heavy()).RequireAuthorization(HouseholdFeature.HostPolicy);
        var cook = app.MapGroup("/cook/{run:guid}").RequireAuthorization(HouseholdFeature.InRunPolicy);
        cook.MapPost("/taps", TapAsync);
        cook.MapGet("/calls", CallsAsync);
    }

    /// <summary>Begins the meal's run, or goes to the one that is going on: a host who taps twice has one kitchen, not two.</summary>
    /// <param name="rate">How fast a rehearsal is to run; null = it is cooked. One does not stand in the other's way.</param>
    static async Task<IResult> StartAsync(HttpContext http, Guid meal, int? rate, MealBook book, PlanningDesk desk, EventLog log, LiveRuns runs, HouseholdRegion region)
    {
        if (await log.UnfinishedAsync(meal, rate is not null, http.RequestAborted) is { } going)
        {
            return Results.Redirect($"/cook/{going}");
        }

        if (await book.OpenAsync(meal, http.RequestAborted) is not { Row: var row } opened)
        {
            return Results.NotFound();
        }

        if (await desk.LatestAsync(row, opened.Meal, http.RequestAborted) is not { IsCurrent: true, Plan: { Status: not Domain.Planning.PlanStatus.None } plan })
        {
            // Without a plan of the meal as it is now there is nothing to cook by; its page says so and makes one.
            return Results.Redirect($"/meals/{meal}/plan");
        }

        var host = Visitor.Of(http.User)!;
        var live = await runs.StartAsync(meal, opened.Meal, plan, host.Person, http.User.FindFirstValue(ClaimTypes.Name) ?? "Host", rate, opened.Written, (await region.AskAsync(http.RequestAborted)).Region);
        return Results.Redirect($"/cook/{live.Current.Id}");
    }

    static async Task<IResult> TapAsync(HttpContext http, Guid run, TapRequest tap, IncomingTaps taps) =>
        tap.RunId == run
            ? Results.Ok(await taps.SendAsync(new RunId(run), Visitor.Of(http.User)!, tap))
            : Results.BadRequest();

    /// <summary>The same as entering by the socket says, for a screen that cannot open one.</summary>
    static async Task<IResult> CallsAsync(HttpContext http, Guid run, LiveViews views, LiveRuns runs, RunClocks clocks)
    {
        var id = new RunId(run);
        if (await views.OfAsync(id, http.User) is not { } view || await runs.FindAsync(id) is not { } live)
        {
            return Results.NotFound();
        }

        http.Response.Headers.CacheControl = "no-store";
        return Results.Ok(new Entered(
            view.Board.Sequence, clocks.Now(id).ToUnixTimeMilliseconds(), Wire.Calls(live.Current, view.Board), view.Person.Value, Wire.Name(view.Role)));
    }
}
