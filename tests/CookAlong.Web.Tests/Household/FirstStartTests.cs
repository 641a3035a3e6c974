using System.Net;

namespace CookAlong.Web.Tests.Household;

public sealed class FirstStartTests
{
    [Fact]
    public async Task The_secret_in_the_log_makes_the_host_account_and_signs_in()
    {
        await using var app = new AppFactory();
        var browser = app.NewBrowser();

        using var answer = await browser.PostFormAsync("/first-start", Fields(app.FirstStartSecret));

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Equal("/meals", answer.Headers.Location?.OriginalString);
        await using var db = app.NewDb();
        Assert.Equal(["Rowan"], db.Hosts.Select(host => host.Name));
    }

    [Fact]
    public async Task The_secret_has_128_bits_and_needs_no_escaping_in_an_address()
    {
        await using var app = new AppFactory();
        // 128 bits in base64url are 22 characters (RFC 4648, section 5).
        Assert.Matches("^[A-Za-z0-9_-]{22}$", app.FirstStartSecret);
    }

    [Fact]
    public async Task The_secret_works_once_only()
    {
        await using var app = new AppFactory();
        var secret = app.FirstStartSecret;
        var late = app.NewBrowser();
        await app.HostAsync();

        using var page = await late.GetAsync("/first-start");
        using var again = await late.PostFormAsync("/first-start", Fields(secret, "Intruder"), page: "/sign-in");

        Assert.Equal("/sign-in", page.Headers.Location?.OriginalString);
        Assert.Equal("/sign-in", again.Headers.Location?.OriginalString);
        await using var db = app.NewDb();
        Assert.DoesNotContain(db.Hosts, host => host.Name == "Intruder");
    }

    [Theory]
    [InlineData("")]
    [InlineData("AAAAAAAAAAAAAAAAAAAAAA")]
    public async Task A_wrong_secret_makes_no_account_and_is_told_in_words(string secret)
    {
        await using var app = new AppFactory();

        using var answer = await app.NewBrowser().PostFormAsync("/first-start", Fields(secret));

        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        Assert.Contains("not the one in the server", await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        await using var db = app.NewDb();
        Assert.Empty(db.Hosts);
    }

    [Fact]
    public async Task A_refused_password_leaves_the_secret_usable()
    {
        await using var app = new AppFactory();
        var browser = app.NewBrowser();

        using var weak = await browser.PostFormAsync("/first-start", Fields(app.FirstStartSecret, password: "12345678"));
        using var good = await browser.PostFormAsync("/first-start", Fields(app.FirstStartSecret));

        Assert.Equal(HttpStatusCode.BadRequest, weak.StatusCode);
        Assert.Equal(HttpStatusCode.Redirect, good.StatusCode);
    }

    static Dictionary<string, string> Fields(string secret, string name = AppFactory.HostName, string password = AppFactory.HostPassword) =>
        new() { ["secret"] = secret, ["name"] = name, ["password"] = password };
}
