using CookAlong.Web.Data;
using CookAlong.Web.Features.Api.Tokens;
using CookAlong.Web.Features.Household;
using CookAlong.Web.Features.Household.Audit;
using CookAlong.Web.Features.Live.Line;
using CookAlong.Web.Features.Shopping;
using Microsoft.AspNetCore.SignalR;

namespace CookAlong.Web.Features.Api;

/// <param name="Sequence">Of the last tap; 0 = nobody has tapped.</param>
/// <param name="Currency">Of the prices, ISO 4217; "" = nobody has chosen one.</param>
/// <param name="Open">How many lines are still to be bought.</param>
public sealed record ShoppingJson(long Sequence, string Currency, int Open, IReadOnlyList<AisleJson> Aisles);

public sealed record AisleJson(string Aisle, IReadOnlyList<ShoppingLineJson> Lines);

/// <param name="Line">By which taps name it.</param>
/// <param name="Amount">"1.4 kg"; "" when nobody says how much. A tick names it, so that more wanted later opens the line again.</param>
/// <param name="Mark">open, bought or cupboard (it is at home).</param>
public sealed record ShoppingLineJson(string Line, string Name, string Amount, string? Note, string Mark, decimal? Price, bool IsExtra);

/// <summary>A meal's shopping list and the taps on it.</summary>
static class ShoppingApi
{
    public static void MapShoppingApi(this RouteGroupBuilder api)
    {
        var list = api.MapGroup("/meals/{meal:guid}/shopping").WithTags("Shopping");
        list.MapGet("", GetAsync).Needs(ApiScope.Shopping).WithSummary("The list, by aisle").Produces<ShoppingJson>();
        list.MapPost("/commands", TapAsync).Needs(ApiScope.Shopping).WithSummary("Tick a line off, or change the list otherwise")
            .WithDescription("""{"commandId": UUID, "command": {"kind": "mark", "line": LINE, "as": "bought", "amount": AMOUNT}}""").Produces<TapAnswer>();
    }

    static async Task<IResult> GetAsync(HttpContext http, Guid meal, ShoppingBook book, TimeProvider time)
    {
        if (await book.TagAsync(meal, http.RequestAborted) is not { } tag || await book.OfAsync(meal, http.RequestAborted) is not { } kept)
        {
            return ApiProblem.NotFound.Answer();
        }

        http.Response.Headers.ETag = tag;
        http.Response.Headers.CacheControl = "private, no-cache";
        if (http.Request.Headers.IfNoneMatch.Contains(tag))
        {
            return Results.StatusCode(StatusCodes.Status304NotModified);
        }

        var view = new ShoppingView(kept, IsHost: true, time.GetUtcNow());
        return Results.Ok(new ShoppingJson(kept.Sequence, kept.State.Currency, view.Open,
        [
            .. view.Aisles.Select(one => new AisleJson(ShoppingTapJson.Name(one.Aisle),
                [.. one.Lines.Select(line => new ShoppingLineJson(line.Key, line.Name, line.Amount, line.Note, ShoppingTapJson.Name(line.Mark), line.Price, line.IsExtra))])),
        ]));
    }

    static async Task<IResult> TapAsync(HttpContext http, Guid meal, ShoppingRequest request, ShoppingBook book, AuditLog audit, IHubContext<LiveHub> hub)
    {
        if (ShoppingTapJson.Read(request.Command) is not { } tap)
        {
            return ApiProblem.BadCommand.Answer();
        }

        if (!tap.IsSound)
        {
            return ApiProblem.ListRefused.Answer(ShoppingWords.Unsound(tap));
        }

        if (await book.KeepAsync(meal, request.CommandId, Visitor.Of(http.User)!.Person, tap, http.RequestAborted) is not { } outcome)
        {
            return ApiProblem.NotFound.Answer();
        }

        if (outcome.Refusal is { } why)
        {
            return ApiProblem.ListRefused.Answer(why);
        }

        if (ShoppingWords.Setting(tap) is { } setting)
        {
            await audit.WriteAsync(http, AuditDeed.SettingsChanged, setting);
        }

        // It is kept, so the screens are told even if whoever sent it has gone.
        await hub.Clients.Group(ShoppingFeature.GroupOf(meal)).SendAsync("Shopping", new ShoppingNews(outcome.Sequence), CancellationToken.None);
        return Results.Ok(new TapAnswer(true, outcome.Sequence, null));
    }
}
