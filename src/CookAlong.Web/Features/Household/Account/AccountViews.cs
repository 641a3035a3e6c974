using CookAlong.Web.Features.Api.Tokens;
using CookAlong.Web.Features.Household.Passkeys;

namespace CookAlong.Web.Features.Household.Account;

/// <summary>Gathers what a host's page shows.</summary>
sealed class AccountViews(Accounts accounts, Sessions sessions, PasskeyBook passkeys, ApiTokens tokens, TimeProvider time)
{
    public async Task<AccountView> OfAsync(HttpContext http)
    {
        var (visitor, stop) = (Visitor.Of(http.User)!, http.RequestAborted);
        return new AccountView(
            http.Request.Host.Host,
            visitor,
            await sessions.IsFreshAsync(visitor, stop),
            await passkeys.OfAsync(visitor.Person.Value, stop),
            await sessions.OfAsync(visitor.Person, stop),
            await accounts.AllAsync(stop),
            await tokens.OfAsync(visitor.Person.Value, stop),
            time.LocalTimeZone);
    }
}
