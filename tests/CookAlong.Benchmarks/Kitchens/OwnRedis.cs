using System.Diagnostics;
using System.Globalization;
using System.Net.Sockets;

namespace CookAlong.Benchmarks.Kitchens;

/// <summary>A Redis of this process's own on a free loopback port, which keeps nothing.</summary>
sealed class OwnRedis : IKilled, IAsyncDisposable
{
    const string Program = "/usr/bin/redis-server";

    readonly int port = OwnPostgres.FreePort();
    Process? process;
    int lines;

    /// <summary>Why there can be none here; null when there can.</summary>
    public static string? Missing => File.Exists(Program) ? null : "Redis is not installed (Debian: apt-get install redis-server).";

    public static async Task<OwnRedis> StartAsync()
    {
        var own = new OwnRedis();
        await own.RestartAsync();
        return own;
    }

    /// <summary>On the same port.</summary>
    public async Task<TimeSpan> RestartAsync()
    {
        var watch = Stopwatch.StartNew();
        var number = port.ToString(CultureInfo.InvariantCulture);
        process = Process.Start(new ProcessStartInfo(Program, ["--port", number, "--bind", "127.0.0.1", "--save", "", "--appendonly", "no", "--dir", Path.GetTempPath(), "--logfile", "/dev/null"]))!;
        while (true)
        {
            try
            {
                using var client = new TcpClient();
                await client.ConnectAsync("127.0.0.1", port);
                return watch.Elapsed;
            }
            catch (SocketException) when (!process.HasExited)
            {
                await Task.Delay(20);
            }
        }
    }

    /// <returns>The address of a line that no other household here hears.</returns>
    public string NewLine() => string.Create(CultureInfo.InvariantCulture, $"127.0.0.1:{port},channelPrefix=kitchen-{Interlocked.Increment(ref lines)}:");

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
    }
}
