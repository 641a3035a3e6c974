using System.Text;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CookAlong.BrowserTests;

/// <summary>What a page says when something went wrong or must be decided, by day and by night, on a phone and on a tablet.</summary>
[Collection(Browsers.Name)]
public sealed class TroublePagesTests(Household house) : IClassFixture<Household>
{
    [Fact]
    public async Task A_door_that_stays_shut_is_clean()
    {
        await using var screen = await house.OpenAsync("door", ScreenSize.Phone);
        var page = screen.Page;
        await screen.GoToAsync("/join");
        await page.GetByLabel("code").FillAsync("WRNG2345");
        await page.GetByLabel("Your name").FillAsync("Ivo");
        await page.GetByRole(AriaRole.Button, new() { Name = "Join" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("code");
        await screen.ShouldBeCleanInEveryLightAsync("wrong-code");

        await screen.GoToAsync("/sign-in");
        await page.GetByLabel("Your name").FillAsync("Maren");
        await page.GetByLabel("Password").FillAsync("not the right one");
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Alert)).ToBeVisibleAsync();
        await screen.ShouldBeCleanInEveryLightAsync("wrong-password");
    }

    [Fact]
    public async Task A_question_before_deleting_and_a_file_that_is_refused_are_clean()
    {
        await using var screen = await house.HostAsync(ScreenSize.Tablet);
        var page = screen.Page;
        await page.GetByRole(AriaRole.Button, new() { Name = "Delete Midwinter lunch at Alder Lane" }).First.ClickAsync();
        await Expect(page.GetByRole(AriaRole.Dialog)).ToContainTextAsync("will be gone");
        await screen.ShouldBeCleanInEveryLightAsync("delete");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep it" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Dialog)).ToHaveCountAsync(0);

        var broken = SoupForSix.Json("Broken soup", TimeProvider.System.GetUtcNow())
            .Replace("\"minutes\": 15", "\"minutes\": -15", StringComparison.Ordinal)
            .Replace("\"course\": \"main\"", "\"course\": \"supper\"", StringComparison.Ordinal);
        await page.Locator("#meal-file").SetInputFilesAsync(new FilePayload { Name = "soup.json", MimeType = "application/json", Buffer = Encoding.UTF8.GetBytes(broken) });
        await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("“soup.json” was not taken in");
        await screen.ShouldBeCleanInEveryLightAsync("refused-file");
    }

    // The soup cannot be ready in time.
    [Fact]
    public async Task A_plan_that_cannot_keep_its_promise_and_one_that_changed_are_clean()
    {
        await using var screen = await house.HostAsync(ScreenSize.Tablet);
        var page = screen.Page;
        await Household.PlanAsync(screen, SoupForSix.Json("Late soup", TimeProvider.System.GetUtcNow()));
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "What would help" })).ToBeVisibleAsync();
        await screen.ShouldBeCleanInEveryLightAsync("conflicts");

        var plan = new Uri(page.Url).AbsolutePath;
        await page.GotoAsync(plan[..^"/plan".Length]);
        await page.GetByLabel("Day", new() { Exact = true }).FillAsync(TimeProvider.System.GetUtcNow().AddDays(2).ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture));
        await page.Keyboard.PressAsync("Tab");
        await Expect(page.Locator(".kept")).ToContainTextAsync("Kept");
        await page.GotoAsync(plan);
        await page.GetByRole(AriaRole.Button, new() { Name = "Plan again", Exact = true }).ClickAsync();
        await Expect(page.GetByText("What changed:")).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Start cooking" })).ToBeEnabledAsync();
        await screen.ShouldBeCleanInEveryLightAsync("changed");
    }
}
