using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CookAlong.BrowserTests;

[Collection(Browsers.Name)]
public sealed class RecipeTests(Household house) : IClassFixture<Household>
{
    [Fact]
    public async Task A_pasted_recipe_is_read_corrected_and_added_to_a_meal()
    {
        await using var host = await house.HostAsync(ScreenSize.Desktop);
        var page = host.Page;
        await page.GetByRole(AriaRole.Link, new() { Name = "Midwinter lunch at Alder Lane" }).First.ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Bring in a dish from a recipe" }).ClickAsync();
        await page.GetByLabel("Paste a recipe").FillAsync(
            """
            Leek and barley bake
            Serves 6
            3 leeks
            200 g pearl barley
            1. Boil the barley for 25 minutes. Drain well.
            2. Soften the leeks in butter for 10 to 12 minutes, stirring.
            3. Scatter with crumbs.
            4. Bake in a moderate oven for 35 minutes or until golden.
            """);
        await host.ShouldBeCleanInEveryLightAsync("recipe-text");
        await page.GetByRole(AriaRole.Button, new() { Name = "Read it" }).ClickAsync();

        await Expect(page.Locator("mark").First).ToHaveTextAsync("25 minutes");
        await Expect(page.GetByText("No time is written")).ToHaveCountAsync(1);
        await host.ShouldBeCleanInEveryLightAsync("recipe-read");
        await page.GetByLabel("Name").FillAsync("Leeks with barley");
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new("Leave it out.*Scatter with crumbs") }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Add it to the meal" }).ClickAsync();

        await Expect(page.GetByText("Leeks with barley")).ToBeVisibleAsync();
        await page.GetByText("Leeks with barley").ClickAsync();
        await Expect(page.GetByText("Bake in a moderate oven for 35 minutes or until golden")).ToBeVisibleAsync();
    }
}
