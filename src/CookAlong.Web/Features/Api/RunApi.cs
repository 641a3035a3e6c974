using System.Security.Claims;
using CookAlong.Domain.Planning;
using CookAlong.Domain.Runs;
using CookAlong.Domain.Runs.Rehearsing;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Api.Tokens;
using CookAlong.Web.Features.Household;
using CookAlong.Web.Features.Live.Line;
using CookAlong.Web.Features.Live.Runs;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Features.Plans;
using CookAlong.Web.Features.Settings;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Features.Api;

/// <param name="Rate">How fast a rehearsal is to run, 1 to 120; null = the meal is cooked.</param>
public sealed record StartRequest(int? Rate);

/// <param name="Calls">Every call of the run that is not past and answered; ring for one at its time by yourself.</param>
public sealed record CallsJson(long Sequence, long ServerNow, IReadOnlyList<WireCall> Calls);

/// <summary>What is cooked: start it, look at it, tap in it.</summary>
static class RunApi
{
    public static void MapRunApi(this RouteGroupBuilder api)
    {
        api.MapGet("/runs", ListAsync).WithTags("Runs")
            .Needs(ApiScope.RunsRead).WithSummary("All runs, the latest first").Produces<RunLine[]>();
        api.MapPost("/meals/{meal:guid}/runs", StartAsync).WithTags("Runs")
            .Needs(ApiScope.RunsWrite).WithSummary("Start cooking a meal by its latest plan, or rehearse it")
            .WithDescription("Where it is cooked already, that run is the answer (200), so that to start twice is to start once.").Produces<RunLine>().Produces<RunLine>(201);

        var run = api.MapGroup("/runs/{run:guid}").WithTags("Runs");
        run.MapGet("", BoardAsync).Needs(ApiScope.RunsRead).WithSummary("The board as it is at this moment").Produces<BoardJson>();
        run.MapGet("/calls", CallsAsync).Needs(ApiScope.RunsRead).WithSummary("The schedule of calls").Produces<CallsJson>();
        run.MapPost("/commands", SendAsync).Needs(ApiScope.RunsWrite).WithSummary("Send a command, in the shape of the live line")
            .WithDescription("The same commandId sent again does nothing again. A refusal is a problem of the type 'refused' with the reason as its detail.").Produces<TapAnswer>();
        run.MapReadingApi();
    }

    static async Task<IResult> ListAsync(IDbContextFactory<CookAlongDb> databases, CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        return Results.Ok(await db.Set<RunRow>().AsNoTracking().OrderByDescending(row => row.Began)
            .Select(row => new RunLine(row.Id, row.Meal, row.Name, row.Began, row.Ended, row.Rate)).ToListAsync(stop));
    }

    static async Task<IResult> StartAsync(
        HttpContext http, Guid meal, StartRequest? asked, MealBook book, PlanningDesk desk, EventLog log, LiveRuns runs, HouseholdRegion region, IDbContextFactory<CookAlongDb> databases)
    {
        var (rate, stop) = (asked?.Rate, http.RequestAborted);
        if (rate is < RunClock.Slowest or > RunClock.Fastest)
        {
            return ApiProblem.BadRequest.Answer($"A rehearsal's rate is {RunClock.Slowest} to {RunClock.Fastest}.");
        }

        var (going, status) = (await log.UnfinishedAsync(meal, rate is not null, stop), StatusCodes.Status200OK);
        if (going is null)
        {
            if (await book.OpenAsync(meal, stop) is not { } kept)
            {
                return ApiProblem.NotFound.Answer();
            }

            if (await desk.LatestAsync(kept.Row, kept.Meal, stop) is not { IsCurrent: true, Plan: { Status: not PlanStatus.None } plan })
            {
                return ApiProblem.NoPlan.Answer();
            }

            var live = await runs.StartAsync(meal, kept.Meal, plan, Visitor.Of(http.User)!.Person, NameOf(http), rate, kept.Written, (await region.AskAsync(stop)).Region);
            (going, status) = (live.Current.Id, StatusCodes.Status201Created);
        }

        await using var db = await databases.CreateDbContextAsync(stop);
        var row = await db.Set<RunRow>().AsNoTracking().SingleAsync(one => one.Id == going.Value.Value, stop);
        http.Response.Headers.Location = $"{http.Request.PathBase}{ApiFeature.Root}/runs/{row.Id}";
        return Results.Json(new RunLine(row.Id, row.Meal, row.Name, row.Began, row.Ended, row.Rate), statusCode: status);
    }

    static async Task<IResult> BoardAsync(HttpContext http, Guid run, LiveRuns runs, Boards boards, ReplanOffers offers)
    {
        http.Response.Headers.CacheControl = "no-store";
        return await runs.FindAsync(new RunId(run)) is { Current: var current }
            ? Results.Ok(BoardJson.Of(current, boards.Of(current), offers.Of(current)?.Id))
            : ApiProblem.NotFound.Answer();
    }

    static async Task<IResult> CallsAsync(HttpContext http, Guid run, LiveRuns runs, Boards boards, RunClocks clocks)
    {
        http.Response.Headers.CacheControl = "no-store";
        return await runs.FindAsync(new RunId(run)) is { Current: var current }
            ? Results.Ok(new CallsJson(current.Sequence, clocks.Now(current.Id).ToUnixTimeMilliseconds(), Wire.Calls(current, boards.Of(current))))
            : ApiProblem.NotFound.Answer();
    }

    static async Task<IResult> SendAsync(HttpContext http, Guid run, TapRequest tap, LiveRuns runs, IncomingTaps taps) =>
        tap.RunId != run ? ApiProblem.BadRequest.Answer("The runId in the body is not the run in the address.")
        : tap.CommandId == Guid.Empty ? ApiProblem.BadRequest.Answer("A command needs a commandId of its own: a new UUID.")
        : await AnswerAsync(http, new RunId(run), tap, runs, taps);

    /// <summary>Sends it in the host's name, who joins the run by it as they would by opening its board.</summary>
    internal static async Task<IResult> AnswerAsync(HttpContext http, RunId run, TapRequest tap, LiveRuns runs, IncomingTaps taps)
    {
        var visitor = Visitor.Of(http.User)!;
        if (await runs.FindAsync(run) is not { } live)
        {
            return ApiProblem.NotFound.Answer();
        }

        await taps.AdmitAsync(live, visitor, NameOf(http));
        var answer = await taps.SendAsync(run, visitor, tap);
        return answer.Accepted ? Results.Ok(answer) : ApiProblem.Refused.Answer(answer.Reason, sequence: answer.Sequence);
    }

    static string NameOf(HttpContext http) => http.User.FindFirstValue(ClaimTypes.Name)!;
}
