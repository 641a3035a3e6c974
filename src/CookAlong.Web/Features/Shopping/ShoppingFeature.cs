using System.Text.Json;
using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Household;
using CookAlong.Web.Features.Live.Line;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.SignalR;

namespace CookAlong.Web.Features.Shopping;

/// <param name="CommandId">The screen's own; the same tap sent again carries the same.</param>
public sealed record ShoppingRequest(Guid CommandId, JsonElement Command);

public sealed record ShoppingNews(long Sequence);

/// <summary>The shopping page, its fragment and its taps. A live page: no circuit, for phones lose the house's network in a shop.</summary>
public static class ShoppingFeature
{
    public static IServiceCollection AddShopping(this IServiceCollection services) => services.AddSingleton<ShoppingBook>().AddSingleton<ShoppingDoor>();

    public static string GroupOf(Guid meal) => $"shopping {meal}";

    public static void MapShopping(this WebApplication app)
    {
        var list = app.MapGroup("/meals/{meal:guid}/shopping").RequireAuthorization();
        list.MapGet("", (HttpContext http, Guid meal, ShoppingBook book, ShoppingDoor door, TimeProvider time) =>
            ShowAsync(http, meal, book, door, time, view => new RazorComponentResult<ShoppingPage>(new { View = view })));
        list.MapGet("/part", (HttpContext http, Guid meal, ShoppingBook book, ShoppingDoor door, TimeProvider time) =>
            ShowAsync(http, meal, book, door, time, view => Part(http, view)));
        list.MapPost("/taps", TapAsync);

        // A run's screens know their run and not its meal.
        app.MapGet("/cook/{run:guid}/shopping", async (Guid run, ShoppingDoor door) =>
            await door.MealOfAsync(new RunId(run)) is { } meal ? Results.Redirect($"/meals/{meal}/shopping") : Results.NotFound()).RequireAuthorization(HouseholdFeature.InRunPolicy);
    }

    static async Task<IResult> ShowAsync(HttpContext http, Guid meal, ShoppingBook book, ShoppingDoor door, TimeProvider time, Func<ShoppingView, IResult> show)
    {
        var visitor = Visitor.Of(http.User)!;
        return await door.LetsInAsync(visitor, meal) && await book.OfAsync(meal, http.RequestAborted) is { } kept
            ? show(new ShoppingView(kept, visitor.IsHost, time.GetUtcNow()))
            : Results.NotFound();
    }

    static IResult Part(HttpContext http, ShoppingView view)
    {
        var tag = $"\"{view.Kept.Tag}\"";
        http.Response.Headers.ETag = tag;
        http.Response.Headers.CacheControl = "private, no-cache";
        return http.Request.Headers.IfNoneMatch.Contains(tag) ? Results.StatusCode(StatusCodes.Status304NotModified) : new RazorComponentResult<ShoppingPart>(new { View = view });
    }

    static async Task<IResult> TapAsync(HttpContext http, Guid meal, ShoppingRequest request, ShoppingBook book, ShoppingDoor door, IHubContext<LiveHub> hub)
    {
        var visitor = Visitor.Of(http.User)!;
        if (!await door.LetsInAsync(visitor, meal))
        {
            return Results.NotFound();
        }

        if (ShoppingTapJson.Read(request.Command) is not { } tap)
        {
            return Results.Ok(new TapAnswer(false, 0, ShoppingWords.NotAList));
        }

        var sequence = await book.KeepAsync(meal, request.CommandId, visitor.Person, tap, http.RequestAborted);
        await hub.Clients.Group(GroupOf(meal)).SendAsync("Shopping", new ShoppingNews(sequence), http.RequestAborted);
        return Results.Ok(new TapAnswer(true, sequence, null));
    }
}
