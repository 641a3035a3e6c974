using System.Text.Json.Nodes;
using CookAlong.Domain.Debrief.Learning;
using CookAlong.Web.Features.Household;
using Microsoft.AspNetCore.Http.HttpResults;

namespace CookAlong.Web.Features.Debrief;

/// <summary>Everything that was learned: listed, taken away as JSON, and deleted on one page.</summary>
static class LearnedEndpoints
{
    public static void MapLearned(this WebApplication app)
    {
        var learned = app.MapGroup("/learned").RequireAuthorization(HouseholdFeature.HostPolicy);
        learned.MapGet("", async (LearnedTimes times, CancellationToken stop) =>
        {
            var meals = await times.MealsAsync(stop);
            var pace = new HouseholdPace(meals.SelectMany(meal => meal.Timings));
            return new RazorComponentResult<LearnedPage>(new { Used = await times.UsedAsync(stop), Meals = meals, pace.Kinds, pace.People });
        });
        learned.MapGet("/file", async (LearnedTimes times, CancellationToken stop) =>
            Results.Text(await JsonAsync(times, stop), "application/json"));

        learned.MapPost("/delete", DeleteAsync);
    }

    /// <summary>Fields "dish" and "text" name a step that is planned otherwise, "run" a meal that taught, "all" everything.</summary>
    static async Task<IResult> DeleteAsync(IFormCollection form, LearnedTimes times, CancellationToken stop)
    {
        var deed = form.ContainsKey("dish") && form.ContainsKey("text") ? times.ForgetAsync(new StepKey(form["dish"].ToString(), form["text"].ToString()), stop)
            : Guid.TryParse(form["run"], out var run) ? times.ForgetMealAsync(run, stop)
            : form.ContainsKey("all") ? times.ForgetAllAsync(stop)
            : null;
        if (deed is null)
        {
            return Results.BadRequest();
        }

        await deed;
        return Results.Redirect("/learned");
    }

    static async Task<string> JsonAsync(LearnedTimes times, CancellationToken stop)
    {
        static JsonObject Pace(Pace pace) => new() { ["name"] = pace.Name, ["timesAsWritten"] = Math.Round(pace.Factor, 3), ["timings"] = pace.Timings, ["meals"] = pace.Meals };
        var timings = await times.TimingsAsync(stop);
        var pace = new HouseholdPace(timings);
        return new JsonObject
        {
            ["format"] = "cookalong-learned/1",
            ["used"] = new JsonArray([.. (await times.UsedAsync(stop)).Select(row => new JsonObject
            {
                ["dish"] = row.DishName,
                ["knownBy"] = row.Dish,
                ["step"] = row.Text,
                ["timesAsWritten"] = new JsonObject { ["least"] = row.Least, ["likely"] = row.Likely, ["most"] = row.Most },
                ["meals"] = row.Meals,
                ["acceptedAt"] = DateTimeOffset.FromUnixTimeMilliseconds(row.AcceptedAt).UtcDateTime,
            })]),
            ["kindsOfWork"] = new JsonArray([.. pace.Kinds.Select(Pace)]),
            ["people"] = new JsonArray([.. pace.People.Select(Pace)]),
            ["timings"] = new JsonArray([.. timings.Select(timing => new JsonObject
            {
                ["run"] = timing.Run.ToString(),
                ["dish"] = timing.Step.Dish,
                ["step"] = timing.Step.Text,
                ["person"] = timing.Person,
                ["writtenMinutes"] = timing.Written.Likely,
                ["minutes"] = Math.Round(timing.Minutes, 2),
            })]),
        }.ToJsonString(new() { WriteIndented = true });
    }
}
