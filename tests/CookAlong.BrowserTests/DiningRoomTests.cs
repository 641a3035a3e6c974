using CookAlong.Web.Features.Live.Wording;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CookAlong.BrowserTests;

/// <summary>Whoever waits at the table is told the truth too: since when nothing was heard of the kitchen, and what it said last.</summary>
[Collection(Browsers.Name)]
public sealed class DiningRoomTests(Household house) : IClassFixture<Household>
{
    [Fact]
    public async Task While_the_server_is_away_the_table_sees_since_when_and_catches_up_by_itself()
    {
        await using var tablet = await house.HostAsync(ScreenSize.Tablet);
        await Household.StartSoupAsync(tablet);
        await using var gran = await house.WatchAsync(tablet, "Gran");
        await Expect(Bread(gran)).ToContainTextAsync("still to come");

        await house.Server.KillAsync();
        await Expect(CutOff(gran)).ToHaveTextAsync(SinceWhen);
        await Expect(CutOff(gran)).Not.ToContainTextAsync("taps");
        await Expect(CutOff(gran)).ToHaveCSSAsync("position", "sticky");
        await Expect(Bread(gran)).ToContainTextAsync("still to come");
        await Expect(gran.Page.Locator(".when")).ToContainTextAsync("in about");
        await gran.ShouldBeCleanInEveryLightAsync("watch-cut-off");

        // The first screen to be back has the bread begun; the table hears of it without a touch.
        await tablet.Page.Locator("#card-knead").GetByRole(AriaRole.Button, new() { Name = "Start", Exact = true }).ClickAsync();
        await house.Server.RestartAsync();
        await Expect(CutOff(gran)).ToBeHiddenAsync();
        await Expect(Bread(gran)).ToContainTextAsync("being made");
        await gran.PictureAsync("watch-back");
    }

    [Fact]
    public async Task A_table_s_page_loaded_anew_while_the_server_is_away_shows_what_it_knew()
    {
        await using var tablet = await house.HostAsync(ScreenSize.Tablet);
        await Household.StartSoupAsync(tablet);
        await using var gran = await house.WatchAsync(tablet, "Gran");
        await tablet.Page.Locator("#card-knead").GetByRole(AriaRole.Button, new() { Name = "Start", Exact = true }).ClickAsync();
        await Expect(Bread(gran)).ToContainTextAsync("being made");
        await gran.HoldAsync("navigator.serviceWorker.controller && caches.match(location.pathname)");
        await gran.HoldAsync("(await (await caches.match(location.pathname + '/board-part'))?.text())?.includes('being made')");

        await house.Server.KillAsync();
        await gran.Page.ReloadAsync();
        await Expect(Bread(gran)).ToContainTextAsync("being made");
        await Expect(CutOff(gran)).ToHaveTextAsync(SinceWhen);
        await house.Server.RestartAsync();
        await Expect(CutOff(gran)).ToBeHiddenAsync();
    }

    [Fact]
    public async Task A_table_s_screen_that_wakes_opens_a_new_socket_and_is_right_again()
    {
        await using var tablet = await house.HostAsync(ScreenSize.Tablet);
        await Household.StartSoupAsync(tablet);
        await using var gran = await house.WatchAsync(tablet, "Gran");
        await Expect(Bread(gran)).ToContainTextAsync("still to come");

        await gran.Page.RunAndWaitForWebSocketAsync(() => gran.Page.EvaluateAsync("document.dispatchEvent(new Event('visibilitychange'))"));
        await tablet.Page.Locator("#card-knead").GetByRole(AriaRole.Button, new() { Name = "Start", Exact = true }).ClickAsync();
        await Expect(Bread(gran)).ToContainTextAsync("being made");
    }

    [Fact]
    public async Task Page_and_server_say_how_long_it_will_be_in_the_same_words()
    {
        await using var screen = await house.OpenAsync("words", ScreenSize.Phone);
        await screen.GoToAsync("/sign-in");
        double[] minutes = [-20, 0, 7.9, 8, 12.4, 12.5, 42, 58, 60, 62, 63, 71, 118, 121, 160, 239, 240, 269, 270, 600, 1055];
        var said = await screen.Page.EvaluateAsync<string[]>("async minutes => { const { roughly } = await import('/js/words.js'); return minutes.map(one => roughly(one * 60_000)); }", minutes);
        Assert.Equal(minutes.Select(one => Words.Roughly(TimeSpan.FromMinutes(one))), said);
    }

    static System.Text.RegularExpressions.Regex SinceWhen { get; } = new(@"Not connected since \d\d:\d\d:\d\d\. This is what the kitchen said last");

    static ILocator CutOff(Screen screen) => screen.Page.Locator("#cut-off");

    static ILocator Bread(Screen screen) => screen.Page.Locator("li").Filter(new() { HasText = "Bread" });
}
