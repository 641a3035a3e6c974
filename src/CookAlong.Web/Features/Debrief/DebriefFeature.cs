using System.Globalization;
using CookAlong.Domain.Debrief;
using CookAlong.Domain.Planning;
using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Debrief.Again;
using CookAlong.Web.Features.Debrief.Ovens;
using CookAlong.Web.Features.Debrief.Pictures;
using CookAlong.Web.Features.Household;
using CookAlong.Web.Features.Live;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Features.Plans;
using Microsoft.AspNetCore.Http.HttpResults;

namespace CookAlong.Web.Features.Debrief;

/// <summary>Looking back on a run, what the household says of it, and what is learned from it. Pages without a circuit; their deeds are forms.</summary>
public static class DebriefFeature
{
    /// <summary>The verdicts by their stored names; "" is none.</summary>
    public static readonly IReadOnlyList<string> Verdicts = ["more", "less", "never", ""];

    const int LongestNote = 2_000;

    public static IServiceCollection AddDebrief(this IServiceCollection services) => services.AddSingleton<Debriefs>().AddSingleton<LearnedTimes>().AddSingleton<LearnedOvens>().AddSingleton<DebriefPhotos>().AddSingleton<LastTimes>();

    public static void MapDebrief(this WebApplication app)
    {
        var run = app.MapGroup("/cook/{run:guid}").RequireAuthorization(HouseholdFeature.InRunPolicy);
        run.MapGet("/debrief", (HttpContext http, Guid run, LiveViews views, Debriefs debriefs) =>
            AnswerAsync(http, run, views, debriefs, view => new RazorComponentResult<DebriefPage>(new { View = view })));
        run.MapGet("/debrief.json", (HttpContext http, Guid run, LiveViews views, Debriefs debriefs) =>
            AnswerAsync(http, run, views, debriefs, view => Results.Text(DebriefExport.Json(view), "application/json"))).WithMetadata(new Heavy());
        run.MapGet("/debrief.csv", (HttpContext http, Guid run, LiveViews views, Debriefs debriefs) =>
            AnswerAsync(http, run, views, debriefs, view => Results.File(DebriefExport.Csv(view), "text/csv; charset=utf-8", $"debrief-{run}.csv"))).WithMetadata(new Heavy());
        run.MapPost("/debrief/notes", NoteAsync).RequireAuthorization(HouseholdFeature.HostPolicy);
        run.MapPost("/debrief/learn", LearnAsync).RequireAuthorization(HouseholdFeature.HostPolicy);
        run.MapPictures();
        run.MapPost("/again", AgainAsync).RequireAuthorization(HouseholdFeature.HostPolicy);

        app.MapGet("/meals/{meal:guid}/debrief", async (Guid meal, Debriefs debriefs, CancellationToken stop) =>
            await debriefs.LastOfAsync(meal, stop) is { } last ? Results.Redirect($"/cook/{last}/debrief") : new RazorComponentResult<NotCookedPage>(new { Meal = meal }))
            .RequireAuthorization(HouseholdFeature.HostPolicy);
        app.MapGet("/meals/{meal:guid}/reminders.ics", RemindersAsync).RequireAuthorization(HouseholdFeature.HostPolicy);
        app.MapLearned();
        app.MapOvens();
    }

    /// <param name="problem">Why something was not done.</param>
    internal static IResult Page(DebriefView view, string problem, int status) => new RazorComponentResult<DebriefPage>(new { View = view, Problem = problem }) { StatusCode = status };

    static async Task<IResult> RemindersAsync(Guid meal, MealBook book, PlanningDesk desk, TimeProvider clock, CancellationToken stop)
    {
        if (await book.OpenAsync(meal, stop) is not { } kept)
        {
            return Results.NotFound();
        }

        var plan = await desk.LatestAsync(kept.Row, kept.Meal, stop) is { IsCurrent: true, Plan: { Status: not PlanStatus.None } current } ? current : null;
        var text = ReminderCalendar.Write(kept.Meal, Reminder.Of(kept.Meal, plan), $"{meal}", clock.GetUtcNow());
        return Results.File(System.Text.Encoding.UTF8.GetBytes(text), "text/calendar; charset=utf-8", $"{FileNames.Of($"{kept.Row.Name} reminders")}.ics");
    }

