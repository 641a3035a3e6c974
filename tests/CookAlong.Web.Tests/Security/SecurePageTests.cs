using System.Net;
using System.Security.Cryptography.X509Certificates;
using System.Xml.Linq;
using CookAlong.Web.Cli;
using CookAlong.Web.Features.Secure;
using CookAlong.Web.Security;

namespace CookAlong.Web.Tests.Security;

public sealed class SecurePageTests
{
    static readonly CancellationToken Stop = TestContext.Current.CancellationToken;

    static async Task<AppFactory> WithAuthorityAsync()
    {
        var app = new AppFactory();
        HttpsVerb.On(new HouseSettings(app.DataFolder, HouseSettings.DefaultUrls, [], []), TimeProvider.System, TextWriter.Null);
        await app.NewBrowser().ReadAsync("/health/live");
        return app;
    }

    [Fact]
    public async Task Without_an_authority_the_page_says_what_is_off_and_how_to_turn_it_on()
    {
        await using var app = new AppFactory();

        var page = await app.NewBrowser().ReadAsync("/secure");

        Assert.Contains("the screen that stays on by itself", page, StringComparison.Ordinal);
        Assert.Contains("https on", page, StringComparison.Ordinal);
        using var none = await app.NewBrowser().GetAsync("/secure/authority.crt");
        Assert.Equal(HttpStatusCode.NotFound, none.StatusCode);
    }

    [Fact]
    public async Task The_log_says_at_the_start_what_plain_http_leaves_out()
    {
        await using var app = new AppFactory();
        await app.NewBrowser().ReadAsync("/health/live");

        Assert.Contains(app.Log, line => line.Contains("Plain HTTP", StringComparison.Ordinal) && line.Contains("'https on'", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_device_gets_the_authority_in_the_two_forms_that_systems_install()
    {
        await using var app = await WithAuthorityAsync();
        var authority = app.Get<HomeHttps>().Authority!;

        using var crt = await app.NewBrowser().GetAsync("/secure/authority.crt");
        using var profile = await app.NewBrowser().GetAsync("/secure/authority.mobileconfig");

        Assert.Equal("application/x-x509-ca-cert", crt.Content.Headers.ContentType!.MediaType);
        using var read = X509CertificateLoader.LoadCertificate(await crt.Content.ReadAsByteArrayAsync(Stop));
        Assert.Equal(authority.Public, read.RawData);
        Assert.False(read.HasPrivateKey);
        Assert.Equal("application/x-apple-aspen-config", profile.Content.Headers.ContentType!.MediaType);
        var plist = XDocument.Parse(await profile.Content.ReadAsStringAsync(Stop));
        Assert.Equal(Convert.ToBase64String(authority.Public), Assert.Single(plist.Descendants("data")).Value);
        Assert.Contains("com.apple.security.root", plist.Descendants("string").Select(one => one.Value));
        Assert.Equal(2, plist.Descendants("key").Where(key => key.Value == "PayloadUUID").Select(key => Guid.Parse(((XElement)key.NextNode!).Value)).Distinct().Count());
    }

    [Fact]
    public async Task The_page_shows_the_fingerprint_and_may_ask_the_same_host_over_https_and_no_other()
    {
        await using var app = await WithAuthorityAsync();

        using var answer = await app.NewBrowser().GetAsync("/secure");
        using var trusted = await app.NewBrowser().GetAsync("/secure/trusted");

        Assert.Contains(app.Get<HomeHttps>().Authority!.Fingerprint, await answer.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        var policy = Assert.Single(answer.Headers.GetValues("Content-Security-Policy"));
        Assert.Contains("connect-src 'self' ws://localhost wss://localhost https://localhost:5443;", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        Assert.Equal("*", Assert.Single(trusted.Headers.GetValues("Access-Control-Allow-Origin")));
        Assert.False(answer.Headers.Contains("Access-Control-Allow-Origin"));
    }

    [Theory]
    [InlineData("Mozilla/5.0 (iPhone; CPU iPhone OS 18_0 like Mac OS X)", DeviceKind.IPhone)]
    [InlineData("Mozilla/5.0 (Linux; Android 15)", DeviceKind.Android)]
    [InlineData("Mozilla/5.0 (Windows NT 10.0; Win64; x64)", DeviceKind.Windows)]
    [InlineData("Mozilla/5.0 (Macintosh; Intel Mac OS X 10_15_7)", DeviceKind.Mac)]
    [InlineData("Mozilla/5.0 (X11; Linux x86_64)", DeviceKind.Linux)]
    [InlineData("", null)]
    public void The_steps_of_the_device_that_asks_stand_open(string agent, DeviceKind? kind) => Assert.Equal(kind, Devices.Of(agent));

    [Theory]
    [InlineData("http://0.0.0.0:5080", "http://0.0.0.0:5080;https://0.0.0.0:5443")]
    [InlineData("http://localhost:5080;http://[::]:80", "http://localhost:5080;http://[::]:80;https://localhost:5443;https://[::]:5443")]
    [InlineData("http://*:1;http://*:2", "http://*:1;http://*:2;https://*:5443")]
    public async Task Beside_every_plain_address_there_is_one_over_https(string urls, string addresses)
    {
        await using var app = await WithAuthorityAsync();

        Assert.Equal(addresses, HomeHttpsFeature.Addresses(new HouseSettings(app.DataFolder, urls, [], [])));
        Assert.Equal(urls, HomeHttpsFeature.Addresses(new HouseSettings(Path.Combine(app.DataFolder, "elsewhere"), urls, [], [])));
    }
}
