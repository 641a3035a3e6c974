using System.Text;
using CookAlong.Intake.PlanFiles;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Household;
using CookAlong.Web.Features.Plans;

namespace CookAlong.Web.Features.Meals;

/// <summary>Meals and plans as files, in and out.</summary>
public static class MealEndpoints
{
    /// <summary>Largest meal file taken in, in bytes: many times the largest feast.</summary>
    public const int LargestFile = 1024 * 1024;

    public static void MapMeals(this IEndpointRouteBuilder app)
    {
        var meals = app.MapGroup("/meals").RequireAuthorization(HouseholdFeature.HostPolicy);
        meals.MapGet("/{meal:guid}/file", ExportAsync);
        meals.MapGet("/{meal:guid}/plan/file", ExportPlanAsync);
        meals.MapPost("/import", ImportAsync);
    }

    /// <summary>The file as it came in and was edited, unknown fields and all.</summary>
    static async Task<IResult> ExportAsync(Guid meal, MealBook book, CancellationToken stop) =>
        await book.OpenAsync(meal, stop) is { } kept ? File(kept.Row.Document, kept.Row.Name) : Results.NotFound();

    static async Task<IResult> ExportPlanAsync(Guid meal, MealBook book, PlanningDesk desk, CancellationToken stop) =>
        await book.OpenAsync(meal, stop) is { } kept && await desk.LatestAsync(kept.Row, kept.Meal, stop) is { } latest
            ? File(PlanFile.Write(latest.Plan, kept.Meal), $"{kept.Row.Name} plan")
            : Results.NotFound();

    static async Task<IResult> ImportAsync(IFormFile file, MealBook book, CancellationToken stop)
    {
        if (file.Length > LargestFile)
        {
            return Results.Json(new { errors = new[] { MealUpload.TooLarge } }, statusCode: StatusCodes.Status413PayloadTooLarge);
        }

        using var reader = new StreamReader(file.OpenReadStream(), Encoding.UTF8);
        return await book.AddAsync(await reader.ReadToEndAsync(stop), fromNow: false, stop) switch
        {
            MealEdit.Kept(var kept) => Results.Created($"/meals/{kept.Row.Id}", new { id = kept.Row.Id, name = kept.Row.Name }),
            MealEdit.Refused(var errors) => Results.UnprocessableEntity(new { errors }),
            var other => throw new System.Diagnostics.UnreachableException($"taking a file in cannot be {other}"),
        };
    }

    static IResult File(string json, string name) => Results.File(Encoding.UTF8.GetBytes(json), "application/json", $"{FileName(name)}.json");

    /// <summary>Letters, digits and hyphens: good for every system, and nothing that a header or a shell would mind.</summary>
    static string FileName(string name)
    {
        var words = string.Concat(name.ToLowerInvariant().Select(letter => char.IsAsciiLetterOrDigit(letter) ? letter : '-'));
        return string.Join('-', words.Split('-', StringSplitOptions.RemoveEmptyEntries)) is { Length: > 0 } good ? good : "meal";
    }
}
