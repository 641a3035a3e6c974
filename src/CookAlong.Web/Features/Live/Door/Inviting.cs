using CookAlong.Domain.Runs;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Household;
using CookAlong.Web.Features.Household.Audit;
using CookAlong.Web.Features.Live.Line;
using CookAlong.Web.Features.Live.Runs;
using Microsoft.AspNetCore.Mvc;

namespace CookAlong.Web.Features.Live.Door;

/// <summary>The host's side of the door: codes for those who come, and the way out.</summary>
static class Inviting
{
    public static void MapInviting(this WebApplication app)
    {
        var cook = app.MapGroup("/cook/{run:guid}").RequireAuthorization(HouseholdFeature.HostPolicy);
        cook.MapGet("/invite", (HttpContext http, Guid run, LiveViews views, LiveRuns runs, JoinCodes codes, AuditLog audit, [FromQuery(Name = "as")] string? role) =>
            // It makes a code, so another site's page does not open it (OWASP ASVS 5.0.0, 3.5.3).
            http.Request.Headers["Sec-Fetch-Site"].ToString() is "cross-site" ? Task.FromResult(Results.Redirect($"/cook/{run}"))
            : PageAsync(http, new RunId(run), views, runs, codes, audit, role, message: null)).WithMetadata(new Heavy());
        cook.MapPost("/put-out", PutOutAsync);
    }

    static async Task<IResult> PageAsync(HttpContext http, RunId run, LiveViews views, LiveRuns runs, JoinCodes codes, AuditLog audit, string? role, string? message)
    {
        if (await views.OfAsync(run, http.User) is not { } view || await runs.FindAsync(run) is not { } live)
        {
            return Results.NotFound();
        }

        var isToWatch = role == "watcher";
        var invitation = await codes.InviteAsync(run, isToWatch ? Role.Watcher : Role.Helper);
        await audit.WriteAsync(http, AuditDeed.JoinCodeMade, $"{(isToWatch ? "to watch" : "to help with")} {live.Current.Meal.Name}");
        RunPerson[] guests = [.. live.Current.People.Values.Where(person => person.Role != Role.Host).OrderBy(person => person.Name, StringComparer.CurrentCulture)];
        return LiveMarkup.Invite(view, invitation, isToWatch, $"{http.Request.Scheme}://{http.Request.Host}{http.Request.PathBase}/join", guests, message);
    }

    /// <summary>By a plain form: it works where no script runs. Whoever is out already stays out.</summary>
    static async Task<IResult> PutOutAsync(
        HttpContext http, Guid run, LiveViews views, LiveRuns runs, JoinCodes codes, IncomingTaps taps, AuditLog audit, [FromForm] Guid person)
    {
        var id = new RunId(run);
        if (await runs.FindAsync(id) is not { } live)
        {
            return Results.NotFound();
        }

        var name = live.Current.People.GetValueOrDefault(new PersonId(person))?.Name;
        var message = name is null
            ? JoinWords.OutAlready
            : await taps.PutOutAsync(live, Visitor.Of(http.User)!, new PersonId(person)) ?? JoinWords.IsOut(name);
        return await PageAsync(http, id, views, runs, codes, audit, role: null, message);
    }
}
