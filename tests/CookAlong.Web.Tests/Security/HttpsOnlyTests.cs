using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using CookAlong.Web.Cli;
using CookAlong.Web.Features.Health;
using CookAlong.Web.Security;

namespace CookAlong.Web.Tests.Security;

public sealed class HttpsOnlyTests
{
    static readonly CancellationToken Stop = TestContext.Current.CancellationToken;

    static AppFactory HttpsOnly()
    {
        var app = new AppFactory { Address = new Uri("http://larder.local:5080"), Settings = { ["https-only"] = "yes" } };
        HttpsVerb.On(new HouseSettings(app.DataFolder, HouseSettings.DefaultUrls, [], []), TimeProvider.System, TextWriter.Null);
        return app;
    }

    [Theory]
    [InlineData("/sign-in", "https://larder.local:5443/sign-in")]
    [InlineData("/meals?a=b%20c", "https://larder.local:5443/meals?a=b%20c")]
    [InlineData("/", "https://larder.local:5443/")]
    public async Task A_page_opened_by_plain_http_leads_to_the_same_one_over_https(string page, string leadsTo)
    {
        await using var app = HttpsOnly();

        using var answer = await app.NewBrowser().GetAsync(page);

        Assert.Equal(HttpStatusCode.TemporaryRedirect, answer.StatusCode);
        Assert.Equal(leadsTo, answer.Headers.Location?.OriginalString);
        Assert.False(answer.Headers.Contains("Set-Cookie"));
    }

    [Theory]
    [InlineData("/secure")]
    [InlineData("/secure/authority.crt")]
    [InlineData("/secure/authority.mobileconfig")]
    [InlineData("/css/forms.css")]
    [InlineData("/js/secure.js")]
    [InlineData("/health/live")]
    [InlineData("/health/ready")]
    public async Task What_brings_a_device_to_https_stays_on_plain_http(string path)
    {
        await using var app = HttpsOnly();

        using var answer = await app.NewBrowser().GetAsync(path);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
    }

    [Fact]
    public async Task What_was_sent_in_the_clear_is_refused_and_not_led_on()
    {
        await using var app = HttpsOnly();
        using var client = app.CreateDefaultClient(app.Address);
        using var form = await client.PostAsync("/sign-in", new FormUrlEncodedContent([new("name", "x"), new("password", "y")]), Stop);
        using var script = await client.GetAsync("/cook/00000001-0002-0003-0000-000000000000/calls", Stop);
        using var program = await client.PostAsJsonAsync("/api/v1/meals", new { }, Stop);

        Assert.Equal((HttpStatusCode.Forbidden, HttpStatusCode.Forbidden, HttpStatusCode.Forbidden), (form.StatusCode, script.StatusCode, program.StatusCode));
        Assert.Contains("HTTPS only, on port 5443", await form.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        Assert.EndsWith("#https-only", (await program.Content.ReadFromJsonAsync<JsonElement>(Stop)).GetProperty("type").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_socket_in_the_clear_does_not_open()
    {
        await using var app = HttpsOnly();
        var refused = await Assert.ThrowsAsync<InvalidOperationException>(() => app.Server.CreateWebSocketClient().ConnectAsync(new Uri("ws://localhost/hubs/live"), Stop));

        Assert.Contains("403", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Over_https_everything_is_as_ever_and_the_host_s_pages_say_so()
    {
        await using var app = HttpsOnly();
        app.Address = new Uri("https://larder.local:5443");
        var host = await app.HostAsync();

        Assert.Contains("answers nothing but the page that installs the authority", await host.ReadAsync("/server"), StringComparison.Ordinal);
        Assert.Contains(app.Log, line => line.Contains("Plain HTTP answers nothing else.", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Without_an_authority_the_server_does_not_start_and_says_what_comes_first()
    {
        await using var app = new AppFactory { Settings = { ["https-only"] = "yes" } };

        var failed = Assert.Throws<AuthorityException>(() => HomeHttpsFeature.AddHomeHttps(new Microsoft.Extensions.DependencyInjection.ServiceCollection(), new HouseSettings(app.DataFolder, "", [], []) { IsHttpsOnly = true }));

        Assert.Contains("'https on' first", failed.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_check_says_which_of_the_three_it_is() => Assert.Equal(
        [(Grade.Heed, "'https on' brings it."), (Grade.Heed, "--https-only yes"), (Grade.Well, "nothing but the page")],
        new[] { (HealthWords.Https(isOn: false, isOnly: false), "'https on' brings it."), (HealthWords.Https(isOn: true, isOnly: false), "--https-only yes"), (HealthWords.Https(isOn: true, isOnly: true), "nothing but the page") }
            .Where(one => one.Item1.Says.Contains(one.Item2, StringComparison.Ordinal)).Select(one => (one.Item1.Grade, one.Item2)));
}
