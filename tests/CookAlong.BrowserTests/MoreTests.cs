using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CookAlong.BrowserTests;

/// <summary>Unexpected guests, or too little on the table: another dish while the meal is cooked.</summary>
[Collection(Browsers.Name)]
public sealed class MoreTests(Household house) : IClassFixture<Household>
{
    [Fact]
    public async Task The_host_adds_a_dish_and_takes_the_plan_that_makes_room_for_it()
    {
        await using var tablet = await house.HostAsync(ScreenSize.Tablet);
        await Household.StartMashAsync(tablet);
        await tablet.Page.GetByText("Change of plan").ClickAsync();
        await tablet.Page.GetByRole(AriaRole.Link, new() { Name = "Add a dish from the library" }).ClickAsync();
        await Expect(tablet.Page.GetByRole(AriaRole.Heading, new() { Name = "Add a dish", Level = 1 })).ToBeVisibleAsync();
        await LookAsync(tablet, "more");
        await tablet.Page.GetByText("Later than the table").ClickAsync();
        await Expect(tablet.Page.Locator("#late .dish").First).ToContainTextAsync("late");
        await LookAsync(tablet, "more-late");

        // A word leaves what has it, folded cards too, and stays while the board changes.
        await tablet.Page.GetByLabel("Find a dish").FillAsync("ginger DIP");
        await Expect(tablet.Page.Locator(".dish:visible")).ToHaveCountAsync(1);
        await tablet.Page.GetByLabel("Find a dish").FillAsync("elephant");
        await Expect(tablet.Page.Locator(".dish:visible")).ToHaveCountAsync(0);
        await Expect(tablet.Page.Locator("#found-none")).ToBeVisibleAsync();
        await LookAsync(tablet, "more-none");
        await tablet.Page.GetByLabel("Find a dish").FillAsync("dip");

        // The dip is a few minutes' work. It goes on the menu, and this page says when the plan that makes room for it is there.
        await tablet.Page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Add Black vinegar and ginger dip") }).ClickAsync();
        await Expect(tablet.Page.Locator(".aside").Filter(new() { HasText = "On the menu" })).ToHaveTextAsync("On the menu: Slaw, Mash, Bread, Black vinegar and ginger dip.");
        await Expect(tablet.Page.Locator("#wish")).ToContainTextAsync("A new plan is ready");
        await LookAsync(tablet, "more-added");

        // On the board it is looked at and taken, and from then on the dip's steps are somebody's.
        await tablet.Page.GetByRole(AriaRole.Link, new() { Name = "Look at it on the board" }).ClickAsync();
        await tablet.Page.GetByText("Show the new plan").ClickAsync();
        await Expect(tablet.Page.Locator("#offer")).ToContainTextAsync("The new plan serves on time.");
        await tablet.PictureAsync("more-offer");
        await tablet.ShouldBeCleanAsync();
        await tablet.Page.GetByRole(AriaRole.Button, new() { Name = "Take the new plan" }).ClickAsync();
        await Expect(tablet.Page.Locator("#slip.wish")).ToHaveCountAsync(0);
        await Expect(tablet.Page.Locator("#taken")).ToBeVisibleAsync();
        await Expect(tablet.Page.Locator("#live")).ToContainTextAsync("Cut the ginger into threads");
        await tablet.PictureAsync("more-taken");
        await tablet.ShouldBeCleanAsync();
    }

    static async Task LookAsync(Screen screen, string title)
    {
        await screen.ShouldBeCleanInEveryLightAsync(title);
        foreach (var (size, scheme) in new[] { (ScreenSize.Upright, ColorScheme.Dark), (ScreenSize.Desktop, ColorScheme.Dark), (ScreenSize.Desktop, ColorScheme.Light), (ScreenSize.Upright, ColorScheme.Light) })
        {
            await screen.Page.SetViewportSizeAsync(size.Width, size.Height);
            await screen.Page.EmulateMediaAsync(new() { ColorScheme = scheme });
            await screen.PictureAsync($"{title}-{size.Width}-{scheme}");
            Assert.True(await screen.Page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= innerWidth"), $"{title} is too wide for {size.Width} px");
        }
    }
}
