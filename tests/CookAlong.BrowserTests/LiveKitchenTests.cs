using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CookAlong.BrowserTests;

[Collection(Browsers.Name)]
public sealed class LiveKitchenTests(Household house) : IClassFixture<Household>
{
    [Fact]
    public async Task A_tablet_and_two_phones_cook_together_through_a_crash()
    {
        await using var tablet = await house.HostAsync(ScreenSize.Tablet);
        await Household.StartSoupAsync(tablet);
        await using var ivo = await house.JoinAsync(tablet, "Ivo");
        await using var tobi = await house.JoinAsync(tablet, "Tobi");

        // Each phone has its own job first.
        await Expect(ivo.Page.Locator("article.job")).ToContainTextAsync("Chop the vegetables");
        await Expect(tobi.Page.Locator("article.job")).ToContainTextAsync("Wash the leaves");
        await Expect(tobi.Page.Locator("#live")).Not.ToContainTextAsync("Chop the vegetables");

        // A start on a phone is running on the tablet.
        await TapAsync(ivo, "Start");
        await Expect(Card(tablet, "chop")).ToContainTextAsync("left");

        // Done there, gone here; a wrong tick is taken back.
        await TapAsync(ivo, "Done");
        await Expect(Card(tablet, "chop")).ToHaveCountAsync(0);
        await tablet.Page.GetByText("Done 1").ClickAsync();
        await tablet.Page.GetByRole(AriaRole.Button, new() { NameRegex = new("Take back.*Chop") }).ClickAsync();
        await Expect(Card(tablet, "chop")).ToContainTextAsync("left");

        // A pause point: everyone waits until the host says go on.
        await TapAsync(tobi, "Start");
        await TapAsync(tobi, "Done");
        await Expect(tablet.Page.GetByRole(AriaRole.Heading, new() { Name = "Pause here" })).ToBeVisibleAsync();
        await Expect(ivo.Page.GetByRole(AriaRole.Heading, new() { Name = "Pause here" })).ToBeVisibleAsync();
        await tablet.PictureAsync("pause");

        // The power goes.
        await house.Server.KillAsync();
        await Expect(ivo.Page.Locator("#cut-off")).ToContainTextAsync("not connected", new() { IgnoreCase = true });
        await Expect(tablet.Page.Locator("#cut-off")).ToBeVisibleAsync();
        await Expect(tablet.Page.GetByRole(AriaRole.Heading, new() { Name = "Pause here" })).ToBeVisibleAsync();
        await tablet.PictureAsync("cut-off");
        await house.Server.RestartAsync();

        // Every screen comes back by itself to the same board, and goes on.
        await Expect(ivo.Page.Locator("#cut-off")).ToBeHiddenAsync();
        await Expect(tablet.Page.Locator("#cut-off")).ToBeHiddenAsync();
        await Expect(tablet.Page.GetByRole(AriaRole.Heading, new() { Name = "Pause here" })).ToBeVisibleAsync();
        await tablet.Page.GetByRole(AriaRole.Button, new() { Name = "Go on" }).ClickAsync();
        await Expect(ivo.Page.GetByRole(AriaRole.Heading, new() { Name = "Pause here" })).ToBeHiddenAsync();
        await Expect(tobi.Page.Locator("#live")).ToContainTextAsync("Dress the salad");

        foreach (var screen in new[] { tablet, ivo, tobi })
        {
            await screen.PictureAsync("cooking");
            await screen.ShouldBeCleanAsync();
        }
    }

