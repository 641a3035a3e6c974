using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CookAlong.BrowserTests;

/// <summary>A kitchen with an authority of its own, as a device sees it that trusts it and one that does not.</summary>
[Collection(Browsers.Name)]
public sealed class SecurePageTests(Chromium chromium)
{
    static readonly ScreenSize[] sizes = [ScreenSize.Phone, ScreenSize.Upright, ScreenSize.Desktop];

    [Fact]
    public async Task A_device_is_told_whether_it_trusts_the_kitchen()
    {
        await using var server = await KitchenServer.StartAsync();
        await LookAsync(server, "secure-off");
        await server.KillAsync();
        await server.TurnHttpsOnAsync();
        await server.RestartAsync();
        await LookAsync(server, "secure-on");

        await using var stranger = await chromium.OpenAsync("stranger", ScreenSize.Phone, server.Url);
        await stranger.GoToAsync("/secure");
        await Expect(stranger.Page.GetByText("This device does not trust this kitchen yet.")).ToBeVisibleAsync();
        await Assert.ThrowsAsync<PlaywrightException>(() => stranger.GoToAsync($"{server.HttpsUrl}/sign-in"));

        await using var friend = await chromium.OpenAsync("friend", ScreenSize.Phone, server.Url, trustsAll: true);
        await friend.GoToAsync("/secure");
        await Expect(friend.Page.GetByText("This device trusts this kitchen now.")).ToBeVisibleAsync();
        await friend.Page.GetByRole(AriaRole.Link, new() { Name = "Open the kitchen over HTTPS" }).ClickAsync();
        await Expect(friend.Page.GetByRole(AriaRole.Heading, new() { Name = "Sign in" })).ToBeVisibleAsync();
        Assert.StartsWith(server.HttpsUrl, friend.Page.Url, StringComparison.Ordinal);
        Assert.True(await friend.Page.EvaluateAsync<bool>("isSecureContext"));

        // The same browser, the same host: a form by plain HTTP still works after HTTPS has left its cookies.
        await friend.GoToAsync("/sign-in");
        await friend.Page.GetByLabel("Your name").FillAsync("Maren");
        await friend.Page.GetByLabel("Password").FillAsync("not the one");
        await friend.Page.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();
        await Expect(friend.Page.GetByRole(AriaRole.Alert)).ToContainTextAsync("do not belong together");
    }

    [Fact]
    public async Task With_https_alone_the_way_to_it_stays_open_and_every_page_leads_there_with_its_secret()
    {
        await using var server = await KitchenServer.StartAsync();
        await server.KillAsync();
        await server.TurnHttpsOnAsync();
        server.IsHttpsOnly = true;
        await server.RestartAsync();

        await using var stranger = await chromium.OpenAsync("https-only-stranger", ScreenSize.Phone, server.Url);
        await stranger.GoToAsync("/secure");
        await Expect(stranger.Page.GetByText("This device does not trust this kitchen yet.")).ToBeVisibleAsync();
        await stranger.ShouldBeCleanAsync();

        await using var friend = await chromium.OpenAsync("https-only-friend", ScreenSize.Tablet, server.Url, trustsAll: true);
        await friend.GoToAsync(server.FirstStart);
        await friend.Page.GetByLabel("Your name").FillAsync("Maren");
        await friend.Page.GetByLabel("A password").FillAsync("a long night before midwinter");
        await friend.Page.GetByRole(AriaRole.Button, new() { Name = "Make my kitchen" }).ClickAsync();
        await Expect(friend.Page.GetByRole(AriaRole.Heading, new() { Name = "Meals", Level = 1 })).ToBeVisibleAsync();
        Assert.StartsWith(server.HttpsUrl, friend.Page.Url, StringComparison.Ordinal);
        await friend.GoToAsync("/server");
        await Expect(friend.Page.GetByText("The live kitchen’s socket opens.")).ToBeVisibleAsync();
        await Expect(friend.Page.GetByText("answers nothing but the page that installs the authority")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task The_host_sees_that_sockets_open()
    {
        await using var server = await KitchenServer.StartAsync();
        await using var screen = await chromium.OpenAsync("seen", ScreenSize.Tablet, server.Url);
        await screen.GoToAsync(server.FirstStart);
        await screen.Page.GetByLabel("Your name").FillAsync("Maren");
        await screen.Page.GetByLabel("A password").FillAsync("a long night before midwinter");
        await screen.Page.GetByRole(AriaRole.Button, new() { Name = "Make my kitchen" }).ClickAsync();
        await Expect(screen.Page.GetByRole(AriaRole.Heading, new() { Name = "Meals", Level = 1 })).ToBeVisibleAsync();
        await screen.GoToAsync("/server");
        await Expect(screen.Page.GetByText("The live kitchen’s socket opens.")).ToBeVisibleAsync();
        await Expect(screen.Page.GetByText("It takes this page for secure")).ToBeVisibleAsync();
        await screen.ShouldBeCleanInEveryLightAsync("server");
    }

    async Task LookAsync(KitchenServer server, string title)
    {
        foreach (var scheme in new[] { ColorScheme.Light, ColorScheme.Dark })
        {
            foreach (var size in sizes)
            {
                await using var screen = await chromium.OpenAsync($"{size.Width}-{scheme}", size, server.Url, scheme, trustsAll: true);
                await screen.GoToAsync("/secure");
                await Expect(screen.Page.GetByText("Asking whether")).ToBeHiddenAsync();
                await screen.PictureAsync(title);
                await screen.ShouldBeCleanAsync();
                Assert.True(await screen.Page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= innerWidth"));
            }
        }
    }
}
