using System.Collections.Immutable;
using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Household;
using CookAlong.Web.Features.Live.Runs;
using Microsoft.AspNetCore.Http.HttpResults;

namespace CookAlong.Web.Features.Live.More;

/// <summary>The host's page of dishes that can still be cooked as well.</summary>
static class MoreEndpoints
{
    public static void MapMoreDishes(this WebApplication app)
    {
        var cook = app.MapGroup("/cook/{run:guid}").RequireAuthorization(HouseholdFeature.InRunPolicy);
        cook.MapGet("/more", (HttpContext http, Guid run, LiveViews views, LiveRuns runs, MoreDishes more) =>
            AnswerAsync(http, run, views, runs, more, (view, dishes) => new RazorComponentResult<MorePage>(new { View = view, Dishes = dishes })));
        cook.MapGet("/more-part", (HttpContext http, Guid run, LiveViews views, LiveRuns runs, MoreDishes more) =>
            AnswerAsync(http, run, views, runs, more, (view, dishes) => new RazorComponentResult<MorePart>(new { View = view, Dishes = dishes })));
    }

    static async Task<IResult> AnswerAsync(HttpContext http, Guid id, LiveViews views, LiveRuns runs, MoreDishes more, Func<LiveView, ImmutableArray<MoreDish>, IResult> answer)
    {
        var run = new RunId(id);
        if (await views.OfAsync(run, http.User) is not { IsHost: true } view || await runs.FindAsync(run) is not { } live)
        {
            return Results.NotFound();
        }

        http.Response.Headers.CacheControl = "no-store";
        return answer(view, await more.OfAsync(live.Current, view.Board.At, http.RequestAborted));
    }
}
