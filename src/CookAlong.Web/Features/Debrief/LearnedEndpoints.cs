using System.Text.Json.Nodes;
using CookAlong.Domain.Debrief.Learning;
using CookAlong.Web.Features.Debrief.Ovens;
using CookAlong.Web.Features.Debrief.Pictures;
using CookAlong.Web.Features.Household;
using CookAlong.Web.Features.Meals;
using Microsoft.AspNetCore.Http.HttpResults;

namespace CookAlong.Web.Features.Debrief;

/// <summary>Everything that was learned: listed, taken away as JSON, and deleted on one page.</summary>
static class LearnedEndpoints
{
    public static void MapLearned(this WebApplication app)
    {
        var learned = app.MapGroup("/learned").RequireAuthorization(HouseholdFeature.HostPolicy);
        learned.MapGet("", async (LearnedTimes times, LearnedOvens ovens, DebriefPhotos photos, EarlierMeals earlier, CancellationToken stop) =>
        {
            var meals = await times.MealsAsync(stop);
            var pace = new HouseholdPace(meals.SelectMany(meal => meal.Timings));
            return new RazorComponentResult<LearnedPage>(new { Used = await times.UsedAsync(stop), Meals = meals, Ovens = await ovens.AllAsync(stop), Photos = await photos.AllAsync(stop), HasInvented = await earlier.AreHereAsync(stop), pace.Kinds, pace.People });
        });
        learned.MapGet("/file", async (LearnedTimes times, LearnedOvens ovens, DebriefPhotos photos, CancellationToken stop) =>
            Results.Text(await JsonAsync(times, ovens, photos, stop), "application/json"));

        learned.MapPost("/delete", DeleteAsync);
    }

    /// <summary>Fields "dish" and "text" name a step that is planned otherwise, "run" a meal that taught, "photo" a picture, "invented" the demo's earlier meals, "all" everything.</summary>
    static async Task<IResult> DeleteAsync(IFormCollection form, LearnedTimes times, LearnedOvens ovens, DebriefPhotos photos, EarlierMeals earlier, CancellationToken stop)
    {
        var deed = form.ContainsKey("dish") && form.ContainsKey("text") ? times.ForgetAsync(new StepKey(form["dish"].ToString(), form["text"].ToString()), stop)
            : Guid.TryParse(form["run"], out var run) ? times.ForgetMealAsync(run, stop)
            : form.ContainsKey("invented") ? earlier.DeleteAsync(stop)
            : Guid.TryParse(form["photo"], out var photo) ? photos.DeleteAsync(photo, stop)
            : form.ContainsKey("all") ? AllAsync(times, ovens, photos, stop)
            : null;
        if (deed is null)
        {
            return Results.BadRequest();
        }

        await deed;
        return Results.Redirect("/learned");
    }

    static async Task AllAsync(LearnedTimes times, LearnedOvens ovens, DebriefPhotos photos, CancellationToken stop)
    {
        await times.ForgetAllAsync(stop);
        await ovens.ForgetAllAsync(stop);
        await photos.DeleteAllAsync(stop);
    }

    static async Task<string> JsonAsync(LearnedTimes times, LearnedOvens ovens, DebriefPhotos photos, CancellationToken stop)
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
            ["ovens"] = new JsonArray([.. (await ovens.AllAsync(stop)).Select(Oven)]),
            ["pictures"] = new JsonArray([.. (await photos.AllAsync(stop)).Select(photo => new JsonObject { ["run"] = photo.Run.ToString(), ["dish"] = photo.Dish, ["kind"] = photo.Kind, ["bytes"] = photo.Bytes, ["address"] = photo.Address })]),
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

    static JsonNode Oven(OvenSeen oven) => new JsonObject
    {
        ["name"] = oven.Name,
        ["plannedWith"] = oven.Accepted is { } used ? new JsonObject { ["heatUpPerMinute"] = used.HeatUpPerMinute, ["coolDownPerMinute"] = used.CoolDownPerMinute, ["readsHighBy"] = used.ReadsHighBy } : null,
        ["learned"] = new JsonObject
        {
            ["heatUpPerMinute"] = oven.Learned.HeatUpPerMinute?.Value,
            ["coolDownPerMinute"] = oven.Learned.CoolDownPerMinute?.Value,
            ["readsHighBy"] = oven.Learned.ReadsHighBy?.Value,
            ["recoveryMinutes"] = oven.Learned.RecoveryMinutes?.Value,
        },
        ["measured"] = new JsonArray([.. oven.Trials.Select(row => new JsonObject
        {
            ["began"] = DateTimeOffset.FromUnixTimeMilliseconds(row.Began).UtcDateTime,
            ["dial"] = row.Dial,
            ["readings"] = new JsonArray([.. row.Trial().Readings.Select(one => new JsonObject { ["minute"] = Math.Round(one.Minute, 2), ["celsius"] = one.Celsius })]),
        })]),
    };
}
