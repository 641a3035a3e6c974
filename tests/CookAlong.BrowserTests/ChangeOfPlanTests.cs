using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CookAlong.BrowserTests;

[Collection(Browsers.Name)]
public sealed class ChangeOfPlanTests(Household house) : IClassFixture<Household>
{
    [Fact]
    public async Task Hands_that_go_and_a_table_that_moves_lead_to_a_new_plan()
    {
        await using var tablet = await house.HostAsync(ScreenSize.Tablet);
        await Household.StartMashAsync(tablet);
        await using var ivo = await house.JoinAsync(tablet, "Ivo");
        await Expect(ivo.Page.GetByText("Change of plan")).ToHaveCountAsync(0);

        await tablet.Page.GetByText("Change of plan").ClickAsync();
        await tablet.PictureAsync("change-of-plan");
        await tablet.ShouldBeCleanAsync();
        await tablet.Page.Locator("fieldset").Filter(new() { HasText = "Ivo" }).GetByRole(AriaRole.Button, new() { Name = "Goes now" }).ClickAsync();

        // What was Ivo's is somebody else's in the plan that is offered, and nothing else of it has to be late.
        await Expect(tablet.Page.Locator("#slip")).ToContainTextAsync("A new plan is ready");
        await tablet.Page.GetByText("Show the new plan").ClickAsync();
        await Expect(tablet.Page.Locator("#offer")).ToContainTextAsync("instead of Ivo");
        await tablet.PictureAsync("hands-gone");
        await tablet.ShouldBeCleanAsync();
        await tablet.Page.GetByRole(AriaRole.Button, new() { Name = "Take the new plan" }).ClickAsync();
        await Expect(tablet.Page.Locator("#slip.wish")).ToHaveCountAsync(0);

        // The phone of the host has the same sheet.
        await using var phone = await house.HostAsync(ScreenSize.Phone);
        await phone.GoToAsync($"{new Uri(tablet.Page.Url).AbsolutePath}/me");
        await phone.Page.GetByText("Change of plan").ClickAsync();
        await phone.Page.GetByText("Change of plan").ScrollIntoViewIfNeededAsync();
        await phone.PictureAsync("change-of-plan-phone");
        await phone.ShouldBeCleanAsync();
        await phone.Page.GetByRole(AriaRole.Button, new() { Name = "30 min later" }).ClickAsync();
        await Expect(phone.Page.Locator("#slip")).ToContainTextAsync("A new plan is ready");
        await phone.PictureAsync("table-moved");
    }
}
