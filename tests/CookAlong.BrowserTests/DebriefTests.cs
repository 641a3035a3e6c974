using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CookAlong.BrowserTests;

/// <summary>From the end of a run to what the household says of it.</summary>
[Collection(Browsers.Name)]
public sealed class DebriefTests(Household house) : IClassFixture<Household>
{
    [Fact]
    public async Task After_a_rehearsal_planned_and_real_stand_side_by_side_and_nothing_is_asked()
    {
        await using var host = await house.HostAsync(ScreenSize.Tablet);
        var page = host.Page;
        await Household.PlanAsync(host, SoupForSix.Json("Soup to look back on", TimeProvider.System.GetUtcNow()));
        await page.GetByLabel("Speed of the rehearsal").SelectOptionAsync("120");
        await page.GetByRole(AriaRole.Button, new() { Name = "Rehearse it" }).ClickAsync();
        await page.WaitForURLAsync("**/cook/*");
        await Expect(page.Locator("article#card-knead")).ToHaveCountAsync(0, new() { Timeout = 60_000 });

        await page.GetByRole(AriaRole.Button, new() { Name = "End the rehearsal" }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Looking back" }).ClickAsync();

        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Looking back on Soup to look back on");
        await Expect(page.Locator("main")).ToContainTextAsync("Knead the dough");
        await Expect(page.Locator("header")).ToContainTextAsync("nothing is learned from it");
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Keep what was said" })).ToHaveCountAsync(0);
        await host.ShouldBeCleanInEveryLightAsync("debrief-rehearsed");
    }

    [Fact]
    public async Task What_is_said_of_a_dish_is_kept_and_everything_learned_has_its_page()
    {
        await using var host = await house.HostAsync(ScreenSize.Desktop);
        var page = host.Page;
        await Household.StartSoupAsync(host);
        await page.Locator("#end-early summary").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "End the meal now" }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Looking back" }).ClickAsync();
        await Expect(page.Locator("header")).ToContainTextAsync("Not everything was finished.");

        await page.GetByRole(AriaRole.Group, new() { Name = "What do you say of Bread?" }).GetByLabel("More").CheckAsync();
        await page.GetByLabel("Note on Bread").FillAsync("Two loaves next time.");
        await page.GetByLabel("What to do differently next time").FillAsync("Begin an hour earlier.");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep what was said" }).ClickAsync();
        await page.WaitForURLAsync("**/debrief#verdicts");
        await Expect(page.GetByLabel("Note on Bread")).ToHaveValueAsync("Two loaves next time.");
        await Expect(page.GetByRole(AriaRole.Group, new() { Name = "What do you say of Bread?" }).GetByLabel("More")).ToBeCheckedAsync();
        await host.PictureAsync("debrief-desktop");
        await host.ShouldBeCleanInEveryLightAsync("debrief");

        await page.EmulateMediaAsync(new() { Media = Media.Print, ColorScheme = ColorScheme.Light });
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Keep what was said" })).ToBeHiddenAsync();
        await host.PictureAsync("debrief-paper");
        await page.EmulateMediaAsync(new() { Media = Media.Screen });

        await page.GetByLabel("Day of the first table").FillAsync("2040-12-20");
        await page.GetByRole(AriaRole.Button, new() { Name = "Cook it again" }).ClickAsync();
        var last = page.GetByRole(AriaRole.Region, new() { Name = "Last time" });
        await Expect(last).ToContainTextAsync("Bread: more; Two loaves next time.");
        await Expect(last).ToContainTextAsync("Begin an hour earlier");
        await host.ShouldBeCleanInEveryLightAsync("again");
        await last.GetByRole(AriaRole.Link, new() { Name = "Looking back on it" }).ClickAsync();

        await page.GetByRole(AriaRole.Link, new() { Name = "Everything that was learned" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("What was learned");
        await host.ShouldBeCleanInEveryLightAsync("learned");
    }

    [Fact]
    public async Task On_the_first_day_there_is_a_meal_to_look_back_on_a_dish_to_do_otherwise_and_an_oven_that_was_measured()
    {
        await using var host = await house.HostAsync(ScreenSize.Desktop);
        var page = host.Page;
        await page.GetByRole(AriaRole.Link, new() { Name = "Midwinter lunch at Alder Lane" }).First.ClickAsync();
        var last = page.GetByRole(AriaRole.Region, new() { Name = "Last time" });
        await Expect(last).ToContainTextAsync("a third of it came back");
        var item = last.GetByLabel("Make less of Braised red cabbage: a third of it came back");
        await item.CheckAsync();
        await Expect(page.GetByRole(AriaRole.Region, new() { Name = "Before the day" })).ToContainTextAsync("Order goose");
        await page.ReloadAsync();
        await Expect(item).ToBeCheckedAsync();
        await host.ShouldBeCleanInEveryLightAsync("again-first-day");
        await last.GetByRole(AriaRole.Link, new() { Name = "Autumn supper at Alder Lane" }).First.ClickAsync();
        await Expect(page.Locator("header")).ToContainTextAsync("Nobody cooked this");
        await host.ShouldBeCleanInEveryLightAsync("debrief-first-day");

        await page.Locator("input[name=photo]").SetInputFilesAsync(new FilePayload { Name = "table.png", MimeType = "image/png", Buffer = await page.ScreenshotAsync() });
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the picture" }).ClickAsync();
        var picture = page.Locator(".pictures img");
        await Expect(picture).ToHaveCountAsync(1);
        await picture.ScrollIntoViewIfNeededAsync();
        await Expect(picture).Not.ToHaveJSPropertyAsync("naturalWidth", 0);
        await host.ShouldBeCleanInEveryLightAsync("debrief-picture");

        await page.GetByRole(AriaRole.Link, new() { Name = "Everything that was learned" }).ClickAsync();
        await host.ShouldBeCleanInEveryLightAsync("learned-first-day");
        await page.GetByRole(AriaRole.Link, new() { Name = "See, measure or take back" }).ClickAsync();
        await host.ShouldBeCleanInEveryLightAsync("ovens");
        await page.GetByRole(AriaRole.Button, new() { Name = "Plan with what was learned of The oven" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Plan as meals say again" })).ToBeVisibleAsync();
        await page.Locator("summary", new() { HasText = "Measure it: The oven" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin measuring The oven" }).ClickAsync();
        await page.GetByLabel("The thermometer shows").FillAsync("21.5");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the reading" }).ClickAsync();
        await Expect(page.Locator(".due")).ToContainTextAsync("1:5");
        await host.ShouldBeCleanInEveryLightAsync("oven-trial");
    }
}
