using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CookAlong.BrowserTests;

/// <summary>Every page at every size, by day and by night: nothing that axe-core finds, no script error, no breach of the content policy.</summary>
[Collection(Browsers.Name)]
public sealed class PagesTests(Household house) : IClassFixture<Household>
{
    public static TheoryData<string, int, int, ColorScheme> Looks()
    {
        var looks = new TheoryData<string, int, int, ColorScheme>();
        foreach (var (name, size) in new[] { ("phone", ScreenSize.Phone), ("tablet", ScreenSize.Tablet), ("desktop", ScreenSize.Desktop) })
        {
            looks.Add(name, size.Width, size.Height, ColorScheme.Light);
            looks.Add(name, size.Width, size.Height, ColorScheme.Dark);
        }

        return looks;
    }

    [Theory]
    [MemberData(nameof(Looks))]
    public async Task Doors_are_clean(string name, int width, int height, ColorScheme scheme)
    {
        await using var screen = await house.OpenAsync($"{name}-{scheme}", new(width, height), scheme);
        foreach (var path in new[] { "/first-start", "/sign-in", "/join", "/no-such-page" })
        {
            await screen.GoToAsync(path);
            await Expect(screen.Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToBeVisibleAsync();
            await screen.PictureAsync($"door{path.Replace('/', '-')}");
            await screen.ShouldBeCleanAsync();
        }
    }

    [Theory]
    [MemberData(nameof(Looks))]
    public async Task The_demo_from_meals_to_plan_is_clean(string name, int width, int height, ColorScheme scheme)
    {
        await using var screen = await house.HostAsync(new(width, height), scheme);
        var page = screen.Page;
        await screen.PictureAsync($"meals-{name}-{scheme}");
        await screen.ShouldBeCleanAsync();

        await page.GetByRole(AriaRole.Link, new() { Name = "Midwinter lunch at Alder Lane" }).First.ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("Midwinter");
        await screen.PictureAsync($"meal-{name}-{scheme}");
        await screen.ShouldBeCleanAsync();

        await page.GotoAsync($"{new Uri(page.Url).AbsolutePath.TrimEnd('/')}/plan");
        var plan = page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Plan( again)?$") });
        await plan.ClickAsync();
        await Expect(page.Locator(".look svg").First).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await screen.PictureAsync($"planning-{name}-{scheme}");
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Plan again" })).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Start cooking" })).ToBeEnabledAsync();
        await Expect(page.Locator(".look svg").First).ToBeVisibleAsync();
        await screen.PictureAsync($"plan-{name}-{scheme}");
        await screen.ShouldBeCleanAsync();
        await page.Locator(".plan-body").EvaluateAsync("body => body.scrollIntoView()");
        await screen.PictureAsync($"timeline-{name}-{scheme}");

        await page.GetByText("Lean the plan").ClickAsync();
        await page.GetByRole(AriaRole.Switch, new() { Name = "Finish washing up as we go" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Plan again, leaning so" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "What leaning did" })).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await screen.PictureAsync($"plan-leant-{name}-{scheme}");
        await screen.ShouldBeCleanAsync();
    }
}
