using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.AspNetCore.Components.Server.Circuits;

namespace CookAlong.Web.Features.Household;

/// <summary>
/// The same for an open planning page, whose deeds come over its own line: whatever happens there too fast waits its turn,
/// and what is heavy is put off in words.
/// </summary>
public sealed class PagePace(Paces paces, AuthenticationStateProvider who, TimeProvider time) : CircuitHandler
{
    /// <returns>Null = go on; otherwise why not now, as a sentence.</returns>
    public async Task<string?> AskHeavyAsync() =>
        await SessionAsync() is { } session && paces.Take(session, Deed.Heavy) is { Ticks: > 0 } wait ? HouseholdWords.TooFast(wait) : null;

    public override Func<CircuitInboundActivityContext, Task> CreateInboundActivityHandler(Func<CircuitInboundActivityContext, Task> next) => async activity =>
    {
        if (await SessionAsync() is { } session)
        {
            while (paces.Take(session, Deed.OnPage) is { Ticks: > 0 } wait)
            {
                await Task.Delay(wait, time);
            }
        }

        await next(activity);
    };

    async Task<Guid?> SessionAsync() => Visitor.Of((await who.GetAuthenticationStateAsync()).User)?.Session;
}
