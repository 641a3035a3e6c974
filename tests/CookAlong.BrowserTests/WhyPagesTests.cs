using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CookAlong.BrowserTests;

/// <summary>A dinner that is late: what would help is made at one touch and taken back, and a step says what holds it.</summary>
[Collection(Browsers.Name)]
public sealed partial class WhyPagesTests(Household house) : IClassFixture<Household>
{
    /// <summary>Two hours' work for one cook who begins an hour before the table, two days from now.</summary>
    static string LateDinner()
    {
        var day = TimeProvider.System.GetUtcNow().AddDays(2).ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
        return $$"""
            {
              "format": "cookalong-meal/1", "name": "Late dinner", "timeZone": "Europe/Oslo", "notBefore": "{{day}}T17:00",
              "courses": [{ "id": "main", "name": "Dinner", "tableTime": "{{day}}T18:30" }],
              "kitchen": { "ovens": [{ "id": "oven", "name": "Oven", "shelves": 1, "minCelsius": 50, "maxCelsius": 250, "heatUpPerMinute": 12, "coolDownPerMinute": 5 }], "rings": 2 },
              "helpers": [{ "id": "oda", "name": "Oda" }],
              "dishes": [
                { "id": "cabbage", "name": "Red cabbage", "course": "main", "holds": [{ "place": "covered", "limit": 90 }], "steps": [
                  { "id": "cut", "text": "Shred the cabbage", "minutes": 35 },
                  { "id": "warm", "text": "Warm the cabbage", "minutes": 20, "attention": "nearby", "uses": [{ "rings": 1 }] }] },
                { "id": "pie", "name": "Leek pie", "course": "main", "holds": [{ "place": "covered", "limit": 40 }], "steps": [
                  { "id": "fill", "text": "Fill the pie", "minutes": 40 },
                  { "id": "bake", "text": "Bake the pie", "minutes": 40, "attention": "unattended", "uses": [{ "oven": { "celsius": { "min": 190, "max": 200 } } }] }] },
                { "id": "tart", "name": "Onion tart", "course": "main", "holds": [{ "place": "covered", "limit": 90 }], "steps": [
                  { "id": "tart-bake", "text": "Bake the tart", "minutes": 40, "attention": "unattended", "uses": [{ "oven": { "celsius": { "min": 210, "max": 220 } } }] }] }
              ]
            }
            """;
    }

    [Theory]
    [InlineData(390, 844, ColorScheme.Light)]
    [InlineData(1180, 820, ColorScheme.Dark)]
    [InlineData(1440, 900, ColorScheme.Light)]
    public async Task A_late_dinner_is_mended_at_one_touch_and_taken_back(int width, int height, ColorScheme scheme)
    {
        await using var screen = await house.HostAsync(new(width, height), scheme);
        var page = screen.Page;
        await Expect(page.Locator("#meal-file")).ToBeEnabledAsync();
        await page.Locator("#meal-file").SetInputFilesAsync(new FilePayload { Name = "meal.json", MimeType = "application/json", Buffer = Encoding.UTF8.GetBytes(LateDinner()) });
        await page.WaitForURLAsync(MealAddress());
        await page.GotoAsync($"{new Uri(page.Url).AbsolutePath}/plan");
        await page.GetByRole(AriaRole.Button, new() { Name = "Plan", Exact = true }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "What would help" })).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await screen.PictureAsync($"help-{width}");
        await screen.ShouldBeCleanAsync();

        await page.GetByRole(AriaRole.Button, new() { Name = "Do it" }).First.ClickAsync();
        await Expect(page.Locator(".made")).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await Expect(page.Locator(".headline")).ToContainTextAsync("on time");
        await page.Locator(".timetable button").Filter(new() { HasText = "Fill the pie" }).ClickAsync();
        await Expect(page.Locator(".why")).ToContainTextAsync("Dinner is on the table at 18:30");
        await screen.PictureAsync($"made-{width}");
        await page.Locator(".panel").ScrollIntoViewIfNeededAsync();
        await screen.PictureAsync($"why-{width}");
        await screen.ShouldBeCleanAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Close" }).ClickAsync();

        await page.GetByRole(AriaRole.Button, new() { Name = "Take it back" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "What would help" })).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await Expect(page.Locator(".made")).ToHaveCountAsync(0);
    }

    [GeneratedRegex("/meals/[0-9a-f-]{36}$")]
    private static partial Regex MealAddress();
}
