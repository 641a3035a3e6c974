using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CookAlong.BrowserTests;

/// <summary>The plan printed, as the browser would print it.</summary>
[Collection(Browsers.Name)]
public sealed partial class PaperTests(Household house) : IClassFixture<Household>
{
    // Millimetres of ISO 216 A4 and of ANSI Letter (8.5 by 11 inches).
    static readonly (string Name, double Width, double Height)[] Papers = [("A4", 210, 297), ("Letter", 215.9, 279.4)];

    [Fact]
    public async Task The_demo_fits_both_papers_and_no_line_is_wider_than_they_are()
    {
        await using var screen = await house.HostAsync(ScreenSize.Tablet);
        var page = screen.Page;
        var paper = await PlannedAsync(page);
        foreach (var query in new[] { "", "?people=1", "?people=1&large=1" })
        {
            await screen.GoToAsync(paper + query);
            await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Print" })).ToBeVisibleAsync();
            await screen.PictureAsync($"paper-screen{query.Length}");
            await screen.ShouldBeCleanAsync();
            await page.EmulateMediaAsync(new() { Media = Media.Print });
            foreach (var (name, width, height) in Papers)
            {
                await page.SetViewportSizeAsync((int)((width - 24) * 96 / 25.4), 1000);
                Assert.True(await page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= document.documentElement.clientWidth"), $"{name}{query} is too wide");
                await Expect(page.Locator(".choices")).ToBeHiddenAsync();
                var pdf = await page.PdfAsync(new() { Width = $"{width}mm", Height = $"{height}mm", PrintBackground = false, PreferCSSPageSize = false });
                Assert.InRange(Pages().Count(System.Text.Encoding.Latin1.GetString(pdf)), query.Length == 0 ? 1 : 5, 40);
                if (Environment.GetEnvironmentVariable("COOKALONG_SCREENSHOTS") is { Length: > 0 } folder)
                {
                    await File.WriteAllBytesAsync(Path.Combine(folder, $"paper-{name}{query.Length}.pdf"), pdf, TestContext.Current.CancellationToken);
                }
            }

            await page.EmulateMediaAsync(new() { Media = Media.Screen });
            await page.SetViewportSizeAsync(ScreenSize.Tablet.Width, ScreenSize.Tablet.Height);
        }
    }

    [Theory]
    [InlineData(390, 844)]
    [InlineData(1440, 900)]
    public async Task On_a_screen_it_is_clean_by_night_too(int width, int height)
    {
        await using var screen = await house.HostAsync(new(width, height), ColorScheme.Dark);
        await screen.GoToAsync(await PlannedAsync(screen.Page) + "?people=1");

        await screen.PictureAsync($"paper-{width}");
        await screen.ShouldBeCleanAsync();
        Assert.True(await screen.Page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= document.documentElement.clientWidth"));
    }

    /// <summary>From the list of meals to a planned demo; its paper's address.</summary>
    static async Task<string> PlannedAsync(IPage page)
    {
        await page.GetByRole(AriaRole.Link, new() { Name = "Midwinter lunch at Alder Lane" }).First.ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("Midwinter");
        await page.GotoAsync($"{new Uri(page.Url).AbsolutePath.TrimEnd('/')}/plan");
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Plan( again)?$") }).ClickAsync();
        var link = page.GetByRole(AriaRole.Link, new() { Name = "On paper" });
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Plan again" })).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await Expect(link).ToBeVisibleAsync();
        return (await link.GetAttributeAsync("href"))!;
    }

    [GeneratedRegex(@"/Type\s*/Page\b(?!s)")]
    private static partial Regex Pages();
}
