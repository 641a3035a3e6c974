using System.Text.Json;
using CookAlong.Web.Features.Live.Line;
using Microsoft.AspNetCore.SignalR.Client;
using Microsoft.Playwright;

namespace CookAlong.Benchmarks;

/// <summary>Twenty pages of a real browser on the lunch's run: from a tap to the new board standing in each page.</summary>
static class TwentyScreens
{
    /// <summary>A full kitchen: a tablet at each end of it, and everybody's phone.</summary>
    static readonly (int Count, string Address, int Width, int Height)[] kitchen = [(2, "", 1180, 820), (18, "/me", 390, 844)];

    const int Rounds = 40;
    const string Browser = "/usr/bin/chromium";

    /// <summary>When this page first showed that sequence number, in ms since the epoch; all pages share this machine's clock.</summary>
    const string Watch =
        """
        () => {
          const seen = [];
          const waiting = [];
          const note = () => {
            const sequence = Number(document.querySelector("#part")?.getAttribute("data-sequence"));
            if (seen.length > 0 && seen.at(-1).sequence >= sequence) return;
            seen.push({ sequence, at: Date.now() });
            for (const one of waiting.splice(0)) one();
          };

          // Told, not asked for again and again: twenty pages that ask at every frame would measure the asking.
          globalThis.shown = async sequence => {
            while (!seen.some(one => one.sequence >= sequence)) await new Promise(done => waiting.push(done));
            return seen.find(one => one.sequence >= sequence).at;
          };
          new MutationObserver(note).observe(document.getElementById("live"), { subtree: true, childList: true, attributes: true });
          note();
        }
        """;

    public static async Task<IEnumerable<(string What, string Figure)>> MeasureAsync(House house, Guid run, string step)
    {
        if (!File.Exists(Browser))
        {
            return [("tap to the new board on 20 screens", $"not measured: {Browser} is not here")];
        }

        using var playwright = await Playwright.CreateAsync();
        await using var browser = await playwright.Chromium.LaunchAsync(new() { ExecutablePath = Browser, Args = ["--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-dev-shm-usage"] });
        var pages = new List<IPage>();
        foreach (var (count, address, width, height) in kitchen)
        {
            var context = await browser.NewContextAsync(new() { ViewportSize = new() { Width = width, Height = height } });
            await context.AddCookiesAsync(house.Cookies.GetCookies(new Uri(house.Url)).Select(cookie => new Microsoft.Playwright.Cookie { Name = cookie.Name, Value = cookie.Value, Url = house.Url }));
            for (var screen = 0; screen < count; screen++)
            {
                var page = await context.NewPageAsync();
                await page.GotoAsync($"{house.Url}/cook/{run}{address}");
                await page.EvaluateAsync(Watch);
                pages.Add(page);
            }
        }

        var all = await TapAsync(house, run, step, pages);
        foreach (var page in pages.Skip(1).SkipLast(1))
        {
            await page.CloseAsync();
        }

        // In a kitchen each screen is drawn by a processor of its own: two pages here, and of the others what they ask the server for.
        await using var others = await Lines.OpenAsync(house, run, kitchen.Sum(one => one.Count) - 2);
        var two = await TapAsync(house, run, step, [pages[0], pages[^1]]);
        return
        [
            ($"tap to the new board in the page, {pages.Count} pages (two tablets, phones) of one browser on the same machine, p50", $"{At(all, 0.5):F0} ms"),
            ($"the same, p95", $"{At(all, 0.95):F0} ms"),
            ($"the same on a tablet's page and a phone's, while {pages.Count - 2} lines fetch what other screens would, p50", $"{At(two, 0.5):F0} ms"),
            ($"the same, p95", $"{At(two, 0.95):F0} ms"),
        ];
    }

    /// <summary>Milliseconds from each tap to the new board, of each page.</summary>
    static async Task<List<double>> TapAsync(House house, Guid run, string step, IReadOnlyList<IPage> pages)
    {
        await using var line = Lines.To(house);
        await line.StartAsync();
        await line.InvokeAsync<JsonElement>("Enter", run);
        var took = new List<double>();
        for (var round = 0; round < Rounds; round++)
        {
            var now = TimeProvider.System.GetUtcNow();
            var answer = await line.InvokeAsync<TapAnswer>("Send", new { runId = run, commandId = Guid.CreateVersion7(now), saw = 0, command = new { kind = round % 2 == 0 ? "startStep" : "takeBack", step } });
            foreach (var page in pages)
            {
                took.Add(await page.EvaluateAsync<double>("sequence => globalThis.shown(sequence)", answer.Sequence) - now.ToUnixTimeMilliseconds());
            }
        }

        return took;
    }

    static double At(List<double> figures, double part) => figures.Order().ElementAt((int)(part * (figures.Count - 1)));
}
