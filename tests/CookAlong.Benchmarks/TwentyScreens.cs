using System.Text.Json;
using CookAlong.Web.Features.Live.Line;
using Microsoft.AspNetCore.SignalR.Client;
using Microsoft.Playwright;

namespace CookAlong.Benchmarks;

/// <summary>Twenty pages of a real browser on the lunch's run: from a tap to the new board standing in each page.</summary>
static class TwentyScreens
{
    const int Screens = 20;
    const int Rounds = 20;
    const string Browser = "/usr/bin/chromium";

    /// <summary>When this page first showed that sequence number, in ms since the epoch; all pages share this machine's clock.</summary>
    const string Watch =
        """
        () => {
          globalThis.seen = {};
          const note = () => {
            const sequence = Number(document.querySelector("#part")?.getAttribute("data-sequence"));
            globalThis.seen[sequence] ??= Date.now();
          };
          new MutationObserver(note).observe(document.getElementById("live"), { subtree: true, childList: true, attributes: true });
          note();
        }
        """;

    public static async Task<IEnumerable<(string What, string Figure)>> MeasureAsync(House house, Guid run, string step)
    {
        if (!File.Exists(Browser))
        {
            return [("tap to board on 20 screens", $"not measured: {Browser} is not here")];
        }

        using var playwright = await Playwright.CreateAsync();
        await using var browser = await playwright.Chromium.LaunchAsync(new() { ExecutablePath = Browser, Args = ["--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-dev-shm-usage"] });
        var context = await browser.NewContextAsync();
        await context.AddCookiesAsync(house.Cookies.GetCookies(new Uri(house.Url)).Select(cookie => new Microsoft.Playwright.Cookie { Name = cookie.Name, Value = cookie.Value, Url = house.Url }));
        var pages = new List<IPage>();
        for (var screen = 0; screen < Screens; screen++)
        {
            var page = await context.NewPageAsync();
            await page.GotoAsync($"{house.Url}/cook/{run}");
            await page.EvaluateAsync(Watch);
            pages.Add(page);
        }

        await using var line = new HubConnectionBuilder().WithUrl(new Uri($"{house.Url}/hubs/live"), options =>
        {
            options.Cookies = house.Cookies;
            options.Headers["Origin"] = house.Url;
        }).Build();
        await line.StartAsync();
        await line.InvokeAsync<JsonElement>("Enter", run);
        var took = new List<double>();
        for (var round = 0; round < Rounds; round++)
        {
            var now = TimeProvider.System.GetUtcNow();
            var answer = await line.InvokeAsync<TapAnswer>("Send", new { runId = run, commandId = Guid.CreateVersion7(now), saw = 0, command = new { kind = round % 2 == 0 ? "startStep" : "takeBack", step } });
            foreach (var page in pages)
            {
                await page.WaitForFunctionAsync("sequence => Object.keys(globalThis.seen).some(one => Number(one) >= sequence)", answer.Sequence);
                var seen = await page.EvaluateAsync<double>("sequence => Math.min(...Object.entries(globalThis.seen).filter(([one]) => Number(one) >= sequence).map(([, at]) => at))", answer.Sequence);
                took.Add(seen - now.ToUnixTimeMilliseconds());
            }
        }

        return
        [
            ($"tap to the new board in the page, {Screens} pages of one browser on the same machine, p50", $"{At(took, 0.5):F0} ms"),
            ($"the same, p95", $"{At(took, 0.95):F0} ms"),
        ];
    }

    static double At(List<double> figures, double part) => figures.Order().ElementAt((int)(part * (figures.Count - 1)));
}
