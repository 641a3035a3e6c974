using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CookAlong.BrowserTests;

/// <summary>Phones as they are: their clocks are wrong, they sleep in pockets, their sockets die without a word.</summary>
[Collection(Browsers.Name)]
public sealed class DeviceTroubleTests(Household house) : IClassFixture<Household>
{
    /// <summary>A device whose own clock runs ahead, in all that a page can ask it.</summary>
    static string ClockAhead(int minutes) =>
        $$"""
        const shift = {{minutes}} * 60_000, now = Date.now.bind(Date), origin = performance.timeOrigin;
        globalThis.honestNow = now;
        Date.now = () => now() + shift;
        Object.defineProperty(performance, "timeOrigin", { get: () => origin + shift });
        """;

    /// <summary>As over plain HTTP. With a worker the test could not stand between the page and the server.</summary>
    const string NoWorker = "delete Navigator.prototype.serviceWorker;";

    [Theory]
    [InlineData(5)]
    public async Task Countdowns_agree_though_a_phone_s_clock_is_minutes_wrong(int minutes)
    {
        await using var tablet = await house.HostAsync(ScreenSize.Tablet);
        await Household.StartSoupAsync(tablet);
        await using var ivo = await house.JoinAsync(tablet, "Ivo", ClockAhead(minutes));

        // The best of eight readings of the server's clock; each half of a round trip on this machine takes a few ms.
        await Expect(ivo.Page.Locator("article.job")).ToBeVisibleAsync();
        await ivo.HoldAsync("Math.abs((await import('/js/clock.js')).now() - honestNow()) < 250");
    }

    [Fact]
    public async Task A_phone_that_wakes_opens_a_new_socket_and_is_right_again()
    {
        await using var tablet = await house.HostAsync(ScreenSize.Tablet);
        await Household.StartSoupAsync(tablet);
        await using var ivo = await house.JoinAsync(tablet, "Ivo");
        await Expect(ivo.Page.Locator("article.job")).ToContainTextAsync("Chop the vegetables");

        var opened = new TaskCompletionSource();
        ivo.Page.WebSocket += (_, _) => opened.TrySetResult();
        await ivo.Page.EvaluateAsync("document.dispatchEvent(new Event('visibilitychange'))");
        await opened.Task.WaitAsync(TimeSpan.FromMinutes(1), TestContext.Current.CancellationToken);

        // The old one is let go and the new one carries news.
        await tablet.Page.Locator("article#card-chop").GetByRole(AriaRole.Button, new() { Name = "Start", Exact = true }).ClickAsync();
        await Expect(ivo.Page.Locator("article.job")).ToContainTextAsync("left");
    }

    // A browser stops what nobody sees: no timer runs in the tab and no news is heard until it comes to the front.
    [Fact]
    public async Task A_tab_that_was_hidden_and_stopped_is_right_again_when_it_comes_to_the_front()
    {
        await using var tablet = await house.HostAsync(ScreenSize.Tablet);
        await Household.StartSoupAsync(tablet);
        await using var ivo = await house.JoinAsync(tablet, "Ivo", NoWorker);
        var isHidden = false;
        await ivo.Page.RouteWebSocketAsync("**/hubs/live", socket =>
        {
            var server = socket.ConnectToServer();
            var isOld = false;
            socket.OnMessage(frame => Pass(frame, server.Send, server.Send));
            server.OnMessage(frame => Pass(frame, socket.Send, socket.Send));

            // What was open while the tab was hidden stays as good as dead.
            void Pass(IWebSocketFrame frame, Action<string> text, Action<byte[]> binary)
            {
                isOld |= isHidden;
                if (!isOld && frame.Text is { } words)
                {
                    text(words);
                }
                else if (!isOld && frame.Binary is { } bytes)
                {
                    binary(bytes);
                }
            }
        });
        await ivo.Page.Clock.InstallAsync();
        await ivo.Page.ReloadAsync();
        await Expect(ivo.Page.Locator("article.job")).ToContainTextAsync("Chop the vegetables");
        await ivo.HoldAsync("(await import('/js/clock.js')).now() > 0");
        await ivo.Page.EvaluateAsync("""
            globalThis.look = "hidden";
            Object.defineProperty(document, "visibilityState", { get: () => look });
            Object.defineProperty(document, "hidden", { get: () => look === "hidden" });
            document.dispatchEvent(new Event("visibilitychange"));
            """);
        isHidden = true;
        await ivo.Page.Clock.PauseAtAsync(TimeProvider.System.GetUtcNow().UtcDateTime.AddMinutes(1));
        await StartChoppingAsync(tablet);
        await Expect(tablet.Page.Locator("article#card-chop")).ToContainTextAsync("left");
        Assert.DoesNotContain("left", await ivo.Page.Locator("article.job").TextContentAsync(), StringComparison.Ordinal);

        isHidden = false;
        await ivo.Page.BringToFrontAsync();
        await ivo.Page.EvaluateAsync("look = 'visible'; document.dispatchEvent(new Event('visibilitychange'))");
        await ivo.Page.Clock.ResumeAsync();
        await Expect(ivo.Page.Locator("article.job")).ToContainTextAsync("left");
        await Expect(ivo.Page.Locator("#cut-off")).ToBeHiddenAsync();
    }

