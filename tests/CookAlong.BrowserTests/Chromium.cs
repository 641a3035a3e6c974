using System.Diagnostics;
using Microsoft.Playwright;

namespace CookAlong.BrowserTests;

/// <summary>One headless Chromium for the whole test run; each screen is a browser context of its own (its own cookies and storage).</summary>
public sealed class Chromium : IAsyncLifetime
{
    static readonly string[] Places = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];

    // Newer ones draw the window's own bar as a page, in a process of its own for each screen, though nobody sees it. The rest is
    // what Playwright turns off; of two lists Chromium heeds the last.
    static readonly string[] Without =
    [
        "InitialWebUI", "WebUIReloadButton", "WebUIToolbar",
        "AvoidUnnecessaryBeforeUnloadCheckSync", "DestroyProfileOnBrowserClose", "DialMediaRouteProvider", "GlobalMediaControls", "HttpsUpgrades", "LensOverlay",
        "MediaRouter", "PaintHolding", "ThirdPartyStoragePartitioning", "BlockOriginHeaderModificationOnRedirect", "AvoidCorsURLLoaderRestartOnRedirect", "Translate",
        "AutoDeElevate", "OptimizationHints", "NetworkTimeServiceQuerying", "AimEnabled",
    ];

    IPlaywright? playwright;
    IBrowser? browser;

    /// <summary>Set COOKALONG_CHROMIUM to use another one.</summary>
    static string? Executable => Environment.GetEnvironmentVariable("COOKALONG_CHROMIUM") ?? Places.FirstOrDefault(File.Exists);

    public async ValueTask InitializeAsync()
    {
        if (Executable is null && Environment.IsPrivilegedProcess && File.Exists("/usr/bin/apt-get"))
        {
            await InstallAsync();
        }

        if (Executable is null)
        {
            return;
        }

        playwright = await Playwright.CreateAsync();
        Assertions.SetDefaultExpectTimeout(30_000);
        browser = await playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = Executable,
            Args =
            [
                "--no-sandbox", "--disable-gpu", "--disable-quic", "--disable-background-networking",
                "--disable-component-update", "--disable-sync", "--no-first-run", "--disable-dev-shm-usage",
                "--autoplay-policy=user-gesture-required", $"--host-resolver-rules=MAP {KitchenServer.HomeName} 127.0.0.1",
            ],
        });
    }

    public async ValueTask DisposeAsync()
    {
        if (browser is not null)
        {
            await browser.DisposeAsync();
        }

        playwright?.Dispose();
    }

    /// <summary>From the distribution's own packages. Where that fails the tests are skipped, saying what to install.</summary>
    static async Task InstallAsync()
    {
        foreach (var arguments in new[] { "update -q", "install -qy --no-install-recommends chromium" })
        {
            using var apt = Process.Start(new ProcessStartInfo("apt-get", arguments) { RedirectStandardOutput = true })!;
            await apt.StandardOutput.ReadToEndAsync();
            await apt.WaitForExitAsync();
        }
    }

    /// <summary>A new screen at that address, which may trust every certificate, as if its authority had been installed; skips the test where there is no Chromium.</summary>
    public async Task<Screen> OpenAsync(string name, ScreenSize size, string baseUrl, ColorScheme scheme = ColorScheme.Light, bool trustsAll = false)
    {
        Assert.SkipWhen(browser is null, "No Chromium here: install it (Debian: apt-get install chromium) or set COOKALONG_CHROMIUM.");
        var context = await browser!.NewContextAsync(new BrowserNewContextOptions
        {
            BaseURL = baseUrl,
            IgnoreHTTPSErrors = trustsAll,
            ViewportSize = new ViewportSize { Width = size.Width, Height = size.Height },
            HasTouch = size != ScreenSize.Desktop,
            ReducedMotion = ReducedMotion.Reduce,
            ColorScheme = scheme,
        });
        context.SetDefaultTimeout(60_000);
        return new Screen(name, context, await context.NewPageAsync());
    }
}

public sealed record ScreenSize(int Width, int Height)
{
    public static ScreenSize Phone { get; } = new(390, 844);

    public static ScreenSize Tablet { get; } = new(1180, 820);

    /// <summary>The tablet on its side edge.</summary>
    public static ScreenSize Upright { get; } = new(820, 1180);

    public static ScreenSize Desktop { get; } = new(1440, 900);
}

[CollectionDefinition(Name)]
public sealed class Browsers : ICollectionFixture<Chromium>
{
    public const string Name = "browsers";
}
