using System.Security.Claims;
using CookAlong.Domain.Runs;

namespace CookAlong.Web.Features.Household;

/// <summary>Who is asking: a host of the household, or a guest of one run.</summary>
/// <param name="Run">The only run a guest may see; null for a host.</param>
public sealed record Visitor(Guid Session, PersonId Person, bool IsHost, RunId? Run)
{
    public const string SessionClaim = "session";
    public const string RunClaim = "run";
    public const string HostRole = "host";
    public const string GuestRole = "guest";

    /// <summary>Null when nobody is signed in.</summary>
    public static Visitor? Of(ClaimsPrincipal user)
    {
        if (user.Identity is not { IsAuthenticated: true })
        {
            return null;
        }

        var run = user.FindFirstValue(RunClaim);
        return new Visitor(
            Guid.Parse(user.FindFirstValue(SessionClaim)!),
            new PersonId(Guid.Parse(user.FindFirstValue(ClaimTypes.NameIdentifier)!)),
            user.IsInRole(HostRole),
            run is null ? null : new RunId(Guid.Parse(run)));
    }

    public bool MaySee(RunId run) => IsHost || Run == run;
}
