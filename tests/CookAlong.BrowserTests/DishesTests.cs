using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CookAlong.BrowserTests;

/// <summary>The library: a dish is found, edited, put in another order and taken back, and comes into a meal.</summary>
[Collection(Browsers.Name)]
public sealed class DishesTests(Household house) : IClassFixture<Household>
{
    [Fact]
    public async Task A_dish_is_edited_reordered_undone_and_added_to_a_meal()
    {
        await using var host = await house.HostAsync(ScreenSize.Desktop);
        var page = host.Page;
        await page.GetByRole(AriaRole.Link, new() { Name = "Dishes" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Layered chicken biryani" })).ToBeVisibleAsync();
        await host.PictureAsync("dishes-desktop");
        await host.ShouldBeCleanInEveryLightAsync("dishes");
        await page.GetByLabel("Search").FillAsync("plum oats");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 2 })).ToHaveCountAsync(1);
        await page.GetByRole(AriaRole.Link, new() { Name = "Plum and oat crumble", Exact = true }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Plum and oat crumble" })).ToBeVisibleAsync();
        await host.ShouldBeCleanInEveryLightAsync("dish");

        await page.SetViewportSizeAsync(ScreenSize.Desktop.Width, ScreenSize.Desktop.Height);
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new("^5 Bake the crumble") }).ClickAsync();
        await page.GetByLabel("Takes").First.FillAsync("a while");
        await page.GetByLabel("Takes").First.PressAsync("Tab");
        await Expect(page.GetByText("“a while” is not such a time")).ToBeVisibleAsync();
        await Expect(page.GetByLabel("Takes").First).ToHaveValueAsync("a while");
        await host.PictureAsync("dish-open-desktop");
        await host.ShouldBeCleanInEveryLightAsync("dish-open");
        await page.GetByLabel("Takes").First.FillAsync("40-50 min");
        await page.GetByLabel("Takes").First.PressAsync("Tab");
        await Expect(page.GetByRole(AriaRole.Status).First).ToContainTextAsync("Saved");

        await page.GetByRole(AriaRole.Button, new() { Name = "Down: Stone and quarter the plums" }).ClickAsync();
        await Expect(page.Locator(".headline").First).ToContainTextAsync("Toss the plums");
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Down: Stone and quarter the plums" })).ToBeFocusedAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await Expect(page.Locator(".headline").First).ToContainTextAsync("Stone and quarter");
        await page.Locator(".handle").Nth(1).DragToAsync(page.Locator(".steps > li").Nth(0));
        await Expect(page.Locator(".headline").First).ToContainTextAsync("Toss the plums");
        await page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await Expect(page.Locator(".headline").First).ToContainTextAsync("Stone and quarter");
        await page.ReloadAsync();
        await Expect(page.Locator(".headline").Nth(4)).ToContainTextAsync("40-50 min");

        await page.GetByLabel("Meal and course").SelectOptionAsync(new SelectOptionValue { Label = "Midwinter lunch at Alder Lane, Pudding" });
        await page.GetByRole(AriaRole.Button, new() { Name = "Add it" }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Midwinter lunch at Alder Lane" }).First.ClickAsync();
        await page.WaitForURLAsync(new Regex("/meals/"));
        await Expect(page.Locator("summary", new() { HasText = "Plum and oat crumble" })).ToBeVisibleAsync();

        var library = page.GetByRole(AriaRole.Region, new() { Name = "Add a dish from the library" });
        await library.GetByLabel("Search").FillAsync("raita");
        await library.GetByLabel("Search").FillAsync("cucumber mint");
        await library.GetByRole(AriaRole.Button, new() { Name = "Add Cucumber and mint yoghurt" }).ClickAsync();
        await Expect(page.Locator("summary", new() { HasText = "Cucumber and mint yoghurt" })).ToBeVisibleAsync();
        await page.Locator("summary", new() { HasText = "Braised red cabbage" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep in the library: Braised red cabbage" }).ClickAsync();
        await host.ShouldBeCleanInEveryLightAsync("meal-and-library");
        await page.Locator(".keep a").ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Braised red cabbage" })).ToBeVisibleAsync();
        await Expect(page.GetByText("it waits 10 h to 23 h for “Heat the cabbage through”")).ToBeVisibleAsync();
        await page.SetViewportSizeAsync(ScreenSize.Desktop.Width, ScreenSize.Desktop.Height);
        await host.PictureAsync("cabbage-desktop");
        await page.GetByRole(AriaRole.Button, new() { Name = "Delete" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Braised red cabbage" })).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Another_way_of_a_step_is_added_edited_and_undone_and_stays_after_a_reload()
    {
        await using var host = await house.HostAsync(ScreenSize.Desktop);
        var page = host.Page;
        await page.GetByRole(AriaRole.Link, new() { Name = "Dishes" }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Plum and oat crumble", Exact = true }).ClickAsync();
        var bake = page.GetByRole(AriaRole.Button, new() { NameRegex = new("^5 Bake the crumble") });
        await bake.ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Add another way" }).ClickAsync();
        var way = page.GetByRole(AriaRole.Group, new() { Name = "Other way 1" });
        await way.GetByLabel("Takes").FillAsync("1 h 10");
        await way.GetByLabel("Takes").PressAsync("Tab");
        await way.GetByLabel("Oven °C").FillAsync("150");
        await way.GetByLabel("Oven °C").PressAsync("Tab");
        await Expect(page.GetByRole(AriaRole.Status).First).ToContainTextAsync("Saved, 3 changes so far");
        await host.ShouldBeCleanInEveryLightAsync("dish-ways");
        await page.SetViewportSizeAsync(ScreenSize.Desktop.Width, ScreenSize.Desktop.Height);
        await page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await Expect(way.GetByLabel("Oven °C")).Not.ToHaveValueAsync("140-160 °C");
        await page.GetByRole(AriaRole.Button, new() { Name = "Redo" }).ClickAsync();
        await Expect(way.GetByLabel("Oven °C")).ToHaveValueAsync("140-160 °C");

        await page.ReloadAsync();
        await bake.ClickAsync();
        await Expect(way.GetByLabel("Takes")).ToHaveValueAsync("1 h 10 min");
        await way.GetByRole(AriaRole.Button, new() { Name = "Without this way: other way 1" }).ClickAsync();
        await Expect(way).ToHaveCountAsync(0);
    }
}
