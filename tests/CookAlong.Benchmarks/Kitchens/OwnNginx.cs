using System.Diagnostics;
using System.Globalization;
using System.Net.Sockets;

namespace CookAlong.Benchmarks.Kitchens;

/// <summary>A real nginx on loopback before two servers, with deploy/scale-out/nginx.conf: only port and addresses are put in.</summary>
sealed class OwnNginx : IAsyncDisposable
{
    const string Program = "/usr/sbin/nginx";

    readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("cookalong-nginx-");
    readonly int port = OwnPostgres.FreePort();
    Process? process;

    /// <summary>Why there can be none here; null when there can.</summary>
    public static string? Missing => File.Exists(Program) ? null : "nginx is not installed (Debian: apt-get install nginx-light).";

    public string Url => string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{port}");

    public static async Task<OwnNginx> StartAsync(string first, string second)
    {
        var nginx = new OwnNginx();
        var site = (await File.ReadAllTextAsync(Path.Combine(Root(), "deploy", "scale-out", "nginx.conf")))
            .Replace("listen 80;", string.Create(CultureInfo.InvariantCulture, $"listen 127.0.0.1:{nginx.port};"), StringComparison.Ordinal)
            .Replace("node-1:5080", new Uri(first).Authority, StringComparison.Ordinal)
            .Replace("node-2:5080", new Uri(second).Authority, StringComparison.Ordinal);
        var at = nginx.folder.FullName;
        await File.WriteAllTextAsync(Path.Combine(at, "site.conf"), site);
        var temporary = string.Concat(new[] { "client_body", "proxy", "fastcgi", "uwsgi", "scgi" }.Select(kind => $"{kind}_temp_path {at}/{kind};"));
        await File.WriteAllTextAsync(
            Path.Combine(at, "nginx.conf"),
            $"daemon off; {(Environment.IsPrivilegedProcess ? "user root;" : "")} worker_processes 1; worker_rlimit_nofile 16384; pid {at}/pid; error_log {at}/errors;\nevents {{ worker_connections 8192; }}\nhttp {{ access_log off; {temporary} include {at}/site.conf; }}\n");
        nginx.process = Process.Start(new ProcessStartInfo(Program, ["-e", $"{at}/errors", "-p", at, "-c", Path.Combine(at, "nginx.conf")]))!;
        while (true)
        {
            try
            {
                using var client = new TcpClient();
                await client.ConnectAsync("127.0.0.1", nginx.port);
                return nginx;
            }
            catch (SocketException) when (!nginx.process.HasExited)
            {
                await Task.Delay(20);
            }
        }
    }

    public async ValueTask DisposeAsync()
    {
        process!.Kill(entireProcessTree: true);
        await process.WaitForExitAsync();
        process.Dispose();
        folder.Delete(recursive: true);
    }

    static string Root()
    {
        var at = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(at.FullName, "CookAlong.sln")))
        {
            at = at.Parent ?? throw new InvalidOperationException("no CookAlong.sln above the program");
        }

        return at.FullName;
    }
}
