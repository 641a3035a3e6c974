using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace CookAlong.BrowserTests;

/// <summary>One household's server with its host signed in at the tablet; the class that tests share, each with a meal of its own.</summary>
public partial class Household(Chromium chromium) : IAsyncLifetime
{
    static int meals;

    const string Password = "a long night before midwinter";

    public KitchenServer Server { get; private set; } = null!;

    /// <summary>Where its screens have it from.</summary>
    protected virtual string Address => Server.Url;

    public async ValueTask InitializeAsync() => Server = await KitchenServer.StartAsync();

    public async ValueTask DisposeAsync()
    {
        await Server.DisposeAsync();
        GC.SuppressFinalize(this);
    }

    public Task<Screen> OpenAsync(string name, ScreenSize size, ColorScheme scheme = ColorScheme.Light) =>
        chromium.OpenAsync(name, size, Address, scheme);

    /// <summary>A screen on which Maren, the host, is signed in, at the list of meals.</summary>
    public async Task<Screen> HostAsync(ScreenSize size, ColorScheme scheme = ColorScheme.Light)
    {
        if (!Server.IsRunning)
        {
            // A test that failed while the server was away takes no others with it.
            await Server.RestartAsync();
        }

        var screen = await OpenAsync("host", size, scheme);
        if (Server.HasHost)
        {
            await screen.GoToAsync("/sign-in");
            await screen.Page.GetByLabel("Your name").FillAsync("Maren");
            await screen.Page.GetByLabel("Password").FillAsync(Password);
            await screen.Page.GetByRole(AriaRole.Button, new() { Name = "Sign in", Exact = true }).ClickAsync();
        }
        else
        {
            await screen.GoToAsync(new Uri(Server.FirstStart).PathAndQuery + new Uri(Server.FirstStart).Fragment);
            await screen.Page.GetByLabel("Your name").FillAsync("Maren");
            await screen.Page.GetByLabel("A password").FillAsync(Password);
            await screen.Page.GetByRole(AriaRole.Button, new() { Name = "Make my kitchen" }).ClickAsync();
            Server.HasHost = true;
        }

        await Assertions.Expect(screen.Page.GetByRole(AriaRole.Heading, new() { Name = "Meals", Level = 1 })).ToBeVisibleAsync();
        return screen;
    }

    /// <summary>From the list of meals: takes in the soup's meal file, plans it and starts cooking. Ends at the board, with the first jobs due.</summary>
    public static async Task StartSoupAsync(Screen host)
    {
        await StartAsync(host, SoupForSix.Json($"Soup for six, {Interlocked.Increment(ref meals)}", TimeProvider.System.GetUtcNow()));

        await Assertions.Expect(host.Page.Locator("#card-knead")).ToBeVisibleAsync();
    }

    /// <summary>The same with a mash that one of two can make. Ends at the board.</summary>
    public static Task StartMashAsync(Screen host) =>
        StartAsync(host, MashForTwo.Json($"Mash for two, {Interlocked.Increment(ref meals)}", TimeProvider.System.GetUtcNow()));

    public static async Task StartAsync(Screen host, string mealFile)
    {
        await PlanAsync(host, mealFile);
        await host.Page.GetByRole(AriaRole.Button, new() { Name = "Start cooking" }).ClickAsync();
        await host.Page.WaitForURLAsync(RunAddress());
    }

    /// <summary>From the list of meals: takes in a meal file and plans it. Ends at the plan's page.</summary>
    public static async Task PlanAsync(Screen host, string mealFile)
    {
        var page = host.Page;
        await Assertions.Expect(page.Locator("#meal-file")).ToBeEnabledAsync();
        await page.Locator("#meal-file").SetInputFilesAsync(new FilePayload
        {
            Name = "meal.json",
            MimeType = "application/json",
            Buffer = Encoding.UTF8.GetBytes(mealFile),
        });
        await page.WaitForURLAsync(MealAddress());
        await page.GotoAsync($"{new Uri(page.Url).AbsolutePath}/plan");
        await page.GetByRole(AriaRole.Button, new() { Name = "Plan", Exact = true }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Start cooking" })).ToBeEnabledAsync(new() { Timeout = 60_000 });
    }

    /// <summary>A phone that joins the run on the host's screen with a fresh code, typed in.</summary>
    /// <param name="device">A script that runs before every page: what is odd about this phone.</param>
    public async Task<Screen> JoinAsync(Screen host, string name, string? device = null)
    {
        var phone = await LetInAsync(host, "invite", name, device);
        await phone.Page.WaitForURLAsync(new Regex("/cook/.*/me$"));
        return phone;
    }

    /// <summary>A screen in the dining room.</summary>
    public async Task<Screen> WatchAsync(Screen host, string name)
    {
        var screen = await LetInAsync(host, "invite?as=watcher", name, device: null);
        await screen.Page.WaitForURLAsync(RunAddress());
        return screen;
    }

    async Task<Screen> LetInAsync(Screen host, string page, string name, string? device)
    {
        var board = new Uri(host.Page.Url).AbsolutePath;
        await host.GoToAsync($"{board}/{page}");
        var code = await host.Page.Locator(".code").InnerTextAsync();
        await host.GoToAsync(board);
        var phone = await OpenAsync($"phone-{name}", ScreenSize.Phone);
        if (device is not null)
        {
            await phone.Context.AddInitScriptAsync(device);
        }

        await phone.GoToAsync("/join");
        await phone.Page.GetByLabel("code").FillAsync(code);
        await phone.Page.GetByLabel("Your name").FillAsync(name);
        await phone.Page.GetByRole(AriaRole.Button, new() { Name = "Join" }).ClickAsync();
        return phone;
    }

    [GeneratedRegex("/meals/[0-9a-f-]{36}$")]
    private static partial Regex MealAddress();

    [GeneratedRegex("/cook/[0-9a-f-]{36}$")]
    private static partial Regex RunAddress();
}
