using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CookAlong.BrowserTests;

/// <summary>Tokens on the account's page, and the API's description: nothing of it comes from elsewhere.</summary>
[Collection(Browsers.Name)]
public sealed class ApiTests(Household house) : IClassFixture<Household>
{
    public static TheoryData<string, int, int> Sizes => new() { { "phone", 390, 844 }, { "tablet", 820, 1180 }, { "desktop", 1440, 900 } };

    [Theory]
    [MemberData(nameof(Sizes))]
    public async Task A_token_is_made_shown_and_revoked(string name, int width, int height)
    {
        await using var screen = await house.HostAsync(new(width, height));
        var page = screen.Page;
        await screen.GoToAsync("/account");
        await page.GetByLabel("What to call a new token").FillAsync($"Lights {name}");
        await page.GetByRole(AriaRole.Checkbox, new() { Name = "See what is cooked now" }).CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Make a token" }).ClickAsync();

        await Expect(page.GetByText("cookalong_")).ToBeVisibleAsync();
        await screen.PictureAsync($"token-{name}");
        await screen.ShouldBeCleanAsync();

        await screen.GoToAsync("/account");
        await page.GetByRole(AriaRole.Button, new() { Name = $"Revoke Lights {name}" }).ClickAsync();
        await Expect(page.GetByText("That token is revoked")).ToBeVisibleAsync();
        await Expect(page.GetByText($"Lights {name}")).ToHaveCountAsync(0);
    }

    [Theory]
    [MemberData(nameof(Sizes))]
    public async Task The_description_is_shown_and_asks_this_server_alone(string name, int width, int height)
    {
        await using var screen = await house.HostAsync(new(width, height));
        var page = screen.Page;
        var elsewhere = new List<string>();
        var here = new Uri(page.Url).Authority;
        page.Request += (_, request) =>
        {
            if (request.Url.StartsWith("http", StringComparison.Ordinal) && new Uri(request.Url).Authority != here)
            {
                elsewhere.Add(request.Url);
            }
        };

        await screen.GoToAsync("/api/docs");

        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "All meals, the latest changed first" })).ToBeVisibleAsync();
        await screen.PictureAsync($"api-docs-{name}");
        Assert.Empty(elsewhere);
        // Not "landmark-unique": the reader gives all its example answers one name.
        foreach (var rule in new[] { "color-contrast", "button-name", "link-name", "label", "image-alt", "list", "region", "aria-valid-attr-value", "heading-order", "page-has-heading-one" })
        {
            await screen.ShouldBeCleanAsync(rule);
        }
    }
}
