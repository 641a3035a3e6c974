using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CookAlong.BrowserTests;

/// <summary>A home without HTTPS: the page is no secure context, so the browser withholds the worker, the wake lock and push.</summary>
[Collection(Browsers.Name)]
public sealed class PlainHttpTests(PlainHttpTests.Home house) : IClassFixture<PlainHttpTests.Home>
{
    public sealed class Home(Chromium chromium) : Household(chromium)
    {
        protected override string Address => Server.NamedUrl;
    }

    /// <summary>Keeps what is played, since nobody listens here.</summary>
    const string Listens = """
        globalThis.played = [];
        const start = AudioScheduledSourceNode.prototype.start;
        AudioScheduledSourceNode.prototype.start = function (...at) {
          played.push(this.type);
          return start.apply(this, at);
        };
        """;

    [Fact]
    public async Task Taps_go_to_every_screen()
    {
        await using var tablet = await house.HostAsync(ScreenSize.Tablet);
        await Household.StartSoupAsync(tablet);
        await using var ivo = await house.JoinAsync(tablet, "Ivo");
        Assert.False(await ivo.Page.EvaluateAsync<bool>("isSecureContext || 'serviceWorker' in navigator"));
        await Button(ivo, "Start").ClickAsync();
        await Expect(tablet.Page.Locator("article#card-chop")).ToContainTextAsync("left");
        await ivo.PictureAsync("plain-http");
        await ivo.ShouldBeCleanAsync();
        await tablet.ShouldBeCleanAsync();
    }

    // The device's own clock is the test's: a quarter of an hour of chopping and three minutes more pass in a moment.
    [Fact]
    public async Task An_open_page_rings_keeps_taps_and_says_that_it_is_cut_off_while_the_server_is_away()
    {
        await using var tablet = await house.HostAsync(ScreenSize.Tablet);
        await Household.StartSoupAsync(tablet);
        await using var ivo = await house.JoinAsync(tablet, "Ivo", Listens);
        await ivo.Page.Clock.InstallAsync();
        await ivo.Page.ReloadAsync();
        await Button(ivo, "Start").ClickAsync();
        await Expect(ivo.Page.Locator("article.job")).ToContainTextAsync("left");
        await Button(ivo, "Arm this device").ClickAsync();
        await Button(ivo, "I heard it").ClickAsync();
        await Expect(ivo.Page.Locator("#arm")).ToHaveAttributeAsync("data-armed", "yes");

        await house.Server.KillAsync();
        await ivo.Page.EvaluateAsync("played.length = 0");
        await ivo.Page.Clock.FastForwardAsync("18:30");
        await Expect(ivo.Page.Locator("#cut-off")).ToContainTextAsync("Not connected since");
        await ivo.PictureAsync("plain-http-away");
        var over = ivo.Page.Locator("#ringing .medium").Filter(new() { HasText = "Running over: Chop the vegetables" });
        await Expect(over).ToBeVisibleAsync();
        await ivo.HoldAsync("played.includes('triangle')");

        // The page stays in use: the answer is kept, and so is the tick.
        await over.GetByRole(AriaRole.Button, new() { Name = "I have it" }).ClickAsync();
        await Expect(over).ToHaveCountAsync(0);
        await Button(ivo, "Done").ClickAsync();
        await Expect(ivo.Page.Locator("#outbox")).ToContainTextAsync("Waiting to send");
        await ivo.PictureAsync("plain-http-cut-off");
        await ivo.ShouldBeCleanAsync();

        await house.Server.RestartAsync();
        await ivo.Page.Clock.ResumeAsync();
        await Expect(ivo.Page.Locator("#cut-off")).ToBeHiddenAsync();
        await Expect(ivo.Page.Locator("#outbox")).ToBeHiddenAsync();
        await Expect(tablet.Page.Locator("article#card-chop").GetByRole(AriaRole.Button, new() { Name = "Done" })).ToHaveCountAsync(0);
    }

    [Theory]
    [InlineData("secure")]
    [InlineData("awake")]
    [InlineData("copy")]
    [InlineData("notify")]
    public async Task The_device_s_page_says_what_it_cannot_do(string ability)
    {
        await using var tablet = await house.HostAsync(ScreenSize.Tablet);
        await Household.StartMashAsync(tablet);
        await tablet.GoToAsync($"{new Uri(tablet.Page.Url).AbsolutePath}/device");
        var row = tablet.Page.Locator($"[data-can={ability}]");
        await Expect(row.Locator(".state")).ToHaveTextAsync("no");
        await Expect(row.Locator("[data-when=no]")).ToBeVisibleAsync();
        await Expect(tablet.Page.Locator("[data-can=sound] .state")).ToHaveTextAsync("yes");
        await Expect(tablet.Page.Locator("[data-push-words]")).ToContainTextAsync("cannot be called while the page is closed");
    }

    static ILocator Button(Screen screen, string name) => screen.Page.GetByRole(AriaRole.Button, new() { Name = name, Exact = true }).First;
}
