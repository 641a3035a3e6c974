using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using System.Text.RegularExpressions;

namespace CookAlong.BrowserTests;

/// <summary>
/// A real nginx on loopback with deploy/nginx.conf, that very file: only ports, certificate and the server's address are put in,
/// and the path where it says to write one. Skips the test where there is no nginx.
/// </summary>
public sealed partial class Nginx : IAsyncDisposable
{
    public const string Name = "cook.example.org";

    static readonly string[] Places = ["/usr/sbin/nginx", "/usr/local/sbin/nginx", "/usr/bin/nginx", "/opt/homebrew/bin/nginx"];

    readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("cookalong-nginx-");
    Process? process;

    public int PlainPort { get; } = KitchenServer.FreePort();

    public int Port { get; } = KitchenServer.FreePort();

    static string? Executable => Environment.GetEnvironmentVariable("COOKALONG_NGINX") ?? Places.FirstOrDefault(File.Exists);

    /// <param name="to">The server behind it: host and port.</param>
    /// <param name="basePath">"/kitchen", or "" for the root.</param>
    /// <param name="endsTls">False: plain HTTP on the same port, for browsers that would have to be told to trust a certificate.</param>
    public static async Task<Nginx> StartAsync(string to, string basePath, bool endsTls = true)
    {
        Assert.SkipWhen(Executable is null, "No nginx here: install it (Debian: apt-get install nginx-light) or set COOKALONG_NGINX.");
        var nginx = new Nginx();
        await nginx.RunAsync(to, basePath, endsTls);
        return nginx;
    }

    /// <summary>A client that reaches every name there, keeps cookies, follows nothing, and takes the test's certificate.</summary>
    public HttpClient Client(CookieContainer? cookies = null)
    {
#pragma warning disable CA5359 // The certificate was made a moment ago, for this test.
        var handler = new SocketsHttpHandler
        {
            AllowAutoRedirect = false,
            CookieContainer = cookies ?? new(),
            SslOptions = { RemoteCertificateValidationCallback = (_, _, _, _) => true },
            ConnectCallback = async (context, stop) =>
            {
                var socket = new Socket(SocketType.Stream, ProtocolType.Tcp) { NoDelay = true };
                await socket.ConnectAsync(IPAddress.Loopback, context.DnsEndPoint.Port, stop);
                return new NetworkStream(socket, ownsSocket: true);
            },
        };
#pragma warning restore CA5359
        return new HttpClient(handler) { BaseAddress = new Uri($"https://{Name}:{Port}") };
    }

    public async ValueTask DisposeAsync()
    {
        if (process is not null)
        {
            process.Kill(entireProcessTree: true);
            await process.WaitForExitAsync();
            process.Dispose();
        }

        folder.Delete(recursive: true);
    }

    async Task RunAsync(string to, string basePath, bool endsTls)
    {
        WriteCertificate();
        var site = await File.ReadAllTextAsync(Path.Combine(Root(), "deploy", "nginx.conf"));
        site = site.Replace("listen 80;", $"listen 127.0.0.1:{PlainPort};", StringComparison.Ordinal)
            .Replace("listen 443 ssl;", $"listen 127.0.0.1:{Port}{(endsTls ? " ssl" : "")};", StringComparison.Ordinal)
            .Replace("/etc/ssl/cook.example.org", folder.FullName, StringComparison.Ordinal)
            .Replace("http://127.0.0.1:5080", $"http://{to}", StringComparison.Ordinal)
            .Replace("location / {", $"location {basePath}/ {{", StringComparison.Ordinal);
        site = NotHere().Replace(site, "");
        await File.WriteAllTextAsync(Path.Combine(folder.FullName, "site.conf"), endsTls ? site : Tls().Replace(site, ""));
        var temporary = string.Concat(new[] { "client_body", "proxy", "fastcgi", "uwsgi", "scgi" }.Select(kind => $"{kind}_temp_path {folder.FullName}/{kind};"));
        await File.WriteAllTextAsync(
            Path.Combine(folder.FullName, "nginx.conf"),
            $"daemon off; {(Environment.IsPrivilegedProcess ? "user root;" : "")} worker_processes 1; pid {folder.FullName}/pid; error_log stderr; events {{}}\nhttp {{ access_log off; {temporary} include {folder.FullName}/site.conf; }}\n");
        process = Process.Start(new ProcessStartInfo(Executable!) { ArgumentList = { "-e", "stderr", "-p", folder.FullName, "-c", Path.Combine(folder.FullName, "nginx.conf") }, RedirectStandardError = true })!;
        var said = process.StandardError.ReadToEndAsync();
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(20));
        while (true)
        {
            Assert.False(process.HasExited, process.HasExited ? await said : "");
            try
            {
                using var socket = new Socket(SocketType.Stream, ProtocolType.Tcp);
                await socket.ConnectAsync(IPAddress.Loopback, Port, patience.Token);
                return;
            }
            catch (SocketException)
            {
                await Task.Delay(50, patience.Token);
            }
        }
    }

    void WriteCertificate()
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        using var certificate = new CertificateRequest($"CN={Name}", key, HashAlgorithmName.SHA256).CreateSelfSigned(TimeProvider.System.GetUtcNow().AddDays(-1), TimeProvider.System.GetUtcNow().AddDays(1));
        File.WriteAllText(Path.Combine(folder.FullName, "fullchain.pem"), certificate.ExportCertificatePem());
        File.WriteAllText(Path.Combine(folder.FullName, "privkey.pem"), key.ExportPkcs8PrivateKeyPem());
    }

    static string Root()
    {
        var at = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(at.FullName, "CookAlong.sln")))
        {
            at = at.Parent ?? throw new InvalidOperationException("no CookAlong.sln above the tests");
        }

        return at.FullName;
    }

    // Not every machine has IPv6.
    [GeneratedRegex(@"^\s*listen \[::\].*\n", RegexOptions.Multiline)]
    private static partial Regex NotHere();

    [GeneratedRegex(@"^\s*ssl_.*\n", RegexOptions.Multiline)]
    private static partial Regex Tls();
}