    static async Task<IResult> AnswerAsync(HttpContext http, Guid run, LiveViews views, Debriefs debriefs, Func<DebriefView, IResult> answer)
    {
        if (await views.OfAsync(new RunId(run), http.User) is not { } live)
        {
            return Results.NotFound();
        }

        if (!live.Board.IsOver)
        {
            return Results.Redirect($"/cook/{run}");
        }

        http.Response.Headers.CacheControl = "no-store";
        return answer(await debriefs.OfAsync(live, http.RequestAborted));
    }

    /// <summary>Fields "verdict-DISH" and "note-DISH", and what the page showed in "was-" each; the whole meal's have no dish. What is as it was shown is left as it is by now.</summary>
    static async Task<IResult> NoteAsync(HttpContext http, Guid run, IFormCollection form, LiveViews views, Debriefs debriefs)
    {
        if (await views.OfAsync(new RunId(run), http.User) is not { Board.IsOver: true, Rate: null } live)
        {
            return Results.NotFound();
        }

        var dishes = (await debriefs.OfAsync(live, http.RequestAborted)).Debrief.Meal.Dishes.Select(dish => dish.Id.Value).Append("");
        string? Changed(string field) => form[field].ToString().Trim() is var value && value == form[$"was-{field}"].ToString().Trim() ? null : value;
        var said = dishes.Select(dish => (Dish: dish, Verdict: Changed($"verdict-{dish}"), Note: Changed($"note-{dish}"))).ToArray();
        if (said.Any(one => (one.Verdict is { } verdict && !Verdicts.Contains(verdict)) || one.Note?.Length > LongestNote))
        {
            return Results.BadRequest();
        }

        await debriefs.SayAsync(run, said, http.RequestAborted);
        return Results.Redirect($"/cook/{run}/debrief#verdicts");
    }

    /// <summary>Field "step": takes what was learned of it from now on. With "back" it is planned as written again.</summary>
    static async Task<IResult> LearnAsync(HttpContext http, Guid run, IFormCollection form, LiveViews views, Debriefs debriefs, LearnedTimes times)
    {
        if (await views.OfAsync(new RunId(run), http.User) is not { Board.IsOver: true, Rate: null } live
            || (await debriefs.OfAsync(live, http.RequestAborted)).Lessons.FirstOrDefault(lesson => lesson.Step.Id.Value == form["step"]) is not { } lesson)
        {
            return Results.NotFound();
        }

        if (form.ContainsKey("back"))
        {
            await times.ForgetAsync(lesson.Learned.Step, http.RequestAborted);
        }
        else
        {
            await times.UseAsync(lesson, http.RequestAborted);
        }

        return Results.Redirect($"/cook/{run}/debrief#learned");
    }

    /// <summary>Field "day", as a date field sends it.</summary>
    static async Task<IResult> AgainAsync(HttpContext http, Guid run, IFormCollection form, LiveViews views, Debriefs debriefs, MealBook book)
    {
        if (await views.OfAsync(new RunId(run), http.User) is not { Board.IsOver: true, Rate: null } live
            || await debriefs.OfAsync(live, http.RequestAborted) is not { } view
            || await book.OpenAsync(view.Meal, http.RequestAborted) is not { } meal)
        {
            return Results.NotFound();
        }

        if (!DateOnly.TryParseExact(form["day"], "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day)
            || await book.AgainAsync(meal, day, http.RequestAborted) is not MealEdit.Kept(var again))
        {
            return Page(view, DebriefWords.NotThatDay, StatusCodes.Status400BadRequest);
        }

        await debriefs.NoteAgainAsync(again.Row.Id, run, http.RequestAborted);
        return Results.Redirect($"/meals/{again.Row.Id}");
    }
}
