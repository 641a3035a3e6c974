using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CookAlong.BrowserTests;

/// <summary>A host's account: passkeys with a device that the browser plays, sessions that end at once, a second host.</summary>
[Collection(Browsers.Name)]
public sealed class AccountTests(Household house, Chromium chromium) : IClassFixture<Household>
{
    [Theory]
    [InlineData("")]
    [InlineData("/kitchen")]
    public async Task A_passkey_is_added_signs_in_and_once_removed_does_not(string path)
    {
        await using var server = await KitchenServer.StartAsync(["--base-path", path]);
        // Under a name: a number has no passkeys.
        var named = server.FirstStart.Replace("127.0.0.1", "localhost", StringComparison.Ordinal);
        var kitchen = named[..named.IndexOf("/first-start", StringComparison.Ordinal)];
        await using var screen = await chromium.OpenAsync("named", ScreenSize.Tablet, kitchen);
        var page = screen.Page;
        await PlayDeviceAsync(screen);
        await screen.GoToAsync(named);
        await page.GetByLabel("Your name").FillAsync("Maren");
        await page.GetByLabel("A password").FillAsync("a long night before midwinter");
        await page.GetByRole(AriaRole.Button, new() { Name = "Make my kitchen" }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Account" }).ClickAsync();

        await page.GetByLabel("What to call the new one").FillAsync("The test's own");
        await page.GetByRole(AriaRole.Button, new() { Name = "Add a passkey" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Region, new() { Name = "Passkeys" }).Locator("b")).ToHaveTextAsync("The test's own");

        await SignOutAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in with a passkey" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Meals", Level = 1 })).ToBeVisibleAsync();

        await screen.GoToAsync($"{kitchen}/account");
        await Expect(page.GetByText("last used")).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Remove The test's own" }).ClickAsync();
        await Expect(page.GetByText("The passkey is removed here")).ToBeVisibleAsync();

        await SignOutAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in with a passkey" }).ClickAsync();
        await Expect(page.GetByText("does not open this kitchen")).ToBeVisibleAsync();
        await screen.ShouldBeCleanAsync();
        await screen.PictureAsync($"sign-in-with-passkey{path.Replace('/', '-')}");

        async Task SignOutAsync()
        {
            await screen.GoToAsync($"{kitchen}/meals");
            await page.GetByRole(AriaRole.Button, new() { Name = "Sign out" }).ClickAsync();
            await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Sign in" })).ToBeVisibleAsync();
        }
    }

    [Fact]
    public async Task Where_passkeys_cannot_be_the_page_says_why()
    {
        await using var screen = await house.HostAsync(ScreenSize.Phone);
        await screen.GoToAsync("/account");

        await Expect(screen.Page.GetByText("need a name in the address")).ToBeVisibleAsync();
        await Expect(screen.Page.GetByRole(AriaRole.Button, new() { Name = "Add a passkey" })).ToBeHiddenAsync();
    }

    [Fact]
    public async Task A_device_that_is_signed_out_elsewhere_leaves_its_open_page()
    {
        await using var tablet = await house.HostAsync(ScreenSize.Tablet);
        await using var phone = await house.HostAsync(ScreenSize.Phone);
        await phone.GoToAsync("/account");

        await phone.Page.GetByRole(AriaRole.Button, new() { Name = "Sign out everywhere else" }).ClickAsync();
        await Expect(phone.Page.GetByText("Every other device of yours is signed out")).ToBeVisibleAsync();

        await Expect(tablet.Page).ToHaveURLAsync(new Regex("/sign-in"));
    }

    [Fact]
    public async Task The_account_and_the_log_are_clean_in_every_light_and_a_second_host_comes_in()
    {
        await using var screen = await house.HostAsync(ScreenSize.Desktop);
        var page = screen.Page;
        await screen.GoToAsync("/account");
        await screen.ShouldBeCleanInEveryLightAsync("account");
        await LargeAsync(screen, "account");
        await page.GetByRole(AriaRole.Button, new() { Name = "Invite another host" }).ClickAsync();
        var link = await page.Locator(".link code").InnerTextAsync();
        await screen.ShouldBeCleanInEveryLightAsync("account-invited");

        await using var phone = await house.OpenAsync("second", ScreenSize.Phone);
        await phone.GoToAsync(link);
        await phone.PictureAsync("new-host");
        await phone.ShouldBeCleanAsync();
        await phone.Page.GetByLabel("Your name").FillAsync("Hazel");
        await phone.Page.GetByLabel("A password").FillAsync("nine kettles on a cold morning");
        await phone.Page.GetByRole(AriaRole.Button, new() { Name = "Make my account" }).ClickAsync();
        await Expect(phone.Page.GetByRole(AriaRole.Heading, new() { Name = "Meals", Level = 1 })).ToBeVisibleAsync();

        await screen.GoToAsync("/account/log");
        await Expect(page.GetByText("Became a host").First).ToBeVisibleAsync();
        await screen.ShouldBeCleanInEveryLightAsync("account-log");
        await LargeAsync(screen, "account-log");
        await screen.GoToAsync("/account");
        await page.GetByRole(AriaRole.Button, new() { Name = "Remove Hazel" }).ClickAsync();
        await Expect(page.GetByText("They are no host here any more")).ToBeVisibleAsync();
        await Expect(phone.Page).ToHaveURLAsync(new Regex("/sign-in"));
    }

    static async Task LargeAsync(Screen screen, string title)
    {
        foreach (var (name, size) in new[] { ("upright", ScreenSize.Upright), ("desktop", ScreenSize.Desktop) })
        {
            await screen.Page.SetViewportSizeAsync(size.Width, size.Height);
            await screen.PictureAsync($"{title}-{name}");
            await screen.ShouldBeCleanAsync();
        }
    }

    /// <summary>A device that the browser plays (Chrome DevTools Protocol, WebAuthn domain).</summary>
    static async Task PlayDeviceAsync(Screen screen)
    {
        var devices = await screen.Context.NewCDPSessionAsync(screen.Page);
        await devices.SendAsync("WebAuthn.enable");
        await devices.SendAsync("WebAuthn.addVirtualAuthenticator", new()
        {
            ["options"] = new Dictionary<string, object>
            {
                ["protocol"] = "ctap2",
                ["transport"] = "internal",
                ["hasResidentKey"] = true,
                ["hasUserVerification"] = true,
                ["isUserVerified"] = true,
                ["automaticPresenceSimulation"] = true,
            },
        });
    }
}
