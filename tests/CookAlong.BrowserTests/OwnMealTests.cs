using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CookAlong.BrowserTests;

/// <summary>Somebody makes a meal of their own, without a file, and plans it.</summary>
[Collection(Browsers.Name)]
public sealed class OwnMealTests(Household house) : IClassFixture<Household>
{
    [Fact]
    public async Task A_meal_is_made_made_ones_own_and_planned()
    {
        await using var host = await house.HostAsync(ScreenSize.Tablet);
        var page = host.Page;
        await page.GetByRole(AriaRole.Link, new() { Name = "New meal" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "A new meal" })).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Make it" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("Give the meal a name first.");
        await page.GetByLabel("What is it?").FillAsync("Supper on a Sunday");
        await page.GetByLabel("First dish").SelectOptionAsync(new SelectOptionValue { Label = "Black vinegar and ginger dip" });
        await page.GetByLabel("Kitchen, people and guests").SelectOptionAsync("");
        await host.ShouldBeCleanInEveryLightAsync("new-meal");
        await page.GetByRole(AriaRole.Button, new() { Name = "Make it" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Supper on a Sunday", Level = 1 })).ToBeVisibleAsync();

        // Each change is kept as it is made.
        await OpenAsync(page, "Guests");
        await page.GetByRole(AriaRole.Button, new() { Name = "Another guest" }).ClickAsync();
        await SetAsync(page.GetByLabel("Must not eat"), "sesame");
        await Expect(page.Locator("#who-title")).ToBeVisibleAsync();

        await OpenAsync(page, "Who cooks");
        await page.GetByRole(AriaRole.Button, new() { Name = "Another pair of hands" }).ClickAsync();
        await SetAsync(page.GetByLabel("Here from").Last, "11:30");
        await Expect(page.Locator(".helpers")).ToContainTextAsync("11:30–23:59");

        await OpenAsync(page, "Kitchen");
        await SetAsync(page.GetByLabel("Rings"), "5");
        // Whoever goes on to the next field keeps it, whatever is kept meanwhile.
        await page.GetByLabel("Shelves").FillAsync("2");
        await page.GetByLabel("Shelves").PressAsync("Tab");
        await Expect(page.Locator("#kitchen-title + ul")).ToContainTextAsync("2 shelves");
        await Expect(page.GetByLabel("Lowest °C")).ToBeFocusedAsync();
        await Expect(page.Locator("#kitchen-title + ul")).ToContainTextAsync("5 rings");
        await SetAsync(page.GetByLabel("Rings"), "99");
        await Expect(page.Locator(".kept")).ToContainTextAsync("Rings is a whole number from 0 to 12.");
        await Expect(page.GetByLabel("Rings")).ToHaveValueAsync("5");

        await OpenAsync(page, "Courses");
        await page.GetByRole(AriaRole.Button, new() { Name = "Another course" }).ClickAsync();
        await Expect(page.Locator("#tables-title ~ ul li")).ToHaveCountAsync(2);
        await OpenAsync(page, "Dishes of this meal");
        await page.EvaluateAsync("addEventListener('resize', () => document.getElementById('own-title').scrollIntoView()); document.getElementById('own-title').scrollIntoView()");
        await host.ShouldBeCleanInEveryLightAsync("own-meal");
        Assert.Empty(host.Complaints);

        await page.GetByRole(AriaRole.Link, new() { Name = "The plan" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Plan", Exact = true }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Start cooking" })).ToBeVisibleAsync(new() { Timeout = 60_000 });
    }

    static Task OpenAsync(IPage page, string part) => page.Locator(".own summary", new() { HasText = part }).First.ClickAsync();

    /// <summary>As somebody does who types and goes on.</summary>
    static async Task SetAsync(ILocator field, string value)
    {
        await field.FillAsync(value);
        await field.BlurAsync();
    }
}
