using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using Npgsql;

namespace CookAlong.Benchmarks.Kitchens;

/// <summary>
/// A PostgreSQL of this process's own, on a free loopback port and a folder of its own. Debian's programs; they do not run as root,
/// so as root the user "postgres" runs them.
/// </summary>
sealed class OwnPostgres : IKilled, IAsyncDisposable
{
    const string User = "cook";

    static readonly bool IsRoot = Environment.UserName == "root";

    /// <summary>Looks at one that starts; the processes of one that was killed take a moment to go.</summary>
    const int Tries = 50;

    readonly string folder;
    readonly int port;
    readonly bool isDurable;
    bool isAway = true;
    int databases;

    OwnPostgres(string folder, int port, bool isDurable) => (this.folder, this.port, this.isDurable) = (folder, port, isDurable);

    /// <summary>Why there can be none here; null when there can.</summary>
    public static string? Missing => Programs is null ? "PostgreSQL is not installed (Debian: apt-get install postgresql)." : null;

    static string? Programs => !OperatingSystem.IsLinux() || !Directory.Exists("/usr/lib/postgresql") ? null
        : Directory.EnumerateDirectories("/usr/lib/postgresql").Select(version => Path.Combine(version, "bin")).Where(bin => File.Exists(Path.Combine(bin, "initdb"))).Max(StringComparer.Ordinal);

    /// <param name="isDurable">False: faster, and a power cut would break it, which no test is about.</param>
    public static async Task<OwnPostgres> StartAsync(bool isDurable)
    {
        var folder = (await RunAsync("mktemp", "-d", "-t", "cookalong-postgres-XXXXXX")).Trim();
        var own = new OwnPostgres(folder, FreePort(), isDurable);
        await RunAsync($"{Programs}/initdb", "-D", $"{folder}/data", "-U", User, "-A", "trust", "-E", "UTF8", "--locale=C.UTF-8", "--no-sync");
        await own.RestartAsync();
        return own;
    }

    /// <summary>On the same folder and port.</summary>
    public async Task<TimeSpan> RestartAsync()
    {
        var watch = Stopwatch.StartNew();
        var options = string.Create(CultureInfo.InvariantCulture, $"-p {port} -k {folder} -h 127.0.0.1 -c fsync={(isDurable ? "on" : "off")} -c max_connections=200");
        for (var look = 1; isAway; look++)
        {
            try
            {
                await RunAsync($"{Programs}/pg_ctl", "-D", $"{folder}/data", "-l", $"{folder}/log", "-w", "-o", options, "start");
                isAway = false;
            }
            catch (InvalidOperationException) when (look < Tries)
            {
                await Task.Delay(200);
            }
        }

        // Of this process; the servers' are theirs to mend.
        NpgsqlConnection.ClearAllPools();
        return watch.Elapsed;
    }

    /// <summary>kill -9 of the process that all others hang on.</summary>
    public async Task KillAsync()
    {
        await RunAsync("sh", "-c", $"kill -9 $(head -n 1 {folder}/data/postmaster.pid)");
        isAway = true;
    }

    /// <summary>Tells every connection that it is over, and writes nothing down first.</summary>
    public async Task StopAsync()
    {
        await RunAsync($"{Programs}/pg_ctl", "-D", $"{folder}/data", "-m", "immediate", "stop");
        isAway = true;
    }

    /// <returns>The connection string of an empty database.</returns>
    public async Task<string> NewDatabaseAsync()
    {
        var name = $"kitchen_{Interlocked.Increment(ref databases)}";
        await using var all = new NpgsqlConnection(Address("postgres"));
        await all.OpenAsync();
        await using var make = new NpgsqlCommand($"CREATE DATABASE {name}", all);
        await make.ExecuteNonQueryAsync();
        return Address(name);
    }

    public async ValueTask DisposeAsync()
    {
        NpgsqlConnection.ClearAllPools();
        if (!isAway)
        {
            await StopAsync();
        }

        await RunAsync("rm", "-r", folder);
    }

    string Address(string database) => string.Create(CultureInfo.InvariantCulture, $"Host=127.0.0.1;Port={port};Database={database};Username={User};Maximum Pool Size=40");

    static async Task<string> RunAsync(string program, params string[] arguments)
    {
        string[] all = IsRoot ? ["runuser", "-u", "postgres", "--", program, .. arguments] : [program, .. arguments];
        // pg_ctl leaves a server behind that would keep a pipe open for ever.
        var isLeavingOneBehind = arguments.Contains("start");
        string[] command = isLeavingOneBehind ? ["sh", "-c", "exec \"$@\" >/dev/null 2>&1", "sh", .. all] : all;
        using var process = Process.Start(new ProcessStartInfo(command[0], command[1..]) { RedirectStandardOutput = true, WorkingDirectory = "/" })!;
        var said = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        return process.ExitCode == 0 ? said : throw new InvalidOperationException($"{program} ended with {process.ExitCode}.");
    }

    public static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
