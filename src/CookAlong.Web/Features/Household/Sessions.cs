using System.Security.Claims;
using CookAlong.Domain.Runs;
using CookAlong.Web.Data;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Features.Household;

/// <summary>Signed-in browsers. The cookie only names a row; a row that has ended, or is too old, signs the browser out.</summary>
public sealed class Sessions(IDbContextFactory<CookAlongDb> databases, TimeProvider time)
{
    /// <summary>A wall tablet stays signed in from one big meal to the next.</summary>
    public static readonly TimeSpan HostLimit = TimeSpan.FromDays(90);

    /// <summary>Long enough for a meal that begins the day before.</summary>
    public static readonly TimeSpan GuestLimit = TimeSpan.FromDays(3);

    /// <summary>Told of each session that ends, so that what is held open for it (a socket) can be closed.</summary>
    public event Action<Guid>? Ended;

    public Task BeginHostAsync(HttpContext http, HostRow host) =>
        BeginAsync(http, new Visitor(NewId(), new PersonId(host.Id), IsHost: true, Run: null), host.Name);

    /// <summary>Signs this browser in as a guest of one run. The name is shown to nobody but themselves; the run knows its people.</summary>
    public Task BeginGuestAsync(HttpContext http, PersonId person, RunId run) =>
        BeginAsync(http, new Visitor(NewId(), person, IsHost: false, run), name: null);

    /// <summary>Signs out the browser that asks.</summary>
    public async Task EndAsync(HttpContext http)
    {
        if (Visitor.Of(http.User) is { } visitor)
        {
            await EndAsync([visitor.Session]);
        }

        await http.SignOutAsync();
    }

    /// <summary>Signs out every browser of a person: of a guest who was put out of <paramref name="run"/>, or of a host (null).</summary>
    public async Task EndOfAsync(PersonId person, RunId? run)
    {
        await using var db = await databases.CreateDbContextAsync();
        var inRun = run?.Value;
        await EndAsync(await db.Sessions
            .Where(session => session.Person == person.Value && session.Run == inRun && session.EndedAt == null)
            .Select(session => session.Id)
            .ToArrayAsync());
    }

    /// <summary>False once the session has ended or outlived its limit.</summary>
    public async Task<bool> IsOpenAsync(Guid session, CancellationToken stop = default)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        var row = await db.Sessions.AsNoTracking().SingleOrDefaultAsync(one => one.Id == session, stop);
        return row is { EndedAt: null } && time.GetUtcNow() < DateTimeOffset.FromUnixTimeMilliseconds(row.BeganAt) + (row.Run is null ? HostLimit : GuestLimit);
    }

    /// <summary>What the cookie handler asks at every request.</summary>
    public static async Task ValidateAsync(CookieValidatePrincipalContext context)
    {
        var sessions = context.HttpContext.RequestServices.GetRequiredService<Sessions>();
        if (context.Principal is null || Visitor.Of(context.Principal) is not { } visitor || !await sessions.IsOpenAsync(visitor.Session, context.HttpContext.RequestAborted))
        {
            context.RejectPrincipal();
            await context.HttpContext.SignOutAsync();
        }
    }

    async Task BeginAsync(HttpContext http, Visitor visitor, string? name)
    {
        // A browser is one person at a time: whoever it was before is signed out, never carried over (session fixation).
        if (Visitor.Of(http.User) is { } before)
        {
            await EndAsync([before.Session]);
        }

        await using var db = await databases.CreateDbContextAsync();
        db.Sessions.Add(new SessionRow
        {
            Id = visitor.Session,
            Person = visitor.Person.Value,
            Run = visitor.Run?.Value,
            BeganAt = time.GetUtcNow().ToUnixTimeMilliseconds(),
        });
        await db.SaveChangesAsync();

        List<Claim> claims =
        [
            new(Visitor.SessionClaim, visitor.Session.ToString()),
            new(ClaimTypes.NameIdentifier, visitor.Person.ToString()),
            new(ClaimTypes.Role, visitor.IsHost ? Visitor.HostRole : Visitor.GuestRole),
        ];
        if (visitor.Run is { } run)
        {
            claims.Add(new Claim(Visitor.RunClaim, run.ToString()));
        }

        if (name is not null)
        {
            claims.Add(new Claim(ClaimTypes.Name, name));
        }

        var identity = new ClaimsIdentity(claims, CookieAuthenticationDefaults.AuthenticationScheme);
        await http.SignInAsync(new ClaimsPrincipal(identity), new AuthenticationProperties { IsPersistent = true });
    }

    async Task EndAsync(Guid[] sessions)
    {
        var now = time.GetUtcNow().ToUnixTimeMilliseconds();
        await using var db = await databases.CreateDbContextAsync();
        await db.Sessions
            .Where(session => sessions.Contains(session.Id))
            .ExecuteUpdateAsync(set => set.SetProperty(session => session.EndedAt, now));
        foreach (var session in sessions)
        {
            Ended?.Invoke(session);
        }
    }

    Guid NewId() => Guid.CreateVersion7(time.GetUtcNow());
}
