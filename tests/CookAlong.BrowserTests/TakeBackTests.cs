using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CookAlong.BrowserTests;

[Collection(Browsers.Name)]
public sealed class TakeBackTests(Household house) : IClassFixture<Household>
{
    [Fact]
    public async Task A_table_that_was_moved_by_mistake_goes_back_from_the_log()
    {
        await using var tablet = await house.HostAsync(ScreenSize.Tablet);
        await Household.StartMashAsync(tablet);
        var run = new Uri(tablet.Page.Url).AbsolutePath;
        await tablet.Page.GetByText("Change of plan").ClickAsync();
        await tablet.Page.GetByRole(AriaRole.Button, new() { Name = "15 min later" }).First.ClickAsync();
        await Expect(tablet.Page.Locator("#slip")).ToContainTextAsync("plan");

        await using var phone = await house.HostAsync(ScreenSize.Phone);
        await phone.GoToAsync($"{run}/log");
        await Expect(phone.Page.GetByText("moved", new() { Exact = false }).First).ToBeVisibleAsync();
        await phone.PictureAsync("log");
        await phone.ShouldBeCleanInEveryLightAsync("log");
        await phone.Page.GetByRole(AriaRole.Button, new() { NameRegex = new("Take back.*moved") }).ClickAsync();
        await Expect(phone.Page.Locator("ol li").First).ToContainTextAsync("back to");
        await Expect(phone.Page.GetByRole(AriaRole.Button, new() { NameRegex = new("Take back.*moved") })).ToHaveCountAsync(0);

        // Nothing has upset the plan any more.
        await Expect(tablet.Page.Locator("#slip")).ToHaveCountAsync(0);
    }
}
