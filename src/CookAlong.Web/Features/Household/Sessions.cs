using System.Data.Common;
using System.Security.Claims;
using CookAlong.Domain.Runs;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Household.Account;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Features.Household;

/// <summary>Signed-in browsers. The cookie only names a row; a row that has ended, or is too old, signs the browser out.</summary>
public sealed class Sessions(IDbContextFactory<CookAlongDb> databases, TimeProvider time, ILogger<Sessions> log)
{
    /// <summary>A wall tablet stays signed in from one big meal to the next.</summary>
    public static readonly TimeSpan HostLimit = TimeSpan.FromDays(90);

    /// <summary>Long enough for a meal that begins the day before.</summary>
    public static readonly TimeSpan GuestLimit = TimeSpan.FromDays(3);

    /// <summary>A host's device that nobody used for so long is signed out (OWASP ASVS 5.0.0, 7.3.1). A page or a line held open is use. Common practice, no source.</summary>
    public static readonly TimeSpan HostIdle = TimeSpan.FromDays(30);

    /// <summary>The same for a guest's: from the morning before a meal to the evening of its day.</summary>
    public static readonly TimeSpan GuestIdle = TimeSpan.FromHours(36);

    /// <summary>For so long after signing in nobody is asked again who they are before they change what opens the house (OWASP ASVS 5.0.0, 7.5.1). Common practice, no source.</summary>
    public static readonly TimeSpan Fresh = TimeSpan.FromMinutes(15);

    // Days are counted by it, so a write at each request would buy nothing.
    static readonly TimeSpan SeenEvery = TimeSpan.FromMinutes(5);

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

    /// <summary>A host's browsers that are signed in, the last seen first.</summary>
    public async Task<IReadOnlyList<SessionRow>> OfAsync(PersonId host, CancellationToken stop = default)
    {
        var now = time.GetUtcNow();
        var (oldest, idle) = ((now - HostLimit).ToUnixTimeMilliseconds(), (now - HostIdle).ToUnixTimeMilliseconds());
        await using var db = await databases.CreateDbContextAsync(stop);
        return await db.Sessions.AsNoTracking()
            .Where(session => session.Person == host.Value && session.Run == null && session.EndedAt == null
                && session.BeganAt > oldest && (session.LastSeenAt ?? session.BeganAt) > idle)
            .OrderByDescending(session => session.LastSeenAt ?? session.BeganAt)
            .ToListAsync(stop);
    }

    /// <summary>Signs out one browser of a host; false when it is none of theirs, or out already.</summary>
    public async Task<bool> EndAsync(PersonId host, Guid session)
    {
        var isTheirs = (await OfAsync(host)).Any(one => one.Id == session);
        if (isTheirs)
        {
            await EndAsync([session]);
        }

        return isTheirs;
    }

    /// <summary>Signs out every browser of a host but the one that asks.</summary>
    /// <returns>How many there were.</returns>
    public async Task<int> EndOthersAsync(Visitor visitor)
    {
        Guid[] others = [.. (await OfAsync(visitor.Person)).Select(one => one.Id).Where(one => one != visitor.Session)];
        await EndAsync(others);
        return others.Length;
    }

    /// <summary>True for a while after signing in.</summary>
    public async Task<bool> IsFreshAsync(Visitor visitor, CancellationToken stop = default)
    {
        var since = (time.GetUtcNow() - Fresh).ToUnixTimeMilliseconds();
        await using var db = await databases.CreateDbContextAsync(stop);
        return await db.Sessions.AnyAsync(session => session.Id == visitor.Session && session.BeganAt > since, stop);
    }

    /// <summary>False once the session has ended, was idle for too long or outlived its limit, or its host is none any more.</summary>
    /// <param name="address">Where it is seen now; null = on an open page, which makes no requests.</param>
    public async Task<bool> IsOpenAsync(Guid session, string? address = null, CancellationToken stop = default)
    {
        var now = time.GetUtcNow();
        await using var db = await databases.CreateDbContextAsync(stop);
        var row = await db.Sessions.AsNoTracking().SingleOrDefaultAsync(one => one.Id == session, stop);
        if (row is null || !IsInForce(row, now) || (row.Run is null && !await db.Hosts.AnyAsync(host => host.Id == row.Person, stop)))
        {
            return false;
        }

        if (IsToBeSeen(row, now))
        {
            await NoteSeenAsync(db, [session], now, address, stop);
        }

        return true;
    }

