using System.Text.RegularExpressions;
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
        await page.GetByLabel("or paste a recipe").FillAsync(
            """
            Leek and barley bake
            Serves 6
            Prep: 20 min | Cook: 2 h | Total: 90 min
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
        await Expect(page.GetByText("The recipe says: 20 min to prepare, 2 h to cook, 1 h 30 min in all.")).ToBeVisibleAsync();
        await Expect(page.GetByText("Its times contradict each other")).ToBeVisibleAsync();
        await host.ShouldBeCleanInEveryLightAsync("recipe-read");
        await page.GetByLabel("Name").FillAsync("Leeks with barley");
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new("Leave it out.*Scatter with crumbs") }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Add it to the meal" }).ClickAsync();

        await Expect(page.Locator("summary", new() { HasText = "Leeks with barley" })).ToBeVisibleAsync();
        await page.Locator("summary", new() { HasText = "Leeks with barley" }).ClickAsync();
        await Expect(page.GetByText("Bake in a moderate oven for 35 minutes or until golden")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task What_was_read_says_how_sure_it_is_and_is_corrected_before_it_is_saved()
    {
        await using var host = await house.HostAsync(ScreenSize.Phone);
        var page = host.Page;
        await page.GetByRole(AriaRole.Link, new() { Name = "Midwinter lunch at Alder Lane" }).First.ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Bring in a dish from a recipe" }).ClickAsync();
        await page.GetByLabel("or paste a recipe").FillAsync(
            """
            Rib of beef, roasted
            Serves 6
            2 kg rolled and boned rib of beef from the butcher's best side (room temperature)
            2-3 tbsp dripping or oil
            a knob of butter
            salt to taste
            1. Rub the beef with salt.
            2. Roast in a moderate oven, 20 minutes to the pound plus 20 minutes, basting every 15 minutes.
            3. Rest for 20 minutes, then chill what is left overnight.
            """);
        await page.GetByRole(AriaRole.Button, new() { Name = "Read it" }).ClickAsync();
        await Expect(page.GetByText("at 20 min a pound, and 20 min more.")).ToBeVisibleAsync();
        await page.GetByLabel("Ingredient").Nth(0).FillAsync("rib of beef");
        await page.GetByLabel("Amount").Nth(0).FillAsync("2.5");
        await page.GetByRole(AriaRole.Button, new() { Name = "Leave out salt" }).ClickAsync();
        await Expect(page.Locator("label", new() { HasText = "Amount" }).First).ToContainTextAsync("yours");
        await host.ShouldBeCleanInEveryLightAsync("recipe-sure");
        await page.GetByRole(AriaRole.Button, new() { Name = "Add it to the meal" }).ClickAsync();

        await page.Locator("summary", new() { HasText = "Rib of beef, roasted" }).ClickAsync();
        await Expect(page.GetByText(new Regex("2.5 kg rib of beef"))).ToBeVisibleAsync();
    }

    // Larger than one message of the planning page's line may be.
    [Fact]
    public async Task The_whole_source_of_a_page_is_read_pasted_or_as_a_file_and_an_address_at_home_is_refused()
    {
        await using var host = await house.HostAsync(ScreenSize.Phone);
        var page = host.Page;
        await page.GetByRole(AriaRole.Link, new() { Name = "Midwinter lunch at Alder Lane" }).First.ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Bring in a dish from a recipe" }).ClickAsync();
        await page.GetByLabel("The address of a page").FillAsync("http://127.0.0.1:1/soup");
        await page.GetByRole(AriaRole.Button, new() { Name = "Fetch it" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Status).Filter(new() { HasText = "not on the public internet" })).ToBeVisibleAsync();
        await host.ShouldBeCleanInEveryLightAsync("recipe-address-refused");

        var source = $$"""
            <html><head><style>{{new string(' ', 200_000)}}</style><script type="application/ld+json">
            {"@type": "Recipe", "name": "Barley <img src=x onerror=alert(1)> broth", "recipeYield": "4", "recipeIngredient": ["200 g barley"], "recipeInstructions": [{"@type": "HowToStep", "text": "Simmer for 50 minutes."}]}
            </script></head><body>{{new string('x', 100_000)}}</body></html>
            """;
        // At once, as a paste does it: typed in by the browser's driver, so much text keeps the page busy for seconds.
        await page.GetByLabel("or paste a recipe").EvaluateAsync("(area, text) => { area.value = text; }", source);
        await page.GetByRole(AriaRole.Button, new() { Name = "Read it" }).ClickAsync();
        await Expect(page.Locator("mark").First).ToHaveTextAsync("50 minutes");
        await page.GetByRole(AriaRole.Button, new() { Name = "Back to the text" }).ClickAsync();
        await Expect(page.GetByLabel("or paste a recipe")).ToHaveValueAsync(new Regex("^<html>"));

        await page.Locator("#recipe-file").SetInputFilesAsync(new FilePayload { Name = "broth.txt", MimeType = "text/plain", Buffer = [.. "Cr"u8, 0xE9, .. "cy broth\nServes 4\n1. Simmer for 40 minutes.\n"u8] });
        await Expect(page.GetByLabel("Name")).ToHaveValueAsync("Crécy broth");
        Assert.Empty(host.Complaints);
    }
}
