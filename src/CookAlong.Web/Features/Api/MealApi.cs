using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using CookAlong.Web.Features.Api.Tokens;
using CookAlong.Web.Features.Meals;

namespace CookAlong.Web.Features.Api;

/// <param name="Version">Grows with each change; "\"3\"" is its ETag.</param>
/// <param name="ChangedUtc">Milliseconds since the Unix epoch, as every instant here.</param>
public sealed record MealLine(Guid Id, string Name, int Version, long ChangedUtc);

/// <summary>Meals as the files that they are.</summary>
static class MealApi
{
    public static void MapMealApi(this RouteGroupBuilder api)
    {
        var meals = api.MapGroup("/meals").WithTags("Meals");
        meals.MapGet("", async (MealBook book, CancellationToken stop) => Results.Ok((await book.AllAsync(stop)).Select(Line)))
            .Needs(ApiScope.MealsRead).WithSummary("All meals, the latest changed first").Produces<MealLine[]>();
        meals.MapGet("/{meal:guid}", GetAsync)
            .Needs(ApiScope.MealsRead).WithSummary("A meal as its meal file, unknown fields and all").WithDescription("The answer's ETag is the meal's version.").Produces<JsonObject>();
        meals.MapPut("/{meal:guid}", PutAsync)
            .Needs(ApiScope.MealsWrite).WithSummary("Add a meal under an id of your own, or replace the one that is there")
            .WithDescription("The body is a meal file. To replace, send the ETag of the meal that you got in If-Match.")
            .Accepts<JsonObject>("application/json").Produces<MealLine>().Produces<MealLine>(201);
        meals.MapDelete("/{meal:guid}", DeleteAsync)
            .Needs(ApiScope.MealsWrite).WithSummary("Delete a meal with its plans and its shopping list").Produces(204);
    }

    static async Task<IResult> GetAsync(HttpContext http, Guid meal, MealBook book)
    {
        if (await book.OpenAsync(meal, http.RequestAborted) is not { } kept)
        {
            return ApiProblem.NotFound.Answer();
        }

        http.Response.Headers.ETag = Tag(kept);
        http.Response.Headers.CacheControl = "private, no-cache";
        return http.Request.Headers.IfNoneMatch.Contains(Tag(kept)) ? Results.StatusCode(StatusCodes.Status304NotModified) : Results.Text(kept.Row.Document, "application/json", Encoding.UTF8);
    }

    static async Task<IResult> PutAsync(HttpContext http, Guid meal, MealBook book)
    {
        if (!http.Request.HasJsonContentType())
        {
            return ApiProblem.NotJson.Answer();
        }

        if (await TextAsync(http) is not { } file)
        {
            return ApiProblem.BadRequest.Answer("The body is not UTF-8.");
        }

        var wanted = http.Request.Headers.IfMatch.ToString();
        if (await book.OpenAsync(meal, http.RequestAborted) is not { } kept)
        {
            return wanted.Length > 0 ? ApiProblem.Changed.Answer("There is no such meal any more.") : Answer(http, await book.AddAsync(meal, file, fromNow: false, http.RequestAborted), StatusCodes.Status201Created);
        }

        return wanted.Length == 0 ? ApiProblem.NoVersion.Answer()
            : wanted != Tag(kept) ? ApiProblem.Changed.Answer()
            : Answer(http, await book.PutBackAsync(kept, file, http.RequestAborted), StatusCodes.Status200OK);
    }

    static async Task<IResult> DeleteAsync(HttpContext http, Guid meal, MealBook book)
    {
        if (await book.OpenAsync(meal, http.RequestAborted) is null)
        {
            return ApiProblem.NotFound.Answer();
        }

        await book.DeleteAsync(meal, http.RequestAborted);
        return Results.NoContent();
    }

    static IResult Answer(HttpContext http, MealEdit edit, int status)
    {
        switch (edit)
        {
            case MealEdit.Kept { Meal: var kept }:
                http.Response.Headers.ETag = Tag(kept);
                if (status == StatusCodes.Status201Created)
                {
                    http.Response.Headers.Location = $"{http.Request.PathBase}{ApiFeature.Root}/meals/{kept.Row.Id}";
                }

                return Results.Json(Line(kept), statusCode: status);
            case MealEdit.Refused { Errors: var errors }:
                return ApiProblem.BadFile.Answer(errors: errors);
            case MealEdit.Outdated:
                return ApiProblem.Changed.Answer();
            default:
                throw new System.Diagnostics.UnreachableException($"An unknown outcome: {edit.GetType().Name}.");
        }
    }

    static async Task<string?> TextAsync(HttpContext http)
    {
        using var reader = new StreamReader(http.Request.Body, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true));
        try
        {
            return await reader.ReadToEndAsync(http.RequestAborted);
        }
        catch (DecoderFallbackException)
        {
            return null;
        }
    }

    static string Tag(KeptMeal meal) => string.Create(CultureInfo.InvariantCulture, $"\"{meal.Row.Version}\"");

    static MealLine Line(KeptMeal meal) => new(meal.Row.Id, meal.Row.Name, meal.Row.Version, meal.Row.ChangedAt);
}
