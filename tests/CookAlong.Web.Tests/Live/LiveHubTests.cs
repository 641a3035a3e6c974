using System.Net;
using CookAlong.Domain.Runs;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Household;
using CookAlong.Web.Features.Live.Line;
using Microsoft.AspNetCore.SignalR;
using Microsoft.AspNetCore.SignalR.Client;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;

namespace CookAlong.Web.Tests.Live;

public sealed class LiveHubTests
{
    // Only for a test that fails: a busy machine may take its time.
    static readonly TimeSpan Patience = TimeSpan.FromMinutes(1);

    static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_tap_on_one_screen_is_news_on_every_other()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        await using var phone = kitchen.Connect(await kitchen.JoinAsync("Ivo"));
        await using var tablet = kitchen.Connect(kitchen.Host);
        var entered = await EnterAsync(phone, kitchen.Run);
        Assert.Equal(("helper", 4L), (entered.Role, entered.Sequence));
        Assert.Contains(entered.Calls, call => call is { CallId: "begin:stuff", Kind: "begin", Priority: "low", Step: "stuff" });
        await EnterAsync(tablet, kitchen.Run);

        var news = new TaskCompletionSource<ChangedNews>();
        phone.On<ChangedNews>("Changed", one =>
        {
            if (one.Sequence > entered.Sequence)
            {
                news.TrySetResult(one);
            }
        });
        var answer = await SendAsync(tablet, kitchen.Run, new { kind = "finishStep", step = "stuff" });
        Assert.True(answer.Accepted, answer.Reason);
        var heard = await news.Task.WaitAsync(Patience, Stop);
        Assert.Equal(5, heard.Sequence);
        Assert.DoesNotContain(heard.Calls, call => call.CallId == "begin:stuff");
    }

    [Fact]
    public async Task A_server_that_stops_says_so_before_it_cuts_the_line()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        await using var phone = kitchen.Connect(await kitchen.JoinAsync("Ivo"));
        await EnterAsync(phone, kitchen.Run);
        var told = new TaskCompletionSource();
        phone.On("Restarting", told.SetResult);

        kitchen.House.Get<IHostApplicationLifetime>().StopApplication();

        await told.Task.WaitAsync(Patience, Stop);
    }

    [Fact]
    public async Task A_refusal_comes_back_as_a_sentence()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        await using var phone = kitchen.Connect(await kitchen.JoinAsync("Ivo"));
        await EnterAsync(phone, kitchen.Run);
        var answer = await SendAsync(phone, kitchen.Run, new { kind = "startStep", step = "roast" });
        Assert.False(answer.Accepted);
        Assert.Contains("waits for", answer.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Strangers_do_not_connect()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        await using var stranger = kitchen.Connect(screen: null);
        await Assert.ThrowsAnyAsync<Exception>(() => stranger.StartAsync(Stop));
        Assert.Equal(HubConnectionState.Disconnected, stranger.State);
    }

    [Fact]
    public async Task Another_site_s_page_does_not_connect_with_the_host_s_cookie()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        await using var lured = kitchen.Connect(kitchen.Host, origin: "https://elsewhere.example");
        await Assert.ThrowsAnyAsync<Exception>(() => lured.StartAsync(Stop));
        Assert.Equal(HubConnectionState.Disconnected, lured.State);
    }

    [Fact]
    public async Task A_guest_of_one_run_neither_sees_nor_touches_another()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var ivo = await kitchen.JoinAsync("Ivo");
        await kitchen.TapAsync(kitchen.Host, new { kind = "endRun" });
        var other = await kitchen.StartAsync();

        await using var phone = kitchen.Connect(ivo);
        await phone.StartAsync(Stop);
        await Assert.ThrowsAsync<HubException>(() => phone.InvokeAsync<Entered>("Enter", other, Stop));
        Assert.False((await SendAsync(phone, other, new { kind = "finishStep", step = "stuff" })).Accepted);
        using var page = await ivo.GetAsync($"/cook/{other}");
        Assert.Equal(HttpStatusCode.Forbidden, page.StatusCode);
        using var tap = await ivo.PostJsonAsync($"/cook/{other}/taps", new { runId = other, commandId = LiveKitchen.NewCommand(), saw = 0, command = new { kind = "goOn" } });
        Assert.Equal(HttpStatusCode.Forbidden, tap.StatusCode);
        Assert.Null((await kitchen.House.Get<EventLog>().LoadAsync(new RunId(other), Stop))!.StateOf(Domain.Tests.Runs.SmallMeal.Stuff).Started);
    }

    [Fact]
    public async Task Who_is_put_out_loses_the_socket_and_the_pages_at_once()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var ivo = await kitchen.JoinAsync("Ivo");
        await using var phone = kitchen.Connect(ivo);
        var entered = await EnterAsync(phone, kitchen.Run);
        var closed = new TaskCompletionSource();
        phone.Closed += _ =>
        {
            closed.TrySetResult();
            return Task.CompletedTask;
        };

        Assert.True((await kitchen.TapAsync(kitchen.Host, new { kind = "putOut", person = entered.Person })).Accepted);
        await closed.Task.WaitAsync(Patience, Stop);
        using var tap = await ivo.PostJsonAsync($"/cook/{kitchen.Run}/taps", new { runId = kitchen.Run, commandId = LiveKitchen.NewCommand(), saw = 0, command = new { kind = "goOn" } });
        Assert.Equal(HttpStatusCode.Unauthorized, tap.StatusCode);
    }

    [Fact]
    public async Task A_line_that_is_held_open_counts_as_use_until_the_session_s_own_limit_cuts_it()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var ivo = await kitchen.JoinAsync("Ivo");
        await using var phone = kitchen.Connect(ivo);
        await EnterAsync(phone, kitchen.Run);
        var closed = new TaskCompletionSource();
        phone.Closed += _ =>
        {
            closed.TrySetResult();
            return Task.CompletedTask;
        };
        var lines = kitchen.House.Services.GetServices<IHostedService>().OfType<HeldLines>().Single();

        for (var used = TimeSpan.Zero; used + Sessions.GuestIdle < Sessions.GuestLimit; used += Sessions.GuestIdle / 2)
        {
            kitchen.House.Clock.Leap(Sessions.GuestIdle / 2);
            await lines.LookAsync(Stop);
        }

        using var card = await ivo.GetAsync($"/cook/{kitchen.Run}/me");
        Assert.Equal(HttpStatusCode.OK, card.StatusCode);
        kitchen.House.Clock.Leap(Sessions.GuestIdle / 2);
        await lines.LookAsync(Stop);
        kitchen.House.Clock.Leap(Sessions.GuestIdle / 2);
        await lines.LookAsync(Stop);
        await closed.Task.WaitAsync(Patience, Stop);
    }

    [Fact]
    public async Task A_guest_s_phone_that_nobody_uses_for_too_long_is_out()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var ivo = await kitchen.JoinAsync("Ivo");
        kitchen.House.Clock.Leap(Sessions.GuestIdle);
        using var card = await ivo.GetAsync($"/cook/{kitchen.Run}/me");
        Assert.Equal(HttpStatusCode.Redirect, card.StatusCode);
    }

    [Fact]
    public async Task Helpers_do_not_put_anybody_out()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var ivo = await kitchen.JoinAsync("Ivo");
        var tobi = (await kitchen.LoadAsync()).People.Keys.First();
        Assert.False((await kitchen.TapAsync(ivo, new { kind = "putOut", person = tobi.Value })).Accepted);
    }

    static async Task<Entered> EnterAsync(HubConnection screen, Guid run)
    {
        await screen.StartAsync(Stop);
        return await screen.InvokeAsync<Entered>("Enter", run, Stop);
    }

    static Task<TapAnswer> SendAsync(HubConnection screen, Guid run, object command) =>
        screen.InvokeAsync<TapAnswer>("Send", new { runId = run, commandId = LiveKitchen.NewCommand(), saw = 0, command }, Stop);
}
