using CookAlong.Domain.Runs;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Household;
using CookAlong.Web.Features.Household.Audit;
using CookAlong.Web.Features.Live.Runs;
using CookAlong.Web.Features.Live.Wording;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace CookAlong.Web.Features.Live.Door;

/// <summary>The door of a run: a code, a name, and the phone belongs to somebody in the kitchen.</summary>
static class Joining
{
    const int LongestName = 40;

    public static void MapJoining(this WebApplication app)
    {
        app.MapGet("/join", () => Page());
        app.MapPost("/join", JoinAsync).WithMetadata(HouseholdFeature.FormLimit);
    }

    static async Task<IResult> JoinAsync(
        HttpContext http, JoinCodes codes, JoinTries tries, LiveRuns runs, Sessions sessions, RunClocks clocks, AuditLog audit, TimeProvider time, [FromForm] string? code, [FromForm] string? name)
    {
        name = (name ?? "").Trim();
        if (name.Length is 0 or > LongestName)
        {
            return Page(JoinWords.NameNeeded, StatusCodes.Status400BadRequest, code, name);
        }

        var address = HouseholdFeature.AddressOf(http);
        if (!tries.MayTry(address))
        {
            return Page(JoinWords.TooManyTries, StatusCodes.Status429TooManyRequests, code, name);
        }

        if (await codes.FindAsync(code ?? "") is not { } found || await runs.FindAsync(new RunId(found.Run)) is not { } live)
        {
            tries.Wrong(address);
            await audit.WriteAsync(AuditDeed.JoinRefused, who: null, address);
            return Page(JoinWords.WrongCode, StatusCodes.Status403Forbidden, code, name);
        }

        var tap = JoinTap(live.Current, Visitor.Of(http.User), found.Role, name, time.GetUtcNow());

        // Asked first, so that a name that is taken does not use up the code.
        if (live.Current.Decide(tap, clocks.Now(live.Current.Id)) is Decision.Refused early)
        {
            return Refused(live.Current, early.Why);
        }

        if (!await codes.UseAsync(found))
        {
            return Page(JoinWords.WrongCode, StatusCodes.Status403Forbidden, code, name);
        }

        if (await live.SendAsync(tap) is Decision.Refused late)
        {
            return Refused(live.Current, late.Why);
        }

        await sessions.BeginGuestAsync(http, tap.By!.Value, live.Current.Id);
        await audit.WriteAsync(AuditDeed.GuestJoined, name, address, live.Current.Meal.Name);
        return Results.Redirect(found.Role == Role.Watcher ? $"/cook/{live.Current.Id}" : $"/cook/{live.Current.Id}/me");

        RazorComponentResult<JoinPage> Refused(Run run, Refusal why) =>
            Page(new Words(run.Meal, Board.Of(run, clocks.Now(run.Id)).People).Of(why), StatusCodes.Status409Conflict, code, name);
    }

    /// <summary>The name decides whose hands they are; a phone that is in this run already stays the same person.</summary>
    static Tap JoinTap(Run run, Visitor? visitor, Role role, string name, DateTimeOffset now)
    {
        var person = visitor?.Run == run.Id ? visitor.Person : new PersonId(Guid.CreateVersion7(now));
        var hands = role == Role.Helper ? run.Helpers.Called(name) : null;
        return new Tap(new CommandId(Guid.CreateVersion7(now)), person, new RunCommand.Join(person, name, role, hands?.Id));
    }

    static RazorComponentResult<JoinPage> Page(string? message = null, int status = StatusCodes.Status200OK, string? code = null, string? name = null) =>
        new(new Dictionary<string, object?>
        {
            [nameof(JoinPage.Message)] = message,
            [nameof(JoinPage.Code)] = code,
            [nameof(JoinPage.Name)] = name,
        })
        {
            StatusCode = status,
        };
}
