using System.Text.Json;
using CookAlong.Domain.Runs;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Household;
using CookAlong.Web.Features.Household.Audit;
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
        list.MapGet("", PageAsync);
        list.MapGet("/part", PartAsync);
        list.MapPost("/taps", TapAsync);

        // A run's screens know their run and not its meal.
        app.MapGet("/cook/{run:guid}/shopping", async (Guid run, EventLog log) =>
            await log.MealOfAsync(new RunId(run)) is { } meal ? Results.Redirect($"/meals/{meal}/shopping") : Results.NotFound()).RequireAuthorization(HouseholdFeature.InRunPolicy);
    }

    static async Task<IResult> PageAsync(HttpContext http, Guid meal, ShoppingBook book, ShoppingDoor door, TimeProvider time)
    {
        var visitor = Visitor.Of(http.User)!;
        return await door.LetsInAsync(visitor, meal) && await book.OfAsync(meal, http.RequestAborted) is { } kept
            ? new RazorComponentResult<ShoppingPage>(new { View = new ShoppingView(kept, visitor.IsHost, time.GetUtcNow()) })
            : Results.NotFound();
    }

    static async Task<IResult> PartAsync(HttpContext http, Guid meal, ShoppingBook book, ShoppingDoor door, TimeProvider time)
    {
        var visitor = Visitor.Of(http.User)!;
        if (!await door.LetsInAsync(visitor, meal) || await book.TagAsync(meal, http.RequestAborted) is not { } tag)
        {
            return Results.NotFound();
        }

        http.Response.Headers.ETag = tag;
        http.Response.Headers.CacheControl = "private, no-cache";
        if (http.Request.Headers.IfNoneMatch.Contains(tag))
        {
            return Results.StatusCode(StatusCodes.Status304NotModified);
        }

        // A tap that comes between makes the list newer than its tag; the next look shows it once more.
        return await book.OfAsync(meal, http.RequestAborted) is { } kept
            ? new RazorComponentResult<ShoppingPart>(new { View = new ShoppingView(kept, visitor.IsHost, time.GetUtcNow()) })
            : Results.NotFound();
    }

    static async Task<IResult> TapAsync(HttpContext http, Guid meal, ShoppingRequest request, ShoppingBook book, ShoppingDoor door, AuditLog audit, IHubContext<LiveHub> hub)
    {
        var visitor = Visitor.Of(http.User)!;
        if (!await door.LetsInAsync(visitor, meal))
        {
            return Results.NotFound();
        }

        if (ShoppingTapJson.Read(request.Command) is not { } tap)
        {
            return Refuse(ShoppingWords.NotAList);
        }

        if (!tap.IsSound)
        {
            return Refuse(ShoppingWords.Unsound(tap));
        }

        if (ShoppingTapJson.SettingOf(tap) is not null && !visitor.IsHost)
        {
            return Refuse(ShoppingWords.HostSets);
        }

        if (await book.KeepAsync(meal, request.CommandId, visitor.Person, tap, http.RequestAborted) is not { } outcome)
        {
            return Results.NotFound();
        }

        if (outcome.Refusal is { } why)
        {
            return Refuse(why);
        }

        if (ShoppingWords.Setting(tap) is { } setting)
        {
            await audit.WriteAsync(http, AuditDeed.SettingsChanged, setting);
        }

        // It is kept, so the others are told even if this phone has gone.
        await hub.Clients.Group(GroupOf(meal)).SendAsync("Shopping", new ShoppingNews(outcome.Sequence), CancellationToken.None);
        return Results.Ok(new TapAnswer(true, outcome.Sequence, null));
    }

    static IResult Refuse(string why) => Results.Ok(new TapAnswer(false, 0, why));
}
