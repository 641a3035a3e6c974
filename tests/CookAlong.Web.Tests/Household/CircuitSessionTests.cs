using System.Security.Claims;
using CookAlong.Web.Features.Household;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.Extensions.Logging.Abstractions;

namespace CookAlong.Web.Tests.Household;

public sealed class CircuitSessionTests
{
    [Fact]
    public async Task An_open_planning_page_is_out_at_once_when_its_session_ends_and_no_other_is()
    {
        await using var app = new AppFactory();
        await app.HostAsync();
        await app.HostAsync();
        await using var db = app.NewDb();
        var sessions = db.Sessions.ToArray();
        var person = sessions[0].Person;
        using var page = Open(app, sessions[0].Id, person);
        using var other = Open(app, sessions[1].Id, person);

        await app.Get<Sessions>().EndAsync(new(person), sessions[0].Id);

        Assert.False((await page.GetAuthenticationStateAsync()).User.Identity?.IsAuthenticated);
        Assert.True((await other.GetAuthenticationStateAsync()).User.Identity?.IsAuthenticated);
    }

    static CircuitSession Open(AppFactory app, Guid session, Guid person)
    {
        var page = new CircuitSession(NullLoggerFactory.Instance, app.Get<Sessions>());
        var claims = new[] { new Claim(Visitor.SessionClaim, session.ToString()), new Claim(ClaimTypes.NameIdentifier, person.ToString()), new Claim(ClaimTypes.Role, Visitor.HostRole) };
        page.SetAuthenticationState(Task.FromResult(new AuthenticationState(new ClaimsPrincipal(new ClaimsIdentity(claims, "test")))));
        return page;
    }
}
