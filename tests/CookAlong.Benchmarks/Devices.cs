using CookAlong.Benchmarks.Kitchens;
using Microsoft.Playwright;

namespace CookAlong.Benchmarks;

/// <summary>
/// What a device owes its kitchen, on pages of a real browser: right again when it is unlocked, ringing at its time whether or
/// not the server is there, and of one mind about the time with devices whose clocks are minutes wrong.
/// </summary>
static class Devices
{
    const string Browser = "/usr/bin/chromium";
    const int Pages = 5;
    const int Unlocks = 20;

    /// <summary>As long as a call that is due in the next minute may take to come.</summary>
    static readonly TimeSpan Patience = TimeSpan.FromSeconds(150);

    /// <summary>Keeps when each sequence number was first shown and when a call first rang, in ms by this machine's clock.</summary>
    const string Watch =
        """
        globalThis.honestNow = Date.now.bind(Date);
        globalThis.shownAt = new Map();
        globalThis.rangAt = null;
        const note = () => {
          const sequence = document.querySelector("#part")?.getAttribute("data-sequence");
          if (sequence && !shownAt.has(sequence)) shownAt.set(sequence, honestNow());
          if (rangAt === null && document.querySelector("#ringing")?.childElementCount > 0) rangAt = honestNow();
        };
        new MutationObserver(note).observe(document, { subtree: true, childList: true, attributes: true });
        """;

    static string Shifted(int minutes) =>
        $$"""
        const wrong = {{minutes}} * 60_000, now = Date.now.bind(Date);
        Date.now = () => now() + wrong;
        """;

    public static async Task<IReadOnlyList<(string What, string Figure)>> MeasureAsync()
    {
        if (!File.Exists(Browser))
        {
            return [("what a device owes its kitchen", $"not measured: {Browser} is not here")];
        }

        using var playwright = await Playwright.CreateAsync();
        await using var browser = await playwright.Chromium.LaunchAsync(new() { ExecutablePath = Browser, Args = ["--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-dev-shm-usage"] });
        await using var kitchen = await KitchenProcess.StartAsync();
        var unlocked = await UnlockAsync(browser, kitchen);
        var apart = await ApartAsync(browser, kitchen);
        var up = await RingAsync(browser, kitchen, isKilled: false);
        var dead = await RingAsync(browser, kitchen, isKilled: true);
        return
        [
            ($"right again after it was unlocked, with a dead socket, p50; most (of {unlocked.Count})", $"{Milliseconds(unlocked, 0.5)}; {Milliseconds(unlocked, 1)}"),
            ($"clocks of {Pages} devices that are right, 5 min fast and 5 min slow: farthest apart", $"{apart:F0} ms"),
            ($"a call rings after it is due, server up, p50; most (of {up.Count} pages)", $"{Milliseconds(up, 0.5)}; {Milliseconds(up, 1)}"),
            ($"the same, server killed, p50; most (of {dead.Count} pages)", $"{Milliseconds(dead, 0.5)}; {Milliseconds(dead, 1)}"),
            ("load of the machine when this was over (1 min, of 2 cores)", (await File.ReadAllTextAsync("/proc/loadavg")).Split(' ')[0]),
        ];
    }

    /// <summary>Milliseconds from the moment a page is seen again to the board as it is, after a tap it could not hear.</summary>
    static async Task<List<double>> UnlockAsync(IBrowser browser, KitchenProcess kitchen)
    {
        var run = await kitchen.StartRunAsync(TimeProvider.System.GetUtcNow());
        var page = await OpenAsync(browser, kitchen, minutesWrong: 0);
        var isLocked = false;
        await page.RouteWebSocketAsync("**/hubs/live", socket =>
        {
            var server = socket.ConnectToServer();
            var isDead = false;
            socket.OnMessage(frame => Pass(frame, server.Send, server.Send));
            server.OnMessage(frame => Pass(frame, socket.Send, socket.Send));

            void Pass(IWebSocketFrame frame, Action<string> text, Action<byte[]> bytes)
            {
                isDead |= isLocked;
                if (!isDead && frame.Text is { } words)
                {
                    text(words);
                }
                else if (!isDead && frame.Binary is { } binary)
                {
                    bytes(binary);
                }
            }
        });
        await page.GotoAsync($"{kitchen.Url}/cook/{run}/me");
        await HoldAsync(page, "shownAt.size > 0");
        var took = new List<double>();
        for (var round = 0; round < Unlocks; round++)
        {
            isLocked = true;
            var answer = await kitchen.TapAsync(run, Guid.CreateVersion7(TimeProvider.System.GetUtcNow()), new { kind = round % 2 == 0 ? "startStep" : "takeBack", step = ManyDue.Job(1).Value });

            // Long enough for the news to have come, had it been heard; shorter than a page that hears nothing waits to ask.
            await Task.Delay(300);
            isLocked = false;
            took.Add(await page.EvaluateAsync<double>("""
                async (sequence) => {
                  if (shownAt.has(sequence)) return -1;
                  const seen = honestNow();
                  document.dispatchEvent(new Event("visibilitychange"));
                  while (!shownAt.has(sequence)) await new Promise((done) => setTimeout(done, 5));
                  return shownAt.get(sequence) - seen;
                }
                """, $"{answer.Sequence}"));
        }

        await page.Context.CloseAsync();
        return [.. took.Where(one => one >= 0)];
    }

