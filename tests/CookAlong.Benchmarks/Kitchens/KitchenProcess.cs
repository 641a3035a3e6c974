using System.Diagnostics;
using System.Net;
using System.Net.Http.Json;
using System.Net.Sockets;
using System.Text.RegularExpressions;
using CookAlong.Intake.MealFiles;
using CookAlong.Intake.PlanFiles;
using CookAlong.Web;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Live.Line;
using Microsoft.AspNetCore.SignalR.Client;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Benchmarks.Kitchens;

/// <summary>
/// The real server as a process of its own on a free loopback port and a data folder of its own, with a host signed in, that can
/// be killed the hard way and started again on the same data.
/// </summary>
sealed partial class KitchenProcess : IAsyncDisposable
{
    static readonly TimeSpan Patience = TimeSpan.FromMinutes(1);

    readonly DirectoryInfo data = Directory.CreateTempSubdirectory("cookalong-kitchen-");
    readonly TaskCompletionSource<string> secret = new();
    Process? process;

    KitchenProcess() => Client = new HttpClient(new HttpClientHandler { CookieContainer = Cookies, AllowAutoRedirect = false }) { BaseAddress = new Uri(Url) };

    public string Url { get; } = $"http://127.0.0.1:{FreePort()}";

    public CookieContainer Cookies { get; } = new();

    public HttpClient Client { get; }

    /// <summary>Resident, in MB.</summary>
    public double Megabytes
    {
        get
        {
            process!.Refresh();
            return process.WorkingSet64 / 1e6;
        }
    }

    /// <summary>What it has computed since it was started.</summary>
    public TimeSpan Computed
    {
        get
        {
            process!.Refresh();
            return process.TotalProcessorTime;
        }
    }

    public static async Task<KitchenProcess> StartAsync()
    {
        var kitchen = new KitchenProcess();
        await kitchen.RestartAsync();
        await kitchen.PostFormAsync("/first-start", new()
        {
            ["secret"] = await kitchen.secret.Task.WaitAsync(Patience),
            ["name"] = "Maren",
            ["password"] = "a long night before midwinter",
        });
        return kitchen;
    }

    /// <returns>How long it took until it was ready.</returns>
    public async Task<TimeSpan> RestartAsync()
    {
        var watch = Stopwatch.StartNew();
        process = Process.Start(new ProcessStartInfo("dotnet", [Server, "serve", "--data", data.FullName, "--urls", Url]) { RedirectStandardOutput = true })!;
        process.OutputDataReceived += (_, line) =>
        {
            if (FirstStart().Match(line.Data ?? "") is { Success: true } found)
            {
                secret.TrySetResult(found.Groups[1].Value);
            }
        };
        process.BeginOutputReadLine();
        while (true)
        {
            try
            {
                using var answer = await Client.GetAsync("/health/ready");
                if (answer.IsSuccessStatusCode)
                {
                    return watch.Elapsed;
                }
            }
            catch (HttpRequestException) when (watch.Elapsed < Patience && !process.HasExited)
            {
                // Not listening yet.
            }

            await Task.Delay(10);
        }
    }

    /// <summary>kill -9: no goodbye, no flush.</summary>
    public async Task KillAsync()
    {
        process!.Kill();
        await process.WaitForExitAsync();
        process.Dispose();
        process = null;
    }

    /// <summary>Puts a planned meal with steps that are due now beside what the household has, and starts its run.</summary>
    public async Task<Guid> StartRunAsync(DateTimeOffset now)
    {
        var id = Guid.CreateVersion7(now);
        var (meal, plan) = ManyDue.Meal(now);
        await using (var db = NewDb())
        {
            db.Add(new MealRow { Id = id, Name = meal.Name, Document = MealFile.Write(meal), ChangedAt = 0 });
            db.Add(new PlanRow { Id = id, Meal = id, MealVersion = 1, Document = PlanFile.Write(plan, meal), MadeAt = 0 });
            await db.SaveChangesAsync();
        }

        var led = await PostFormAsync($"/meals/{id}/runs", [], page: "/sign-in");
        return Guid.Parse(led.Split('/')[2]);
    }

    /// <exception cref="HttpRequestException">The server is not there.</exception>
    public async Task<TapAnswer> TapAsync(Guid run, Guid id, object command)
    {
        using var answer = await Client.PostAsJsonAsync($"/cook/{run}/taps", new { runId = run, commandId = id, saw = 0, command });
        answer.EnsureSuccessStatusCode();
        return (await answer.Content.ReadFromJsonAsync<TapAnswer>())!;
    }

    public async Task<IReadOnlyList<WireCall>> CallsAsync(Guid run) => (await Client.GetFromJsonAsync<Entered>($"/cook/{run}/calls"))!.Calls;

    /// <summary>A screen's line, not open yet.</summary>
    public HubConnection NewLine() => new HubConnectionBuilder()
        .WithUrl(new Uri($"{Url}/hubs/live"), options =>
        {
            options.Cookies = Cookies;
            options.Headers["Origin"] = Url;
            options.SkipNegotiation = true;
            options.Transports = Microsoft.AspNetCore.Http.Connections.HttpTransportType.WebSockets;
        })
        .Build();

    /// <summary>The same file that the server writes.</summary>
    public CookAlongDb NewDb()
    {
        var options = new DbContextOptionsBuilder<CookAlongDb>();
        HouseholdData.UseFile(options, new HouseSettings(data.FullName, Url, [], []).Database);
        return new CookAlongDb(options.Options);
    }

    public async ValueTask DisposeAsync()
    {
        if (process is not null)
        {
            await KillAsync();
        }

        Client.Dispose();
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        data.Delete(recursive: true);
    }

    /// <returns>Where it led.</returns>
    async Task<string> PostFormAsync(string action, Dictionary<string, string> fields, string? page = null)
    {
        fields["__RequestVerificationToken"] = Token().Match(await Client.GetStringAsync(page ?? action)).Groups[1].Value;
        using var answer = await Client.PostAsync(action, new FormUrlEncodedContent(fields));
        return answer.Headers.Location?.OriginalString ?? throw new InvalidOperationException($"{action} answered {answer.StatusCode}.");
    }

    /// <summary>The build output of the app beside this one's own: artifacts/bin/NAME/CONFIGURATION.</summary>
    public static string Server
    {
        get
        {
            var own = new DirectoryInfo(AppContext.BaseDirectory.TrimEnd(Path.DirectorySeparatorChar));
            return Path.Combine(own.Parent!.Parent!.FullName, "CookAlong.Web", own.Name, "CookAlong.Web.dll");
        }
    }

    static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    [GeneratedRegex("/first-start#(\\S+)")]
    private static partial Regex FirstStart();

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex Token();
}
