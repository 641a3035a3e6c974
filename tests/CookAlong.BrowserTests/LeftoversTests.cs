using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CookAlong.BrowserTests;

/// <summary>After the meal: portions are counted on a phone, in the limits of the region that the household chose, and labels printed.</summary>
[Collection(Browsers.Name)]
public sealed class LeftoversTests(Household house) : IClassFixture<Household>
{
    [Fact]
    public async Task Portions_are_counted_on_a_phone_and_labels_made_of_them()
    {
        await using var host = await house.HostAsync(ScreenSize.Phone);
        var page = host.Page;
        await page.GetByRole(AriaRole.Link, new() { Name = "Settings" }).ClickAsync();
        await page.GetByRole(AriaRole.Radio, new() { NameRegex = new("^England, Wales and Northern Ireland") }).CheckAsync();
        await Expect(page.GetByRole(AriaRole.Status).First).ToHaveTextAsync("Saved: England, Wales and Northern Ireland.");
        await page.GetByRole(AriaRole.Button, new() { Name = "Check now" }).ClickAsync();
        await Expect(page.GetByText("The database is sound")).ToBeVisibleAsync();
        await page.GetByText("The database is sound").ScrollIntoViewIfNeededAsync();
        await host.PictureAsync("health");
        await host.ShouldBeCleanInEveryLightAsync("settings");

        await page.GetByRole(AriaRole.Link, new() { Name = "Meals", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Midwinter lunch at Alder Lane", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Leftovers" }).ClickAsync();
        var goose = page.GetByRole(AriaRole.Region, new() { NameRegex = new("^Roast goose with apple and onion") });
        var more = page.GetByRole(AriaRole.Button, new() { Name = "One portion more of Roast goose with apple and onion" });
        await more.ClickAsync();
        await more.ClickAsync();
        await Expect(goose).ToContainTextAsync("2 portions");
        await Expect(goose).ToContainTextAsync("In the fridge by");
        await goose.GetByText("Change it").ClickAsync();
        await goose.GetByRole(AriaRole.Button, new() { Name = "Gravy" }).ClickAsync();
        await Expect(goose.GetByRole(AriaRole.Button, new() { Name = "Gravy" })).ToHaveAttributeAsync("aria-pressed", "true");
        await host.ShouldBeCleanInEveryLightAsync("leftovers");
        await page.SetViewportSizeAsync(ScreenSize.Desktop.Width, ScreenSize.Desktop.Height);
        await host.PictureAsync("leftovers-desktop");

        await page.ReloadAsync();
        await Expect(goose).ToContainTextAsync("2 portions");
        await page.GetByRole(AriaRole.Link, new() { Name = "Print labels" }).ClickAsync();
        await page.WaitForURLAsync(new Regex("/labels$"));
        await Expect(page.GetByRole(AriaRole.Listitem)).ToHaveCountAsync(2);
        await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Light });
        await host.PictureAsync("labels-desktop");
        await page.EmulateMediaAsync(new() { Media = Media.Print });
        await host.PictureAsync("labels-printed");
        await page.EmulateMediaAsync(new() { Media = Media.Screen });
        await page.SetViewportSizeAsync(ScreenSize.Phone.Width, ScreenSize.Phone.Height);
        await host.PictureAsync("labels-phone");
        await host.ShouldBeCleanAsync();
    }

    [Fact]
    public async Task A_roasting_time_is_taken_and_the_joint_thawed_before_the_day()
    {
        await using var host = await house.HostAsync(ScreenSize.Desktop);
        var page = host.Page;
        await page.GetByRole(AriaRole.Link, new() { Name = "Midwinter lunch at Alder Lane", Exact = true }).ClickAsync();
        await page.Locator("summary", new() { HasText = "Roast goose" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Keep in the library: Roast goose") }).ClickAsync();
        await page.Locator(".keep a").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new("Roast the goose breast down") }).First.ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "How long does it roast?" }).ClickAsync();
        await Expect(page.GetByText("Approximate Poultry Cooking Times")).ToBeVisibleAsync();
        await host.PictureAsync("roasting-desktop");
        await host.ShouldBeCleanInEveryLightAsync("roasting");
        await page.SetViewportSizeAsync(ScreenSize.Desktop.Width, ScreenSize.Desktop.Height);
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Take it: .* of USDA FSIS") }).ClickAsync();
        await Expect(page.GetByText("The step takes 2 h 30 min to 3 h now")).ToBeVisibleAsync();

        await page.GetByRole(AriaRole.Button, new() { Name = "Thaw it in the fridge" }).ClickAsync();
        await Expect(page.GetByText("2 steps put in")).ToBeVisibleAsync();
        await Expect(page.Locator(".headline").First).ToContainTextAsync("Move it from the freezer to the fridge");
        await host.PictureAsync("before-desktop");
        await host.ShouldBeCleanInEveryLightAsync("before");
    }
}
