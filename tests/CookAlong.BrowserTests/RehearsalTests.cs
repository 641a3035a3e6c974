using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CookAlong.BrowserTests;

/// <summary>A first look at the app: the plan's kitchen plays itself in a few seconds.</summary>
[Collection(Browsers.Name)]
public sealed class RehearsalTests(Household house) : IClassFixture<Household>
{
    [Fact]
    public async Task A_rehearsal_is_marked_goes_by_itself_and_ends_with_one_tap()
    {
        await using var tablet = await house.HostAsync(ScreenSize.Tablet);
        await Household.PlanAsync(tablet, SoupForSix.Json("Soup to be rehearsed", TimeProvider.System.GetUtcNow()));
        await tablet.PictureAsync("plan-rehearse");
        await tablet.Page.GetByLabel("Speed of the rehearsal").SelectOptionAsync("120");
        await tablet.Page.GetByRole(AriaRole.Button, new() { Name = "Rehearse it" }).ClickAsync();
        await tablet.Page.WaitForURLAsync("**/cook/*");
        var band = tablet.Page.GetByRole(AriaRole.Complementary, new() { Name = "Rehearsal" });
        await Expect(band).ToContainTextAsync("120×");

        // Nobody taps, and twelve minutes of kneading are over in some seconds.
        await Expect(tablet.Page.Locator("article#card-knead")).ToContainTextAsync("left", new() { Timeout = 30_000 });
        await tablet.PictureAsync("rehearsal-board");
        await tablet.ShouldBeCleanAsync();
        await Expect(tablet.Page.Locator("article#card-knead")).ToHaveCountAsync(0, new() { Timeout = 30_000 });

        var board = new Uri(tablet.Page.Url).AbsolutePath;
        await tablet.GoToAsync($"{board}/log");
        await Expect(tablet.Page.Locator("main")).ToContainTextAsync("began “Knead the dough”");
        await Expect(band).ToBeVisibleAsync();
        await tablet.PictureAsync("rehearsal-log");
        await using var phone = await house.HostAsync(ScreenSize.Phone);
        await phone.GoToAsync($"{board}/me");
        await phone.PictureAsync("rehearsal-me");
        await Expect(phone.Page.GetByRole(AriaRole.Complementary, new() { Name = "Rehearsal" })).ToBeVisibleAsync();
        await phone.ShouldBeCleanAsync();

        await phone.Page.GetByRole(AriaRole.Button, new() { Name = "End the rehearsal" }).ClickAsync();
        await Expect(phone.Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("is over");
        await Expect(phone.Page.GetByRole(AriaRole.Button, new() { Name = "End the rehearsal" })).ToHaveCountAsync(0);
        await phone.PictureAsync("rehearsal-over");
    }
}
