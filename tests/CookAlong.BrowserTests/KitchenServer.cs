using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Text.RegularExpressions;

namespace CookAlong.BrowserTests;

/// <summary>
/// The real server as its own process on a free loopback port, with a data folder of its own, so that a test can kill it
/// the hard way (SIGKILL) in the middle and start it again on the same data.
/// </summary>
public sealed partial class KitchenServer : IAsyncDisposable
{
    readonly DirectoryInfo data = Directory.CreateTempSubdirectory("cookalong-");
    readonly List<string> log = [];
    Process? process;

    readonly int httpsPort = FreePort();

    readonly string[] more;

    KitchenServer(int port, string[] more) => (Url, this.more) = ($"http://127.0.0.1:{port}", more);

    public string Url { get; }

    /// <summary>A name as homes have them. Over plain HTTP it is no secure context, which a loopback address always is.</summary>
    public const string HomeName = "kitchen.local";

    /// <summary>The same server by that name, to the tests' own Chromium.</summary>
    public string NamedUrl => Url.Replace("127.0.0.1", HomeName, StringComparison.Ordinal);

    /// <summary>Also on this machine's other addresses, from the next start on.</summary>
    public bool ListensEverywhere { get; init; }

    /// <summary>Plain HTTP is left to the page that installs the authority, from the next start on.</summary>
    public bool IsHttpsOnly { get; set; }

    /// <summary>The same over HTTPS, once <see cref="TurnHttpsOnAsync"/> was called and the server started again.</summary>
    public string HttpsUrl => $"https://127.0.0.1:{httpsPort}";

    /// <summary>The address with the one-time secret that makes the host account.</summary>
    public string FirstStart { get; private set; } = "";

    public IReadOnlyList<string> Log
    {
        get
        {
            lock (log)
            {
                return [.. log];
            }
        }
    }

    public bool HasHost { get; set; }

    public bool IsRunning => process is not null;

    /// <param name="more">Further options; as they stand on the command line.</param>
    public static async Task<KitchenServer> StartAsync(string[]? more = null, bool everywhere = false)
    {
        var server = new KitchenServer(FreePort(), more ?? []) { ListensEverywhere = everywhere };
        await server.RestartAsync();
        return server;
    }

    /// <summary>Behind the server's back.</summary>
    public async Task ChangeDatabaseAsync(string sql)
    {
        await using var database = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={Path.Combine(data.FullName, "cookalong.db")};Pooling=False");
        await database.OpenAsync(TestContext.Current.CancellationToken);
        await using var change = database.CreateCommand();
        change.CommandText = sql;
        await change.ExecuteNonQueryAsync(TestContext.Current.CancellationToken);
    }

    /// <summary>Starts the process and waits until it answers.</summary>
    public async Task RestartAsync()
    {
        var start = new ProcessStartInfo("dotnet")
        {
            ArgumentList = { WebApp, "serve", "--data", data.FullName, "--urls", ListensEverywhere ? Url.Replace("127.0.0.1", "0.0.0.0", StringComparison.Ordinal) : Url, "--https-port", httpsPort.ToString(System.Globalization.CultureInfo.InvariantCulture) },
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = data.FullName,
        };
        foreach (var option in more)
        {
            start.ArgumentList.Add(option);
        }

        if (IsHttpsOnly)
        {
            start.ArgumentList.Add("--https-only");
            start.ArgumentList.Add("yes");
        }

        process = Process.Start(start) ?? throw new InvalidOperationException("dotnet did not start");
        process.OutputDataReceived += (_, line) => Note(line.Data);
        process.ErrorDataReceived += (_, line) => Note(line.Data);
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        await AnswersAsync();
    }

    /// <summary>The verb 'https on'.</summary>
    public async Task TurnHttpsOnAsync()
    {
        using var verb = Process.Start(new ProcessStartInfo("dotnet") { ArgumentList = { WebApp, "https", "on", "--data", data.FullName }, RedirectStandardOutput = true })!;
        var said = await verb.StandardOutput.ReadToEndAsync();
        await verb.WaitForExitAsync();
        Assert.True(verb.ExitCode == 0, said);
    }

    /// <summary>kill -9: no goodbye, no flush.</summary>
    public async Task KillAsync()
    {
        process!.Kill();
        await process.WaitForExitAsync();
        process.Dispose();
        process = null;
    }

    public async ValueTask DisposeAsync()
    {
        if (process is not null)
        {
            await KillAsync();
        }

        data.Delete(recursive: true);
    }

    /// <summary>The build output of the app beside this test's own: artifacts/bin/NAME/CONFIGURATION.</summary>
    static string WebApp
    {
        get
        {
            var own = new DirectoryInfo(AppContext.BaseDirectory.TrimEnd(Path.DirectorySeparatorChar));
            return Path.Combine(own.Parent!.Parent!.FullName, "CookAlong.Web", own.Name, "CookAlong.Web.dll");
        }
    }

    async Task AnswersAsync()
    {
        using var client = new HttpClient { BaseAddress = new Uri(Url) };
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(60));
        while (true)
        {
            Assert.False(process!.HasExited, $"The server stopped at start:\n{string.Join('\n', log)}");
            try
            {
                if ((await client.GetAsync("/health/ready", patience.Token)).StatusCode == HttpStatusCode.OK)
                {
                    return;
                }
            }
            catch (HttpRequestException)
            {
                // Not listening yet.
            }

            await Task.Delay(100, patience.Token);
        }
    }

    void Note(string? line)
    {
        if (line is null)
        {
            return;
        }

        lock (log)
        {
            log.Add(line);
        }

        if (FirstStartAddress().Match(line) is { Success: true } match)
        {
            FirstStart = match.Value;
        }
    }

    public static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    [GeneratedRegex(@"http://\S+/first-start#\S+")]
    private static partial Regex FirstStartAddress();
}
