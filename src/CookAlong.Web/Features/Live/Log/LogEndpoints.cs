using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Nodes;
using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Household;
using CookAlong.Web.Shared;
using CsvHelper;
using Microsoft.AspNetCore.Http.HttpResults;

namespace CookAlong.Web.Features.Live.Log;

/// <summary>The log as a page, and to take away as JSON and as a table.</summary>
static class LogEndpoints
{
    public static void MapRunLog(this WebApplication app)
    {
        var cook = app.MapGroup("/cook/{run:guid}").RequireAuthorization(HouseholdFeature.InRunPolicy);
        cook.MapGet("/log", (HttpContext http, Guid run, LiveViews views, RunLog log) =>
            AnswerAsync(http, run, views, log, (view, lines) => new RazorComponentResult<LogPage>(new { View = view, Lines = lines })));
        cook.MapGet("/log-part", (HttpContext http, Guid run, LiveViews views, RunLog log) =>
            AnswerAsync(http, run, views, log, (view, lines) => new RazorComponentResult<LogPart>(new { View = view, Lines = lines })));
        cook.MapGet("/log.json", (HttpContext http, Guid run, LiveViews views, RunLog log) =>
            AnswerAsync(http, run, views, log, (view, lines) => Results.Text(Json(view, lines), "application/json"))).WithMetadata(new Heavy());
        cook.MapGet("/log.csv", (HttpContext http, Guid run, LiveViews views, RunLog log) =>
            AnswerAsync(http, run, views, log, (view, lines) => Results.File(Csv(view, lines), "text/csv; charset=utf-8", $"{view.Title(run.ToString())}.csv".Replace(": ", "-", StringComparison.Ordinal)))).WithMetadata(new Heavy());
    }

    static async Task<IResult> AnswerAsync(HttpContext http, Guid run, LiveViews views, RunLog log, Func<LiveView, ImmutableArray<LogLine>, IResult> answer)
    {
        if (await views.OfAsync(new RunId(run), http.User) is not { } view)
        {
            return Results.NotFound();
        }

        http.Response.Headers.CacheControl = "no-store";
        return answer(view, await log.OfAsync(view, http.RequestAborted));
    }

    static string Json(LiveView view, ImmutableArray<LogLine> lines) => new JsonObject
    {
        ["format"] = "cookalong-log/1",
        ["run"] = view.Run.ToString(),
        ["meal"] = view.Meal.Name,
        ["rehearsalRate"] = view.Rate,
        ["events"] = new JsonArray([.. lines.Select(line => new JsonObject
        {
            ["sequence"] = line.Logged.Sequence,
            ["at"] = line.Logged.At.UtcDateTime,
            ["by"] = line.By,
            ["kind"] = line.Kind,
            ["event"] = JsonNode.Parse(line.Document),
            ["sentence"] = line.Sentence,
        })]),
    }.ToJsonString(new() { WriteIndented = true });

    static byte[] Csv(LiveView view, ImmutableArray<LogLine> lines)
    {
        using var bytes = new MemoryStream();
        using (var writer = new StreamWriter(bytes, new System.Text.UTF8Encoding(encoderShouldEmitUTF8Identifier: true)))
        using (var csv = new CsvWriter(writer, SafeCsv.Table))
        {
            csv.WriteRecords(lines.Select(line => new
            {
                line.Logged.Sequence,
                At = TimeZoneInfo.ConvertTime(line.Logged.At, view.Meal.TimeZone).ToString("yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture),
                By = line.By ?? "",
                line.Kind,
                What = line.Sentence,
            }));
        }

        return bytes.ToArray();
    }
}
