using System.Globalization;
using CookAlong.Web.Features.Household;
using Microsoft.AspNetCore.Http.HttpResults;

namespace CookAlong.Web.Features.Debrief.Ovens;

/// <summary>The household's ovens: what was learned of them, and the guided half hour that measures one. The server keeps the time, so a phone may sleep meanwhile.</summary>
static class OvenEndpoints
{
    /// <summary>°C that a thermometer in an oven may show.</summary>
    const double Coldest = -10, Hottest = 350;

    public static void MapOvens(this WebApplication app)
    {
        var ovens = app.MapGroup("/ovens").RequireAuthorization(HouseholdFeature.HostPolicy);
        ovens.MapGet("", async (LearnedOvens learned, CancellationToken stop) => new RazorComponentResult<OvensPage>(new { Ovens = await learned.AllAsync(stop) }));
        ovens.MapPost("/use", UseAsync);
        ovens.MapPost("/trials", BeginAsync);
        ovens.MapGet("/trials/{trial:guid}", ShowAsync);
        ovens.MapPost("/trials/{trial:guid}", NoteAsync);
        ovens.MapPost("/trials/{trial:guid}/delete", async (Guid trial, IFormCollection form, LearnedOvens learned, CancellationToken stop) =>
        {
            await learned.DeleteTrialAsync(trial, stop);
            return Results.Redirect("/ovens");
        });
    }

    /// <summary>Field "oven"; with "back" it is planned as its meals say again.</summary>
    static async Task<IResult> UseAsync(IFormCollection form, LearnedOvens learned, CancellationToken stop)
    {
        if ((await learned.AllAsync(stop)).FirstOrDefault(oven => oven.Key == form["oven"]) is not { } oven)
        {
            return Results.NotFound();
        }

        if (form.ContainsKey("back"))
        {
            await learned.ForgetAsync(oven.Key, stop);
        }
        else if (oven.Learned.HasFigures)
        {
            await learned.UseAsync(oven, stop);
        }

        return Results.Redirect("/ovens");
    }

    static async Task<IResult> BeginAsync(IFormCollection form, LearnedOvens learned, CancellationToken stop) =>
        (await learned.AllAsync(stop)).FirstOrDefault(oven => oven.Key == form["oven"]) is { } oven
            ? Results.Redirect($"/ovens/trials/{await learned.BeginAsync(oven.Name, stop)}")
            : Results.NotFound();

    static async Task<IResult> ShowAsync(Guid trial, LearnedOvens learned, TimeProvider clock, CancellationToken stop) =>
        await learned.TrialAsync(trial, stop) is { } row ? Page(row, clock) : Results.NotFound();

    /// <summary>Field "celsius" is a reading of this moment; "undo", "door", "off" and "end" are what they say.</summary>
    static async Task<IResult> NoteAsync(Guid trial, IFormCollection form, LearnedOvens learned, TimeProvider clock, CancellationToken stop)
    {
        var isReading = double.TryParse(form["celsius"].ToString().Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out var celsius);
        if (form.ContainsKey("read") && (!isReading || celsius is < Coldest or > Hottest))
        {
            return await learned.TrialAsync(trial, stop) is { } row
                ? Page(row, clock, $"A thermometer in an oven shows {Coldest:0} to {Hottest:0} °C. Nothing was kept.", StatusCodes.Status400BadRequest)
                : Results.NotFound();
        }

        var isThere = await learned.NoteAsync(trial, (row, now) =>
        {
            switch (form)
            {
                case var _ when form.ContainsKey("read"): LearnedOvens.Read(row, now, celsius); break;
                case var _ when form.ContainsKey("undo"): LearnedOvens.TakeBackReading(row, now); break;
                case var _ when form.ContainsKey("door"): row.DoorShut ??= now; break;
                case var _ when form.ContainsKey("off"): row.Off ??= now; break;
                case var _ when form.ContainsKey("end"): row.Ended = now; break;
                default: break;
            }
        }, stop);
        return !isThere ? Results.NotFound() : Results.Redirect(form.ContainsKey("end") ? "/ovens" : $"/ovens/trials/{trial}");
    }

    static RazorComponentResult<OvenTrialPage> Page(Data.OvenTrialRow row, TimeProvider clock, string? problem = null, int status = StatusCodes.Status200OK) =>
        new(new Dictionary<string, object?>
        {
            [nameof(OvenTrialPage.Trial)] = row,
            [nameof(OvenTrialPage.Now)] = clock.GetUtcNow().ToUnixTimeMilliseconds(),
            [nameof(OvenTrialPage.Problem)] = problem,
        })
        {
            StatusCode = status,
        };
}
