using System.Net;
using System.Security.Claims;
using CookAlong.Web.Features.Household;
using CookAlong.Web.Tests.Live;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.AspNetCore.SignalR;
using Microsoft.AspNetCore.SignalR.Client;
using Microsoft.Extensions.Time.Testing;

namespace CookAlong.Web.Tests.Household;

public sealed class PacesTests
{
    static readonly Guid Ivo = new(1, 1, 1, new byte[8]);
    static readonly Guid Gran = new(2, 2, 2, new byte[8]);

    static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(Deed.Look, 6_000, 60)]
    [InlineData(Deed.Change, 3_000, 30)]
    [InlineData(Deed.Heavy, 60, 0.2)]
    [InlineData(Deed.OnPage, 1_200, 50)]
    public void So_much_at_once_and_then_so_much_a_second(Deed deed, int most, double aSecond)
    {
        var clock = new FakeTimeProvider();
        var paces = new Paces(clock);

        Assert.Equal(most, Taken(paces, Ivo, deed));
        Assert.Equal(1 / aSecond, paces.Take(Ivo, deed).TotalSeconds, 3);
        clock.Advance(TimeSpan.FromSeconds(20));
        Assert.Equal((int)(20 * aSecond), Taken(paces, Ivo, deed));
        clock.Advance(TimeSpan.FromDays(1));
        Assert.Equal(most, Taken(paces, Ivo, deed));
    }

    [Fact]
    public void One_session_s_haste_is_nobody_else_s_and_of_one_kind()
    {
        var paces = new Paces(new FakeTimeProvider());
        paces.Spend(Ivo, Deed.Change);

        Assert.Equal(TimeSpan.Zero, paces.Take(Ivo, Deed.Look));
        Assert.Equal(TimeSpan.Zero, paces.Take(Gran, Deed.Change));
    }

    [Fact]
    public async Task A_screen_that_is_too_fast_is_told_so_by_socket_and_by_post_and_goes_on_later_under_the_same_id()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var ivo = await kitchen.JoinAsync("Ivo");
        await using var phone = kitchen.Connect(ivo);
        await phone.StartAsync(Stop);
        kitchen.House.Get<Paces>().Spend(await SessionAsync(kitchen), Deed.Change);
        var tap = new { runId = kitchen.Run, commandId = LiveKitchen.NewCommand(), saw = 0, command = new { kind = "finishStep", step = "stuff" } };

        await Assert.ThrowsAsync<HubException>(() => phone.InvokeAsync<object>("Send", tap, Stop));
        using var post = await ivo.PostJsonAsync($"/cook/{kitchen.Run}/taps", tap);
        using var card = await ivo.GetAsync($"/cook/{kitchen.Run}/me");

        Assert.Equal(HttpStatusCode.TooManyRequests, post.StatusCode);
        Assert.Equal(TimeSpan.FromSeconds(1), post.Headers.RetryAfter!.Delta);
        Assert.Equal(HttpStatusCode.OK, card.StatusCode);
        kitchen.House.Clock.Advance(TimeSpan.FromSeconds(1));
        Assert.True((await kitchen.TapAsync(ivo, tap.command, tap.commandId)).Accepted);
    }

    [Fact]
    public async Task Pages_asked_for_too_fast_and_what_is_heavy_answer_in_words()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        await using var db = kitchen.House.NewDb();
        var host = db.Sessions.Single().Id;
        kitchen.House.Get<Paces>().Spend(host, Deed.Heavy);

        using var invite = await kitchen.Host.GetAsync($"/cook/{kitchen.Run}/invite");
        using var board = await kitchen.Host.GetAsync($"/cook/{kitchen.Run}");
        kitchen.House.Get<Paces>().Spend(host, Deed.Look);
        using var meals = await kitchen.Host.GetAsync("/meals");

        Assert.Equal((HttpStatusCode.TooManyRequests, HttpStatusCode.OK, HttpStatusCode.TooManyRequests), (invite.StatusCode, board.StatusCode, meals.StatusCode));
        Assert.Equal(TimeSpan.FromSeconds(5), invite.Headers.RetryAfter!.Delta);
        Assert.Contains("too much at once", await meals.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_happens_on_an_open_planning_page_too_fast_waits_its_turn_and_is_not_lost()
    {
        var clock = new FakeTimeProvider();
        var paces = new Paces(clock);
        paces.Spend(Ivo, Deed.OnPage);
        var done = 0;
        var happens = new PagePace(paces, new SignedIn(Ivo), clock).CreateInboundActivityHandler(_ =>
        {
            done++;
            return Task.CompletedTask;
        });

        var waiting = happens(null!);

        Assert.Equal((false, 0), (waiting.IsCompleted, done));
        clock.Advance(TimeSpan.FromSeconds(1));
        await waiting;
        Assert.Equal(1, done);
    }

    sealed class SignedIn(Guid session) : AuthenticationStateProvider
    {
        public override Task<AuthenticationState> GetAuthenticationStateAsync() => Task.FromResult(new AuthenticationState(new ClaimsPrincipal(new ClaimsIdentity(
            [new Claim(Visitor.SessionClaim, session.ToString()), new Claim(ClaimTypes.NameIdentifier, Guid.Empty.ToString())], "test"))));
    }

    static int Taken(Paces paces, Guid session, Deed deed)
    {
        var taken = 0;
        while (paces.Take(session, deed) == TimeSpan.Zero)
        {
            taken++;
        }

        return taken;
    }

    static async Task<Guid> SessionAsync(LiveKitchen kitchen)
    {
        await using var db = kitchen.House.NewDb();
        return db.Sessions.Single(one => one.Run == kitchen.Run).Id;
    }
}
