using System.Security.Claims;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.AspNetCore.Components.Server;

namespace CookAlong.Web.Features.Household;

/// <summary>
/// An open planning page makes no requests that would tell it that its session has ended. It is told at once when this server
/// ended it, and asks by itself for what else may end it: its limit, another server, the command line.
/// </summary>
sealed class CircuitSession : RevalidatingServerAuthenticationStateProvider
{
    readonly Sessions sessions;

    public CircuitSession(ILoggerFactory logs, Sessions sessions)
        : base(logs)
    {
        this.sessions = sessions;
        sessions.Ended += Leave;
    }

    /// <summary>Ended sessions are to be out within 5 s.</summary>
    protected override TimeSpan RevalidationInterval => TimeSpan.FromSeconds(4);

    protected override async Task<bool> ValidateAuthenticationStateAsync(AuthenticationState authenticationState, CancellationToken cancellationToken) =>
        Visitor.Of(authenticationState.User) is { } visitor && await sessions.IsOpenAsync(visitor.Session, stop: cancellationToken);

    protected override void Dispose(bool disposing)
    {
        sessions.Ended -= Leave;
        base.Dispose(disposing);
    }

    void Leave(Guid ended) => _ = LeaveAsync(ended);

    async Task LeaveAsync(Guid ended)
    {
        if (Visitor.Of((await GetAuthenticationStateAsync()).User)?.Session == ended)
        {
            SetAuthenticationState(Task.FromResult(new AuthenticationState(new ClaimsPrincipal(new ClaimsIdentity()))));
        }
    }
}
