using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;
using System.Net.WebSockets;
using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CookAlong.BrowserTests;

/// <summary>The real server behind a real nginx with the example configuration: at the root and under a path, believed and not.</summary>
[Collection(Browsers.Name)]
public sealed partial class ProxyTests(Chromium chromium)
{
    const string Password = "a long night before midwinter";

    static readonly CancellationToken Stop = TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("")]
    [InlineData("/kitchen")]
    [InlineData("/home/kitchen")]
    public async Task Through_a_proxy_on_this_machine_everything_is_https_and_below_its_path(string path)
    {
        await using var server = await KitchenServer.StartAsync(["--hosts", Nginx.Name, "--base-path", path]);
        await using var nginx = await Nginx.StartAsync(new Uri(server.Url).Authority, path);
        var cookies = new CookieContainer();
        using var client = nginx.Client(cookies);

        using (var front = await client.GetAsync(path + "/", Stop))
        {
            Assert.Equal(path + "/meals", front.Headers.Location?.OriginalString);
        }

        using (var shut = await GetAsync(client, path + "/meals"))
        {
            Assert.Equal($"https://{Nginx.Name}:{nginx.Port}{path}/sign-in?returnUrl={Uri.EscapeDataString(path + "/meals")}", shut.Headers.Location?.OriginalString);
        }

        using (var made = await PostAsync(client, path + "/first-start", new() { ["secret"] = server.FirstStart.Split('#')[1], ["name"] = "Maren", ["password"] = Password }))
        {
            Assert.Equal(path + "/meals", made.Headers.Location?.OriginalString);
            var session = Assert.Single(made.Headers.GetValues("Set-Cookie"), set => set.Contains("cookalong=", StringComparison.Ordinal));
            Assert.StartsWith(path.Length == 0 ? "__Host-cookalong=" : "__Secure-cookalong=", session, StringComparison.Ordinal);
            Assert.Contains($"; path={(path.Length == 0 ? "/" : path)};", session, StringComparison.Ordinal);
            Assert.Contains("; secure;", session, StringComparison.Ordinal);
            Assert.Contains("; httponly", session, StringComparison.Ordinal);
        }

        using (var back = await PostAsync(client, path + "/sign-in", new() { ["name"] = "Maren", ["password"] = Password, ["returnUrl"] = path + "/settings" }))
        {
            Assert.Equal(path + "/settings", back.Headers.Location?.OriginalString);
        }

        using var page = await GetAsync(client, path + "/meals");
        Assert.Equal(HttpStatusCode.OK, page.StatusCode);
        Assert.Contains("max-age", Assert.Single(page.Headers.GetValues("Strict-Transport-Security")), StringComparison.Ordinal);
        var html = await page.Content.ReadAsStringAsync(Stop);
        Assert.Contains($"<base href=\"{path}/\"", html, StringComparison.Ordinal);
        await EveryFileIsThereAsync(client, html, path);
        await EveryFileIsThereAsync(client, await client.GetStringAsync(path + "/join", Stop), path);
        await EveryFileIsThereAsync(client, """<a href="kitchen-worker.js"><a href="manifest.webmanifest"><a href="js/live.js"><a href="js/root.js">""", path);

        using (var negotiated = await client.SendAsync(Request(HttpMethod.Post, path + "/_blazor/negotiate?negotiateVersion=1", client.BaseAddress!.GetLeftPart(UriPartial.Authority)), Stop))
        {
            Assert.Equal(HttpStatusCode.OK, negotiated.StatusCode);
        }

        Assert.Equal("{}\u001e", await ShakeHandsAsync(nginx, cookies, path, client.BaseAddress.GetLeftPart(UriPartial.Authority)));
        await Assert.ThrowsAsync<WebSocketException>(() => ShakeHandsAsync(nginx, cookies, path, "https://elsewhere.example"));
    }

    [Fact]
    public async Task Plain_http_is_sent_to_https()
    {
        await using var nginx = await Nginx.StartAsync("127.0.0.1:9", "");
        using var client = nginx.Client();

        using var answer = await client.GetAsync(new Uri($"http://{Nginx.Name}:{nginx.PlainPort}/join?a=b"), Stop);

        Assert.Equal(HttpStatusCode.MovedPermanently, answer.StatusCode);
        Assert.Equal($"https://{Nginx.Name}/join?a=b", answer.Headers.Location?.OriginalString);
    }

    /// <summary>Through this machine's own address in the network the proxy is a stranger.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task A_proxy_elsewhere_is_believed_when_it_was_named(bool isNamed)
    {
        var elsewhere = NetworkInterface.GetAllNetworkInterfaces().Where(one => one.OperationalStatus is OperationalStatus.Up or OperationalStatus.Unknown)
            .SelectMany(one => one.GetIPProperties().UnicastAddresses).Select(one => one.Address).FirstOrDefault(one => one.AddressFamily == AddressFamily.InterNetwork && !IPAddress.IsLoopback(one));
        Assert.SkipWhen(elsewhere is null, "This machine has no address but loopback.");
        await using var server = await KitchenServer.StartAsync(["--hosts", Nginx.Name, .. isNamed ? new[] { "--proxies", elsewhere!.ToString() } : []], everywhere: true);
        await using var nginx = await Nginx.StartAsync($"{elsewhere}:{new Uri(server.Url).Port}", "");
        using var client = nginx.Client();

        // What a caller says of itself never gets through.
        client.DefaultRequestHeaders.Add("X-Forwarded-For", "198.51.100.9");
        using var refused = await PostAsync(client, "/sign-in", new() { ["name"] = "Maren", ["password"] = "not the one" });

        Assert.Equal(HttpStatusCode.Unauthorized, refused.StatusCode);
        Assert.Contains(isNamed ? "__Host-cookalong-forms=" : "cookalong-forms=", string.Join(' ', lastSet), StringComparison.Ordinal);
        Assert.Equal(isNamed, lastSet.Any(set => set.Contains("; secure", StringComparison.Ordinal)));
        Assert.Contains(server.Log, line => line.Contains($"A sign-in from {(isNamed ? "127.0.0.1" : elsewhere!.ToString())} was refused", StringComparison.Ordinal));
        using var shut = await GetAsync(client, "/meals");
        Assert.Equal(isNamed ? "https" : "http", shut.Headers.Location?.Scheme);
    }

    [Theory]
    [InlineData("")]
    [InlineData("/kitchen")]
    public async Task A_meal_is_planned_and_cooked_through_a_proxy(string path)
    {
        await using var server = await KitchenServer.StartAsync(["--base-path", path]);
        await using var nginx = await Nginx.StartAsync(new Uri(server.Url).Authority, path, endsTls: false);
        await using var screen = await chromium.OpenAsync("proxy", ScreenSize.Tablet, $"http://localhost:{nginx.Port}");
        var page = screen.Page;
        await screen.GoToAsync($"{path}/first-start#{server.FirstStart.Split('#')[1]}");
        await page.GetByLabel("Your name").FillAsync("Maren");
        await page.GetByLabel("A password").FillAsync(Password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Make my kitchen" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Meals", Level = 1 })).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Dishes", Exact = true }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Dishes", Level = 1 })).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Meals", Exact = true }).ClickAsync();

        await Household.StartAsync(screen, SoupForSix.Json("Soup behind a proxy", TimeProvider.System.GetUtcNow()));

        Assert.StartsWith(path + "/cook/", new Uri(page.Url).AbsolutePath, StringComparison.Ordinal);
        await Expect(page.Locator("#card-knead")).ToBeVisibleAsync();
        await page.Locator("#card-knead [data-tap]:visible").First.ClickAsync();
        await Expect(page.Locator("#card-knead [data-waiting]")).ToHaveCountAsync(0);
        await screen.HoldAsync("navigator.serviceWorker.controller && caches.match(location.pathname)");
        Assert.Equal(
            $"http://localhost:{nginx.Port}{path}/cook/",
            await page.EvaluateAsync<string>("navigator.serviceWorker.ready.then((one) => one.scope)"));
        var links = await page.EvaluateAsync<string[]>("[...document.querySelectorAll('a[href], form[action]')].map((one) => new URL(one.href ?? one.action, location).pathname)");
        Assert.NotEmpty(links);
        Assert.All(links, link => Assert.StartsWith(path + "/", link, StringComparison.Ordinal));
        await screen.ShouldBeCleanAsync();
    }

    string[] lastSet = [];

    static HttpRequestMessage Request(HttpMethod method, string path, string? origin = null)
    {
        var request = new HttpRequestMessage(method, path);
        request.Headers.Add("Accept", "text/html");
        if (origin is not null)
        {
            request.Headers.Add("Origin", origin);
        }

        return request;
    }

    static async Task<HttpResponseMessage> GetAsync(HttpClient client, string path) => await client.SendAsync(Request(HttpMethod.Get, path), Stop);

    /// <summary>Opens the form for its token, then sends it as a browser would.</summary>
    async Task<HttpResponseMessage> PostAsync(HttpClient client, string path, Dictionary<string, string> fields)
    {
        using var form = await GetAsync(client, path);
        lastSet = form.Headers.TryGetValues("Set-Cookie", out var set) ? [.. set] : [];
        fields["__RequestVerificationToken"] = Token().Match(await form.Content.ReadAsStringAsync(Stop)).Groups[1].Value;
        var request = Request(HttpMethod.Post, path, client.BaseAddress!.GetLeftPart(UriPartial.Authority));
        request.Content = new FormUrlEncodedContent(fields);
        return await client.SendAsync(request, Stop);
    }

    static async Task EveryFileIsThereAsync(HttpClient client, string html, string path)
    {
        var files = File().Matches(html).Select(match => match.Groups[1].Value).Where(file => file.Contains('.', StringComparison.Ordinal)).ToArray();
        Assert.NotEmpty(files);
        foreach (var file in files)
        {
            using var answer = await client.GetAsync(new Uri(new Uri(client.BaseAddress!, path + "/"), file), Stop);
            Assert.True(answer.StatusCode == HttpStatusCode.OK, $"{file}: {answer.StatusCode}");
        }
    }

    static async Task<string> ShakeHandsAsync(Nginx nginx, CookieContainer cookies, string path, string origin)
    {
        using var client = nginx.Client(cookies);
        using var socket = new ClientWebSocket();
        socket.Options.SetRequestHeader("Origin", origin);
        await socket.ConnectAsync(new Uri($"wss://{Nginx.Name}:{nginx.Port}{path}/hubs/live"), client, Stop);
        await socket.SendAsync(Encoding.UTF8.GetBytes("{\"protocol\":\"json\",\"version\":1}\u001e"), WebSocketMessageType.Text, endOfMessage: true, Stop);
        var buffer = new byte[256];
        var answer = await socket.ReceiveAsync(buffer, Stop);
        return Encoding.UTF8.GetString(buffer, 0, answer.Count);
    }

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex Token();

    [GeneratedRegex("(?:href|src)=\"([^\"#]+)\"")]
    private static partial Regex File();
}