    /// <summary>The same for many at once that are held open: which of them are not open any more.</summary>
    public async Task<IReadOnlyList<Guid>> GoneAsync(Guid[] held, CancellationToken stop = default)
    {
        var now = time.GetUtcNow();
        await using var db = await databases.CreateDbContextAsync(stop);
        var rows = await db.Sessions.AsNoTracking().Where(one => held.Contains(one.Id)).ToListAsync(stop);
        var hosts = await db.Hosts.Select(host => host.Id).ToListAsync(stop);
        var open = rows.Where(row => IsInForce(row, now) && (row.Run is not null || hosts.Contains(row.Person))).ToList();
        Guid[] seen = [.. open.Where(row => IsToBeSeen(row, now)).Select(row => row.Id)];
        if (seen.Length > 0)
        {
            await NoteSeenAsync(db, seen, now, address: null, stop);
        }

        return [.. held.Except(open.Select(row => row.Id))];
    }

    /// <summary>What the cookie handler asks at every request.</summary>
    public static async Task ValidateAsync(CookieValidatePrincipalContext context)
    {
        var sessions = context.HttpContext.RequestServices.GetRequiredService<Sessions>();
        if (context.Principal is null || Visitor.Of(context.Principal) is not { } visitor || !await sessions.IsOpenAsync(visitor.Session, HouseholdFeature.AddressOf(context.HttpContext), context.HttpContext.RequestAborted))
        {
            context.RejectPrincipal();
            await context.HttpContext.SignOutAsync();
        }
    }

    /// <summary>A disk that takes nothing any more is no reason to keep somebody from the board, which only reads.</summary>
    async Task NoteSeenAsync(CookAlongDb db, Guid[] seen, DateTimeOffset now, string? address, CancellationToken stop)
    {
        try
        {
            await db.Sessions.Where(one => seen.Contains(one.Id)).ExecuteUpdateAsync(
                set => set.SetProperty(one => one.LastSeenAt, now.ToUnixTimeMilliseconds()).SetProperty(one => one.Address, one => address ?? one.Address),
                stop);
        }
        catch (DbException failure)
        {
            log.LogWarning("When {Sessions} sessions were last seen could not be written: {Why}", seen.Length, failure.Message);
        }
    }

    async Task BeginAsync(HttpContext http, Visitor visitor, string? name)
    {
        // A browser is one person at a time: whoever it was before is signed out, never carried over (session fixation).
        if (Visitor.Of(http.User) is { } before)
        {
            await EndAsync([before.Session]);
        }

        var now = time.GetUtcNow().ToUnixTimeMilliseconds();
        await using var db = await databases.CreateDbContextAsync();
        db.Sessions.Add(new SessionRow
        {
            Id = visitor.Session,
            Person = visitor.Person.Value,
            Run = visitor.Run?.Value,
            BeganAt = now,
            LastSeenAt = now,
            Device = DeviceWords.Of(http.Request.Headers.UserAgent.ToString()),
            Address = HouseholdFeature.AddressOf(http),
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

    static bool IsInForce(SessionRow row, DateTimeOffset now) =>
        row.EndedAt is null
        && now < DateTimeOffset.FromUnixTimeMilliseconds(row.BeganAt) + (row.Run is null ? HostLimit : GuestLimit)
        && now < Seen(row) + (row.Run is null ? HostIdle : GuestIdle);

    static bool IsToBeSeen(SessionRow row, DateTimeOffset now) => row.LastSeenAt is null || now >= Seen(row) + SeenEvery;

    static DateTimeOffset Seen(SessionRow row) => DateTimeOffset.FromUnixTimeMilliseconds(row.LastSeenAt ?? row.BeganAt);

    Guid NewId() => Guid.CreateVersion7(time.GetUtcNow());
}