    [Fact]
    public async Task A_tap_made_while_the_server_is_away_arrives_when_it_is_back()
    {
        await using var tablet = await house.HostAsync(ScreenSize.Tablet);
        await Household.StartSoupAsync(tablet);
        await using var ivo = await house.JoinAsync(tablet, "Ivo");
        await TapAsync(ivo, "Start");
        await Expect(Card(tablet, "chop")).ToContainTextAsync("left");
        await Expect(ivo.Page.Locator("article.job")).ToContainTextAsync("left");

        await house.Server.KillAsync();
        await TapAsync(ivo, "Done");
        await Expect(ivo.Page.Locator("#outbox")).ToBeVisibleAsync();
        await ivo.PictureAsync("waiting-to-send");
        await house.Server.RestartAsync();

        await Expect(ivo.Page.Locator("#outbox")).ToBeHiddenAsync();
        await Expect(Card(tablet, "chop")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task A_slip_is_said_and_the_new_plan_taken()
    {
        await using var tablet = await house.HostAsync(ScreenSize.Tablet);
        await Household.StartSoupAsync(tablet);
        await using var ivo = await house.JoinAsync(tablet, "Ivo");
        await TapAsync(ivo, "Start");

        await TapAsync(ivo, "+ 5 min");
        await TapAsync(ivo, "+ 5 min");
        await TapAsync(ivo, "+ 5 min");

        await Expect(tablet.Page.Locator("#slip")).ToContainTextAsync("late");
        await tablet.PictureAsync("slip");
        await tablet.ShouldBeCleanAsync();
    }

    [Fact]
    public async Task A_call_answered_on_one_screen_is_silent_on_all()
    {
        await using var tablet = await house.HostAsync(ScreenSize.Tablet);
        await Household.StartSoupAsync(tablet);
        await using var ivo = await house.JoinAsync(tablet, "Ivo");
        await Expect(tablet.Page.Locator("#unheard")).ToBeVisibleAsync();
        await tablet.PictureAsync("unheard");
        await tablet.Page.GetByRole(AriaRole.Button, new() { Name = "Arm this device" }).ClickAsync();
        await tablet.PictureAsync("heard");
        await tablet.Page.GetByRole(AriaRole.Button, new() { Name = "I heard it" }).ClickAsync();
        await Expect(tablet.Page.Locator("#unheard")).ToHaveCountAsync(0);
        await tablet.PictureAsync("armed");

        // The stock goes on the ring: a call on every screen.
        var have = Card(tablet, "simmer").GetByRole(AriaRole.Button, new() { Name = "I have it" });
        await Expect(have).ToBeVisibleAsync();
        await ivo.PictureAsync("call");
        await have.ClickAsync();
        await Expect(Card(ivo, "simmer").GetByRole(AriaRole.Button, new() { Name = "I have it" })).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task A_device_says_what_it_can_do_and_lets_each_kind_of_call_be_heard()
    {
        await using var tablet = await house.HostAsync(ScreenSize.Tablet);
        await Household.StartSoupAsync(tablet);
        await tablet.Page.GetByRole(AriaRole.Link, new() { Name = "This device" }).ClickAsync();
        await Expect(tablet.Page.Locator("[data-can=sound]")).ToHaveAttributeAsync("data-state", "yes");

        // A loopback address counts as secure, whatever it came over.
        await Expect(tablet.Page.Locator("[data-can=secure] .state")).ToHaveTextAsync("yes");
        await Expect(tablet.Page.GetByRole(AriaRole.Button, new() { Name = "Hear it" })).ToHaveCountAsync(3);
        await tablet.Page.GetByRole(AriaRole.Button, new() { Name = "Hear it" }).First.ClickAsync();
        await tablet.ShouldBeCleanInEveryLightAsync("device");
    }

    // A screen of 5 px a millimetre: 13 mm of capitals want type of 97 px, 25 mm of digits 182 px, a button is 100 px high.
    [Fact]
    public async Task A_wall_is_read_across_the_room_once_its_screen_was_measured_and_keeps_the_light_it_was_given()
    {
        await using var tablet = await house.HostAsync(ScreenSize.Tablet);
        await Household.StartSoupAsync(tablet);
        await tablet.Page.GetByRole(AriaRole.Link, new() { Name = "This device" }).ClickAsync();
        await tablet.Page.GetByLabel("Night, or a dim kitchen").CheckAsync();
        await Expect(tablet.Page.GetByLabel("Night, or a dim kitchen")).ToBeCheckedAsync();
        await tablet.Page.GetByLabel("Width of the card").FillAsync("428");
        await tablet.Page.GetByRole(AriaRole.Button, new() { Name = "It is as wide" }).ClickAsync();
        await tablet.Page.GetByRole(AriaRole.Link, new() { Name = "To the wall view" }).ClickAsync();

        await Expect(tablet.Page.Locator(".wall-card h2")).ToHaveCSSAsync("font-size", "97px");
        await Expect(tablet.Page.Locator(".wall-card .left time")).ToHaveCSSAsync("font-size", "182px");
        Assert.All(
            await tablet.Page.Locator(".wall-card button").EvaluateAllAsync<double[][]>("all => all.map(one => [one.getBoundingClientRect().height, one.getBoundingClientRect().width])"),
            button => Assert.True(button[0] >= 100 && button[1] >= 100, $"{button[0]} × {button[1]} px"));
        await Expect(tablet.Page.Locator("body")).ToHaveCSSAsync("background-color", "rgb(28, 24, 21)");
        await tablet.PictureAsync("wall");
        await tablet.ShouldBeCleanAsync();
    }

    [Fact]
    public async Task A_page_loaded_anew_while_the_server_is_away_shows_its_last_board_and_says_how_old_it_is()
    {
        await using var tablet = await house.HostAsync(ScreenSize.Tablet);
        await Household.StartSoupAsync(tablet);
        await using var ivo = await house.JoinAsync(tablet, "Ivo");
        await TapAsync(ivo, "Start");
        await Expect(ivo.Page.Locator("article.job")).ToContainTextAsync("left");
        await ivo.HoldAsync("navigator.serviceWorker.controller && caches.match(location.pathname)");
        await ivo.HoldAsync("(await (await caches.match(location.pathname + '-part'))?.text())?.includes('left of')");

        await house.Server.KillAsync();
        await ivo.Page.ReloadAsync();
        await Expect(ivo.Page.Locator("article.job")).ToContainTextAsync("left");
        await Expect(ivo.Page.Locator("#cut-off")).ToContainTextAsync("Not connected since");
        await ivo.PictureAsync("kept");
        await TapAsync(ivo, "Done");
        await Expect(ivo.Page.Locator("#outbox")).ToBeVisibleAsync();
        await house.Server.RestartAsync();

        await Expect(ivo.Page.Locator("#cut-off")).ToBeHiddenAsync();
        await Expect(Card(tablet, "chop")).ToHaveCountAsync(0);
        await ivo.ShouldBeCleanAsync();
    }

    static Task TapAsync(Screen screen, string button) =>
        screen.Page.GetByRole(AriaRole.Button, new() { Name = button, Exact = true }).First.ClickAsync();

    static ILocator Card(Screen screen, string step) => screen.Page.Locator($"article#card-{step}");
}