    /// <summary>How far apart the times are that the pages count by, in ms.</summary>
    static async Task<double> ApartAsync(IBrowser browser, KitchenProcess kitchen)
    {
        var run = await kitchen.StartRunAsync(TimeProvider.System.GetUtcNow());
        var errors = new List<double>();
        foreach (var wrong in new[] { 0, 5, -5, 5, -5 })
        {
            var page = await OpenAsync(browser, kitchen, wrong);
            await page.GotoAsync($"{kitchen.Url}/cook/{run}/me");
            await HoldAsync(page, "Math.abs((await import('/js/clock.js')).now() - honestNow()) < 60_000");

            // Eight readings are taken, the first at once.
            await Task.Delay(2_000);
            errors.Add(await page.EvaluateAsync<double>("import('/js/clock.js').then(({ now }) => now() - honestNow())"));
            await page.Context.CloseAsync();
        }

        return errors.Max() - errors.Min();
    }

    /// <summary>Milliseconds from the due time of the first calls to the ringing on each page, which is the tick that sounds.</summary>
    static async Task<List<double>> RingAsync(IBrowser browser, KitchenProcess kitchen, bool isKilled)
    {
        // The jobs begin with the minute after the next one; there is time to open the pages.
        var run = await kitchen.StartRunAsync(TimeProvider.System.GetUtcNow().AddMinutes(3));
        var due = (await kitchen.CallsAsync(run)).Min(call => call.DueUtc);
        var pages = new List<IPage>();
        for (var device = 0; device < Pages; device++)
        {
            var page = await OpenAsync(browser, kitchen, minutesWrong: 0);
            await page.GotoAsync($"{kitchen.Url}/cook/{run}");
            await HoldAsync(page, "shownAt.size > 0");
            pages.Add(page);
        }

        if (isKilled)
        {
            await Task.Delay(2_000);
            await kitchen.KillAsync();
        }

        var took = new List<double>();
        foreach (var page in pages)
        {
            await HoldAsync(page, "rangAt !== null");
            took.Add(await page.EvaluateAsync<double>("rangAt") - due);
            await page.Context.CloseAsync();
        }

        return took;
    }

    static async Task<IPage> OpenAsync(IBrowser browser, KitchenProcess kitchen, int minutesWrong)
    {
        var context = await browser.NewContextAsync(new() { ViewportSize = new() { Width = 390, Height = 844 } });
        await context.AddCookiesAsync(kitchen.Cookies.GetCookies(new Uri(kitchen.Url)).Select(cookie => new Cookie { Name = cookie.Name, Value = cookie.Value, Url = kitchen.Url }));
        await context.AddInitScriptAsync(Watch);
        await context.AddInitScriptAsync(Shifted(minutesWrong));
        return await context.NewPageAsync();
    }

    /// <summary>Until an expression of the page holds; what Playwright waits by, the pages' content policy forbids.</summary>
    static async Task HoldAsync(IPage page, string expression) =>
        await page.EvaluateAsync($"async () => {{ while (!({expression})) await new Promise((done) => setTimeout(done, 20)); }}").WaitAsync(Patience);

    static string Milliseconds(List<double> figures, double part) => figures.Count == 0 ? "none" : $"{figures.Order().ElementAt((int)(part * (figures.Count - 1))):F0} ms";
}
