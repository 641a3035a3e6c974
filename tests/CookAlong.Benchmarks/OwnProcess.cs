using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace CookAlong.Benchmarks;

/// <summary>The server as a household runs it: a process of its own, measured from outside, and one browser that plans.</summary>
static partial class OwnProcess
{
    const int Starts = 5;
    const int Plannings = 12;
    static readonly TimeSpan AfterWarming = TimeSpan.FromSeconds(10);
    static readonly TimeSpan Later = TimeSpan.FromMinutes(1);
    const string Url = "http://127.0.0.1:5599";
    const string Browser = "/usr/bin/chromium";

    static readonly string[] Arguments = ["--no-sandbox", "--disable-gpu", "--disable-background-networking", "--no-first-run", "--disable-dev-shm-usage"];

    static string Server => Path.GetFullPath(Path.Combine(AppContext.BaseDirectory, "../../CookAlong.Web/release/CookAlong.Web.dll"));

    public static async Task<IReadOnlyList<(string What, string Figure)>> MeasureAsync()
    {
        var rows = new List<(string, string)>();
        var kept = Directory.CreateTempSubdirectory("cookalong-bench-").FullName;
        var fresh = new List<double>();
        var existing = new List<double>();
        await using (await StartAsync(kept))
        {
        }

        for (var start = 0; start < Starts; start++)
        {
            var data = Directory.CreateTempSubdirectory("cookalong-bench-").FullName;
            await using (var server = await StartAsync(data))
            {
                fresh.Add(server.ToFirstPage.TotalSeconds);
            }

            await using (var server = await StartAsync(kept))
            {
                existing.Add(server.ToFirstPage.TotalSeconds);
            }

            Directory.Delete(data, recursive: true);
        }

        rows.Add(($"process start to first page, new household (median of {Starts})", $"{fresh.Order().ElementAt(Starts / 2):F1} s"));
        rows.Add(($"process start to first page, existing household (median of {Starts})", $"{existing.Order().ElementAt(Starts / 2):F1} s"));
        rows.AddRange(File.Exists(Browser) ? await MemoryAsync(kept) : [("resident memory", $"not measured: {Browser} is not here")]);
        Directory.Delete(kept, recursive: true);
        return rows;
    }

    static async Task<IEnumerable<(string, string)>> MemoryAsync(string data)
    {
        await using var server = await StartAsync(data);
        var address = await server.AddressAsync();
        using var playwright = await Playwright.CreateAsync();
        await using var browser = await playwright.Chromium.LaunchAsync(new() { ExecutablePath = Browser, Args = Arguments });
        var page = await browser.NewPageAsync();
        await page.GotoAsync(address);
        await page.Locator("[name=name]").FillAsync("Maren");
        await page.Locator("[name=password]").FillAsync("a long night before midwinter");
        await page.Locator("[type=submit]").ClickAsync();
        await page.WaitForURLAsync("**/meals");
        // With the solver loaded, which happens some seconds after the start: else a quick machine would be measured without it.
        await Task.Delay(AfterWarming);
        var before = server.Megabytes();
        await page.GetByRole(AriaRole.Link, new() { NameRegex = Lunch() }).First.ClickAsync();
        await page.WaitForURLAsync("**/meals/*");
        var meal = page.Url;
        var once = "";
        for (var planning = 1; planning <= Plannings; planning++)
        {
            await page.GotoAsync($"{Url}/meals");
            await page.GotoAsync(meal);
            await page.GotoAsync($"{meal}/plan");
            await page.GetByRole(AriaRole.Button, new() { NameRegex = Plan() }).ClickAsync();
            await page.GetByRole(AriaRole.Button, new() { NameRegex = Stop() }).WaitForAsync(new() { Timeout = 60_000 });
            await page.GetByRole(AriaRole.Button, new() { NameRegex = Again() }).WaitForAsync(new() { Timeout = 60_000 });
            once = planning == 1 ? await SettledAsync(server) : once;
        }

        var often = await SettledAsync(server);
        await Task.Delay(Later);
        return
        [
            ("resident memory of the server, signed in, solver loaded, nothing planned", before),
            ("resident memory after the first planning", once),
            ($"resident memory after {Plannings} plannings and {3 * Plannings} pages", often),
            ("resident memory a minute later, the last page left open", server.Megabytes()),
        ];
    }

    /// <summary>What a planning gives back is given back by then.</summary>
    static async Task<string> SettledAsync(Serving server)
    {
        await Task.Delay(TimeSpan.FromSeconds(3));
        return server.Megabytes();
    }

    static async Task<Serving> StartAsync(string data)
    {
        var watch = Stopwatch.StartNew();
        var process = Process.Start(new ProcessStartInfo("dotnet", [Server, "serve", "--data", data, "--urls", Url]) { RedirectStandardOutput = true })!;
        using var client = new HttpClient();
        while (true)
        {
            try
            {
                await client.GetStringAsync($"{Url}/first-start");
                return new Serving(process, watch.Elapsed);
            }
            catch (HttpRequestException) when (watch.Elapsed < TimeSpan.FromMinutes(1) && !process.HasExited)
            {
                await Task.Delay(5);
            }
        }
    }

    sealed record Serving(Process Process, TimeSpan ToFirstPage) : IAsyncDisposable
    {
        public async Task<string> AddressAsync()
        {
            while (await Process.StandardOutput.ReadLineAsync() is { } line)
            {
                if (Address().Match(line) is { Success: true } found)
                {
                    _ = Process.StandardOutput.ReadToEndAsync();
                    return found.Value;
                }
            }

            throw new InvalidOperationException("The server ended without an address.");
        }

        /// <summary>All that is resident, and what of it is pages of files, as Linux tells it (proc_pid_status(5)).</summary>
        public string Megabytes()
        {
            var status = File.ReadAllText($"/proc/{Process.Id}/status");
            return string.Create(CultureInfo.InvariantCulture, $"{Of(Resident())} MB, {Of(OfFiles())} of it pages of files");

            long Of(Regex line) => long.Parse(line.Match(status).Groups[1].ValueSpan, CultureInfo.InvariantCulture) * 1024 / 1_000_000;
        }

        public async ValueTask DisposeAsync()
        {
            Process.Kill();
            await Process.WaitForExitAsync();
            Process.Dispose();
        }
    }

    [GeneratedRegex("http://[^ ]+/first-start#[^ ]+")]
    private static partial Regex Address();

    [GeneratedRegex(@"VmRSS:\s+([0-9]+) kB")]
    private static partial Regex Resident();

    [GeneratedRegex(@"RssFile:\s+([0-9]+) kB")]
    private static partial Regex OfFiles();

    [GeneratedRegex("midwinter", RegexOptions.IgnoreCase)]
    private static partial Regex Lunch();

    [GeneratedRegex("^Plan( again)?$")]
    private static partial Regex Plan();

    [GeneratedRegex("^Stop")]
    private static partial Regex Stop();

    [GeneratedRegex("^Plan again$")]
    private static partial Regex Again();
}
