using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.AspNetCore.Components.Server;

namespace CookAlong.Web.Features.Household;

/// <summary>An open planning page learns within half a minute that its session has ended; it makes no requests that would tell it.</summary>
sealed class CircuitSession(ILoggerFactory logs, Sessions sessions) : RevalidatingServerAuthenticationStateProvider(logs)
{
    protected override TimeSpan RevalidationInterval => TimeSpan.FromSeconds(30);

    protected override async Task<bool> ValidateAuthenticationStateAsync(AuthenticationState authenticationState, CancellationToken cancellationToken) =>
        Visitor.Of(authenticationState.User) is { } visitor && await sessions.IsOpenAsync(visitor.Session, cancellationToken);
}
