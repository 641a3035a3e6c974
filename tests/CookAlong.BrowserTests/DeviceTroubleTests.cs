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
}
