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
sealed partial class KitchenProcess : IKilled, IAsyncDisposable
{
    static readonly TimeSpan Patience = TimeSpan.FromMinutes(1);

    readonly HttpClient own = new();
    readonly IReadOnlyDictionary<string, string> settings;
    readonly DirectoryInfo data = Directory.CreateTempSubdirectory("cookalong-kitchen-");
    readonly TaskCompletionSource<string> secret = new();
    Process? process;

    KitchenProcess(IReadOnlyDictionary<string, string> settings, CookieContainer cookies)
    {
        (this.settings, Cookies) = (settings, cookies);
        Front = Url;
    }

    public string Url { get; } = $"http://127.0.0.1:{FreePort()}";

    /// <summary>Where devices go: to this server, or to a proxy before it and others.</summary>
    public string Front
    {
        get;
        set
        {
            field = value;
            Client = NewDevice();
        }
    }

    public string Data => data.FullName;

    /// <summary>What the next start finds over its data folder; null = nothing.</summary>
    public OwnDisk? Disk { get; set; }

    /// <summary>The host's, signed in.</summary>
    public CookieContainer Cookies { get; }

    public HttpClient Client { get; private set; } = null!;

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

    /// <param name="settings">In the environment, by their names there; null = none.</param>
    public static async Task<KitchenProcess> StartAsync(IReadOnlyDictionary<string, string>? settings = null)
    {
        var kitchen = new KitchenProcess(settings ?? new Dictionary<string, string>(), new CookieContainer());
        await kitchen.RestartAsync();
        await kitchen.PostFormAsync("/first-start", new()
        {
            ["secret"] = await kitchen.secret.Task.WaitAsync(Patience),
            ["name"] = "Maren",
            ["password"] = "a long night before midwinter",
        });
        kitchen.Client = kitchen.NewDevice();
        return kitchen;
    }

    /// <summary>Another server of the same household, on a data folder of its own.</summary>
    public async Task<KitchenProcess> BesideAsync()
    {
        var beside = new KitchenProcess(settings, Cookies);
        await beside.RestartAsync();
        return beside;
    }

    /// <summary>A device of the host's, with cookies of its own beyond the sign-in.</summary>
    public HttpClient NewDevice() => new(new HttpClientHandler { CookieContainer = Signed(), AllowAutoRedirect = false }) { BaseAddress = new Uri(Front) };

    /// <returns>How long it took until it was ready.</returns>
    public async Task<TimeSpan> RestartAsync()
    {
        var watch = Stopwatch.StartNew();
        process = Process.Start(Serve())!;
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
                using var answer = await own.GetAsync($"{Url}/health/ready");
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

    /// <summary>A start that is expected to end by itself.</summary>
    /// <returns>How it ended, and what it said on its error stream.</returns>
    public async Task<(int Exit, string Says)> TryStartAsync()
    {
        var start = Serve();
        start.RedirectStandardError = true;
        using var tried = Process.Start(start)!;
        using var patience = new CancellationTokenSource(Patience);
        // One that serves all the same is stopped.
        await using var stopping = patience.Token.Register(() => tried.Kill());
        var said = await Task.WhenAll(tried.StandardError.ReadToEndAsync(), tried.StandardOutput.ReadToEndAsync());
        await tried.WaitForExitAsync();
        return (tried.ExitCode, said[0]);
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
    /// <param name="device">Null = <see cref="Client"/>.</param>
    public async Task<TapAnswer> TapAsync(Guid run, Guid id, object command, HttpClient? device = null)
    {
        using var answer = await (device ?? Client).PostAsJsonAsync($"/cook/{run}/taps", new { runId = run, commandId = id, saw = 0, command });
        answer.EnsureSuccessStatusCode();
        return (await answer.Content.ReadFromJsonAsync<TapAnswer>())!;
    }

    public async Task<IReadOnlyList<WireCall>> CallsAsync(Guid run) => (await Client.GetFromJsonAsync<Entered>($"/cook/{run}/calls"))!.Calls;

    /// <summary>A screen's line, not open yet.</summary>
    public HubConnection NewLine() => new HubConnectionBuilder()
        .WithUrl(new Uri($"{Front}/hubs/live"), options =>
        {
            options.Cookies = Signed();
            options.Headers["Origin"] = Front;
            options.SkipNegotiation = true;
            options.Transports = Microsoft.AspNetCore.Http.Connections.HttpTransportType.WebSockets;
        })
        .Build();

    /// <summary>The same store that the server writes.</summary>
    public CookAlongDb NewDb()
    {
        var options = new DbContextOptionsBuilder<CookAlongDb>();
        HouseholdData.Use(options, new HouseSettings(data.FullName, Url, [], []) { Postgres = settings.GetValueOrDefault("COOKALONG_POSTGRES") });
        return new CookAlongDb(options.Options);
    }

    public async ValueTask DisposeAsync()
    {
        if (process is not null)
        {
            await KillAsync();
        }

        Client.Dispose();
        own.Dispose();
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        data.Delete(recursive: true);
    }

    ProcessStartInfo Serve()
    {
        string[] command = [.. Disk?.On ?? [], "dotnet", Server, "serve", "--data", Data, "--urls", Url];
        var start = new ProcessStartInfo(command[0], command[1..]) { RedirectStandardOutput = true };
        foreach (var (name, value) in settings)
        {
            start.Environment[name] = value;
        }

        return start;
    }

    CookieContainer Signed()
    {
        // The first sign-in is kept in the jar of all; what a proxy adds is each device's own.
        if (Cookies.Count == 0)
        {
            return Cookies;
        }

        var own = new CookieContainer();
        own.Add(Cookies.GetAllCookies());
        return own;
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