    [Fact]
    public async Task A_phone_without_a_network_keeps_its_taps_and_sends_them_when_it_is_back()
    {
        await using var tablet = await house.HostAsync(ScreenSize.Tablet);
        await Household.StartSoupAsync(tablet);
        await using var ivo = await house.JoinAsync(tablet, "Ivo");
        await Expect(ivo.Page.Locator("article.job")).ToContainTextAsync("Chop the vegetables");

        // Offline stops what is asked anew; the line to the hub is cut as a dead spot would cut it.
        await ivo.Page.RouteWebSocketAsync("**/hubs/live", socket => socket.CloseAsync());
        await ivo.Context.SetOfflineAsync(true);
        await ivo.Page.EvaluateAsync("document.dispatchEvent(new Event('visibilitychange'))");
        await ivo.Page.GetByRole(AriaRole.Button, new() { Name = "Start", Exact = true }).First.ClickAsync();
        await ivo.Context.SetOfflineAsync(false);
        await Expect(tablet.Page.Locator("article#card-chop")).ToContainTextAsync("left");
        await Expect(ivo.Page.Locator("#outbox")).ToBeHiddenAsync();
    }

    [Fact]
    public async Task What_is_refused_long_after_the_tap_stays_until_somebody_has_read_it()
    {
        await using var tablet = await house.HostAsync(ScreenSize.Tablet);
        await Household.StartSoupAsync(tablet);
        await using var ivo = await house.JoinAsync(tablet, "Ivo");
        await ivo.Page.Clock.InstallAsync();
        await ivo.Page.ReloadAsync();
        await ivo.Page.RouteWebSocketAsync("**/hubs/live", socket => socket.CloseAsync());
        await ivo.Context.SetOfflineAsync(true);
        await ivo.Page.EvaluateAsync("document.dispatchEvent(new Event('visibilitychange'))");
        await ivo.Page.GetByRole(AriaRole.Button, new() { Name = "Start", Exact = true }).First.ClickAsync();
        await Expect(ivo.Page.Locator("#outbox")).ToBeVisibleAsync();

        // Meanwhile somebody else has begun it.
        await StartChoppingAsync(tablet);
        await Expect(tablet.Page.Locator("article#card-chop")).ToContainTextAsync("left");
        await ivo.Page.Clock.FastForwardAsync("00:11");
        await ivo.Context.SetOfflineAsync(false);
        var said = ivo.Page.Locator("#said p");
        await Expect(said).ToContainTextAsync("Start: Chop the vegetables");
        await ivo.Page.Clock.FastForwardAsync("00:20");
        await Expect(said).ToBeVisibleAsync();
        await ivo.PictureAsync("refused-late");
        await ivo.ShouldBeCleanAsync();
        await said.GetByRole(AriaRole.Button, new() { Name = "Understood" }).ClickAsync();
        await Expect(said).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task A_board_that_hangs_on_its_way_is_asked_for_again()
    {
        await using var tablet = await house.HostAsync(ScreenSize.Tablet);
        await Household.StartSoupAsync(tablet);
        await using var ivo = await house.JoinAsync(tablet, "Ivo", NoWorker);
        await Expect(ivo.Page.Locator("article.job")).ToContainTextAsync("Chop the vegetables");

        // Neither an answer nor an end, while the socket goes on telling the time.
        var hung = new TaskCompletionSource();
        await ivo.Page.RouteAsync("**/me-part", _ =>
        {
            hung.TrySetResult();
            return Task.CompletedTask;
        }, new() { Times = 1 });
        await StartChoppingAsync(tablet);
        await hung.Task.WaitAsync(TimeSpan.FromMinutes(1), TestContext.Current.CancellationToken);

        await Expect(ivo.Page.Locator("article.job")).ToContainTextAsync("left");
    }

    [Fact]
    public async Task A_board_that_stays_behind_the_news_says_so()
    {
        await using var tablet = await house.HostAsync(ScreenSize.Tablet);
        await Household.StartSoupAsync(tablet);
        await using var ivo = await house.JoinAsync(tablet, "Ivo", NoWorker);
        await Expect(ivo.Page.Locator("article.job")).ToContainTextAsync("Chop the vegetables");
        await ivo.Page.RouteAsync("**/me-part", page => page.AbortAsync());
        await StartChoppingAsync(tablet);

        await Expect(ivo.Page.Locator("#cut-off")).ToContainTextAsync("Not connected since");
        await ivo.Page.UnrouteAsync("**/me-part");

        await Expect(ivo.Page.Locator("article.job")).ToContainTextAsync("left");
        await Expect(ivo.Page.Locator("#cut-off")).ToBeHiddenAsync();
    }

    [Fact]
    public async Task A_server_without_its_database_takes_no_tap_and_the_screen_says_so_until_it_has_it_again()
    {
        await using var tablet = await house.HostAsync(ScreenSize.Tablet);
        await Household.StartSoupAsync(tablet);
        await Expect(tablet.Page.Locator("article#card-chop")).ToBeVisibleAsync();
        await house.Server.ChangeDatabaseAsync("ALTER TABLE Sessions RENAME TO Away");
        await StartChoppingAsync(tablet);

        await Expect(tablet.Page.Locator("#outbox")).ToContainTextAsync("Waiting to send: Start");
        await Expect(tablet.Page.Locator("#cut-off")).ToContainTextAsync("Not connected since");
        await Expect(tablet.Page.Locator("article#card-chop")).ToBeVisibleAsync();
        await house.Server.ChangeDatabaseAsync("ALTER TABLE Away RENAME TO Sessions");

        await Expect(tablet.Page.Locator("#outbox")).ToBeHiddenAsync();
        await Expect(tablet.Page.Locator("#cut-off")).ToBeHiddenAsync();
        await Expect(tablet.Page.Locator("article#card-chop")).ToContainTextAsync("left");
    }

    [Fact]
    public async Task The_plan_is_changed_only_while_the_server_answers()
    {
        await using var tablet = await house.HostAsync(ScreenSize.Tablet);
        await Household.StartSoupAsync(tablet);
        await house.Server.KillAsync();
        await Expect(tablet.Page.Locator("#cut-off")).ToBeVisibleAsync();
        await tablet.Page.GetByText("End early").ClickAsync();
        await tablet.Page.GetByRole(AriaRole.Button, new() { Name = "End the meal now" }).ClickAsync();

        await Expect(tablet.Page.Locator("#said")).ToContainTextAsync("the server does not answer");
        await Expect(tablet.Page.Locator("#outbox")).ToBeHiddenAsync();
        await tablet.PictureAsync("plan-needs-server");
        await house.Server.RestartAsync();
        await Expect(tablet.Page.Locator("#cut-off")).ToBeHiddenAsync();
        await Expect(tablet.Page.GetByText("End early")).ToBeVisibleAsync();
    }

    static Task StartChoppingAsync(Screen tablet) =>
        tablet.Page.Locator("article#card-chop").GetByRole(AriaRole.Button, new() { Name = "Start", Exact = true }).ClickAsync();
}
