using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Household;
using CookAlong.Web.Features.Live.Line;
using CookAlong.Web.Features.Live.Outward;

namespace CookAlong.Web.Features.Live;

/// <summary>The board, the card and their fragments, rendered for whoever looks.</summary>
static class LivePages
{
    /// <summary>Time alone changes a board too (a step becomes due); a fragment is good for this long at the most.</summary>
    static readonly TimeSpan FragmentGoodFor = TimeSpan.FromSeconds(5);

    public static void MapLivePages(this WebApplication app)
    {
        var cook = app.MapGroup("/cook/{run:guid}").RequireAuthorization(HouseholdFeature.InRunPolicy);
        cook.MapGet("", (HttpContext http, Guid run, LiveViews views) => PageAsync(http, run, views, LiveMarkup.Board));
        cook.MapGet("/me", (HttpContext http, Guid run, LiveViews views) => PageAsync(http, run, views, LiveMarkup.Me));
        cook.MapGet("/wall", (HttpContext http, Guid run, LiveViews views) => PageAsync(http, run, views, LiveMarkup.Wall));
        cook.MapGet("/wall-part", (HttpContext http, Guid run, LiveViews views) => PartAsync(http, run, views, LiveMarkup.WallPart));
        cook.MapGet("/device", (HttpContext http, Guid run, LiveViews views, WaysOut ways) => DeviceAsync(http, run, views, ways));
        cook.MapGet("/board-part", (HttpContext http, Guid run, LiveViews views) => PartAsync(http, run, views, LiveMarkup.BoardPart));
        cook.MapGet("/me-part", (HttpContext http, Guid run, LiveViews views) => PartAsync(http, run, views, LiveMarkup.MePart));
    }

    static async Task<IResult> PageAsync(HttpContext http, Guid run, LiveViews views, Func<LiveView, IResult> page) =>
        await views.OfAsync(new RunId(run), http.User) is { } view ? page(view) : Results.NotFound();

    static async Task<IResult> DeviceAsync(HttpContext http, Guid run, LiveViews views, WaysOut ways) =>
        await views.OfAsync(new RunId(run), http.User) is { } view
            ? LiveMarkup.Device(view, await ways.OfAsync(view.Run, view.Person, http.RequestAborted))
            : Results.NotFound();

    static async Task<IResult> PartAsync(HttpContext http, Guid run, LiveViews views, Func<LiveView, IResult> part)
    {
        if (await views.OfAsync(new RunId(run), http.User) is not { } view)
        {
            return Results.NotFound();
        }

        var bucket = view.Board.At.Ticks / FragmentGoodFor.Ticks;
        var tag = $"\"{view.Board.Sequence}-{bucket}-{view.Offer?.Id:N}-{view.Screens.Mark}-{Wire.Unanswered(view.Board)}{(view.AreSpeakersAway ? "a" : "")}\"";
        http.Response.Headers.ETag = tag;
        http.Response.Headers.CacheControl = "private, no-cache";
        return http.Request.Headers.IfNoneMatch.Contains(tag) ? Results.StatusCode(StatusCodes.Status304NotModified) : part(view);
    }
}
