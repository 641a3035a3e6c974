using System.Net;
using System.Net.Http.Json;
using CookAlong.Benchmarks.Kitchens;
using CookAlong.Web.Features.Live.Line;
using CookAlong.Web.Tests.Live;
using Microsoft.AspNetCore.SignalR;
using Microsoft.AspNetCore.SignalR.Client;

namespace CookAlong.Web.Tests.Stores;

/// <summary>PostgreSQL gone in the middle of a run, and back on the same folder: nobody starts the server anew.</summary>
public sealed class DatabaseLostTests
{
    static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Killed_again_and_again_while_people_tap_it_loses_and_doubles_nothing()
    {
        await using var postgres = await StartAsync();
        await using var kitchen = await KitchenProcess.StartAsync(new Dictionary<string, string> { ["COOKALONG_POSTGRES"] = await postgres.NewDatabaseAsync() });

        var report = await CrashLoop.RunAsync(kitchen, [postgres], kills: 4, seed: 1);

        Assert.Equal((0, 0, 0, 0, 0), (report.CommandsLost, report.CommandsDoubled, report.CallsLost, report.AnswersDoubled, report.Refused));
        Assert.True(report.Acknowledged > 50, $"only {report.Acknowledged} taps were answered");
        Assert.True(report.CutOff > 0, "no kill came while a tap was on its way");
        Assert.True(report.Calls > 0, "no call was heard");
    }

    [Fact]
    public async Task While_it_is_away_taps_fail_plainly_and_when_it_is_back_the_kitchen_goes_on_by_itself()
    {
        await using var postgres = await StartAsync();
        await using var kitchen = await LiveKitchen.StartedAsync(settings: new() { ["postgres"] = await postgres.NewDatabaseAsync() });
        await using var tablet = kitchen.Connect(kitchen.Host);
        var rung = new TaskCompletionSource();
        tablet.On<CallNews>("Ring", call =>
        {
            if (call.CallId.StartsWith("in:roast", StringComparison.Ordinal))
            {
                rung.TrySetResult();
            }
        });
        await tablet.StartAsync(Stop);
        await tablet.InvokeAsync<Entered>("Enter", kitchen.Run, Stop);
        Assert.True((await kitchen.TapAsync(kitchen.Host, new { kind = "finishStep", step = "stuff" })).Accepted);
        var before = (await kitchen.LoadAsync()).Sequence;

        await postgres.StopAsync();
        var (posted, sent) = (LiveKitchen.NewCommand(), LiveKitchen.NewCommand());
        Assert.False(await SendAsync(kitchen, posted, 150));
        await Assert.ThrowsAsync<HubException>(() => tablet.InvokeAsync<TapAnswer>("Send", Tap(kitchen, sent, 160), Stop));
        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.ServiceUnavailable), (await StatusAsync(kitchen, "/health/live"), await StatusAsync(kitchen, "/health/ready")));
        using (var page = await PageAsync(kitchen))
        {
            // Nobody is signed out by it.
            Assert.Equal(HttpStatusCode.InternalServerError, page.StatusCode);
            Assert.Contains("Something went wrong on the server", await page.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        }

        // The roast is to go in at 12:40: a call that comes while it is away.
        kitchen.House.Clock.Leap(TimeSpan.FromMinutes(21));
        // The line is open, so screens know the time.
        Assert.True(await tablet.InvokeAsync<long>("Clock", Stop) > 0);

        await postgres.RestartAsync();
        await kitchen.TickUntilAsync(rung.Task);
        for (var copy = 0; copy < 3; copy++)
        {
            Assert.True(await SendAsync(kitchen, posted, 150));
            Assert.True((await tablet.InvokeAsync<TapAnswer>("Send", Tap(kitchen, sent, 160), Stop)).Accepted);
        }

        Assert.Equal(HttpStatusCode.OK, await StatusAsync(kitchen, "/health/ready"));
        var run = await kitchen.LoadAsync();
        Assert.Equal(before + 2, run.Sequence);
        Assert.Equal([150, 160], run.OvenReadings.Values.Single().Select(one => one.Celsius));
    }

    static async Task<OwnPostgres> StartAsync()
    {
        Assert.SkipWhen(OwnPostgres.Missing is not null, OwnPostgres.Missing ?? "");
        return await OwnPostgres.StartAsync(isDurable: false);
    }

    static object Tap(LiveKitchen kitchen, Guid id, int celsius) => new { runId = kitchen.Run, commandId = id, saw = 0, command = new { kind = "readOven", oven = "oven", celsius } };

    /// <returns>False when the server says that it failed.</returns>
    static async Task<bool> SendAsync(LiveKitchen kitchen, Guid id, int celsius)
    {
        using var answer = await kitchen.Host.PostJsonAsync($"/cook/{kitchen.Run}/taps", Tap(kitchen, id, celsius));
        return answer.StatusCode != HttpStatusCode.InternalServerError && (await answer.Content.ReadFromJsonAsync<TapAnswer>(Stop))!.Accepted;
    }

    /// <summary>Of whoever watches the server, who is signed in nowhere.</summary>
    static async Task<HttpStatusCode> StatusAsync(LiveKitchen kitchen, string address)
    {
        using var answer = await kitchen.House.NewBrowser().GetAsync(address);
        return answer.StatusCode;
    }

    static async Task<HttpResponseMessage> PageAsync(LiveKitchen kitchen)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, $"/cook/{kitchen.Run}");
        request.Headers.Accept.ParseAdd("text/html");
        return await kitchen.Host.Client.SendAsync(request, Stop);
    }
}
