using System.Net;
using CookAlong.Web.Security;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Tests.Household;

public sealed class SecurityTests
{
    [Theory]
    [InlineData("/sign-in")]
    [InlineData("/first-start")]
    [InlineData("/no-such-page")]
    public async Task Pages_open_to_everybody_have_the_strict_content_policy(string path)
    {
        await using var app = new AppFactory();

        using var answer = await app.NewBrowser().GetAsync(path);

        var policy = Assert.Single(answer.Headers.GetValues("Content-Security-Policy"));
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        Assert.Contains("script-src 'self';", policy, StringComparison.Ordinal);
        Assert.Contains("style-src 'self';", policy, StringComparison.Ordinal);
        Assert.Contains("frame-ancestors 'none'", policy, StringComparison.Ordinal);
        Assert.Contains("base-uri 'none'", policy, StringComparison.Ordinal);
        Assert.Contains("connect-src 'self' ws://localhost wss://localhost", policy, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Planning_pages_may_style_inline_and_nothing_more()
    {
        await using var app = new AppFactory();
        var host = await app.HostAsync();

        using var answer = await host.GetAsync("/meals");

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var policy = Assert.Single(answer.Headers.GetValues("Content-Security-Policy"));
        Assert.Contains("style-src 'self' 'unsafe-inline'", policy, StringComparison.Ordinal);
        Assert.Contains("script-src 'self';", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe-eval", policy, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_answer_tells_browsers_to_keep_to_themselves()
    {
        await using var app = new AppFactory();

        using var answer = await app.NewBrowser().GetAsync("/sign-in");

        Assert.Equal("nosniff", Assert.Single(answer.Headers.GetValues("X-Content-Type-Options")));
        Assert.Equal("same-origin", Assert.Single(answer.Headers.GetValues("Referrer-Policy")));
        Assert.Equal("DENY", Assert.Single(answer.Headers.GetValues("X-Frame-Options")));
        Assert.Contains("camera=()", Assert.Single(answer.Headers.GetValues("Permissions-Policy")), StringComparison.Ordinal);
        Assert.True(answer.Headers.CacheControl?.NoStore);
        Assert.False(answer.Headers.Contains("Strict-Transport-Security"));
    }

    [Fact]
    public async Task Over_https_browsers_are_told_to_stay_there_by_names_of_the_world()
    {
        await using var app = new AppFactory { Address = new Uri("https://cook.example"), Settings = { ["hosts"] = "cook.example" } };

        using var answer = await app.NewBrowser().GetAsync("/sign-in");

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("max-age=31536000", Assert.Single(answer.Headers.GetValues("Strict-Transport-Security")));
    }

    [Fact]
    public async Task Names_beneath_are_told_only_where_the_household_says_that_they_are_its_own()
    {
        await using var app = new AppFactory { Address = new Uri("https://cook.example"), Settings = { ["hosts"] = "cook.example", ["hsts-subdomains"] = "yes" } };

        using var answer = await app.NewBrowser().GetAsync("/sign-in");

        Assert.Equal("max-age=31536000; includeSubDomains", Assert.Single(answer.Headers.GetValues("Strict-Transport-Security")));
    }

    [Fact]
    public async Task Within_the_home_https_stands_beside_plain_http()
    {
        await using var app = new AppFactory { Address = new Uri("https://larder.local") };
        using var answer = await app.NewBrowser().GetAsync("/sign-in");

        Assert.False(answer.Headers.Contains("Strict-Transport-Security"));
        Assert.Contains(answer.Headers.GetValues("Set-Cookie"), set => set.StartsWith("__Host-cookalong-forms=", StringComparison.Ordinal) && set.Contains("secure", StringComparison.Ordinal));

        app.Address = new Uri("http://larder.local");
        using var plain = await app.NewBrowser().GetAsync("/sign-in");
        Assert.Contains(plain.Headers.GetValues("Set-Cookie"), set => set.StartsWith("cookalong-forms=", StringComparison.Ordinal) && !set.Contains("secure", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("http://localhost", HttpStatusCode.BadRequest)] // let through, then refused for want of a token
    [InlineData("http://elsewhere.example", HttpStatusCode.Forbidden)]
    [InlineData("http://localhost:81", HttpStatusCode.Forbidden)]
    [InlineData("null", HttpStatusCode.Forbidden)]
    public async Task A_form_sent_from_another_site_is_refused(string origin, HttpStatusCode status)
    {
        await using var app = new AppFactory();
        using var client = app.CreateDefaultClient();
        using var request = new HttpRequestMessage(HttpMethod.Post, "/sign-in") { Content = new FormUrlEncodedContent([new("name", "x"), new("password", "y")]) };
        request.Headers.Add("Origin", origin);

        using var answer = await client.SendAsync(request, TestContext.Current.CancellationToken);

        Assert.Equal(status, answer.StatusCode);
    }

    [Fact]
    public async Task A_socket_opened_by_another_site_is_refused()
    {
        await using var app = new AppFactory();
        var sockets = app.Server.CreateWebSocketClient();
        sockets.ConfigureRequest = request => request.Headers.Origin = "http://elsewhere.example";

        var refused = await Assert.ThrowsAsync<InvalidOperationException>(
            () => sockets.ConnectAsync(new Uri("ws://localhost/hubs/live"), TestContext.Current.CancellationToken));

        Assert.Contains("403", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Too_large_a_body_is_refused_in_words()
    {
        await using var app = new AppFactory();

        using var answer = await app.NewBrowser().PostAsync("/sign-in", new() { ["name"] = new string('x', (int)RequestSize.Largest) });

        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
        Assert.Contains("takes at most 2 MB", await Text(answer), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_page_that_does_not_exist_says_so_in_words()
    {
        await using var app = new AppFactory();

        using var answer = await app.NewBrowser().GetAsync("/no-such-page");

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Contains("There is no such page", await Text(answer), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_failure_tells_the_log_everything_and_the_browser_nothing()
    {
        await using var app = new AppFactory();
        var browser = app.NewBrowser();
        using var before = await browser.GetAsync("/sign-in");
        await using (var db = app.NewDb())
        {
            await db.Database.ExecuteSqlRawAsync("DROP TABLE Hosts", TestContext.Current.CancellationToken);
        }

        using var answer = await browser.GetAsync("/sign-in");

        Assert.Equal(HttpStatusCode.InternalServerError, answer.StatusCode);
        var text = await Text(answer);
        Assert.Contains("Something went wrong on the server", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Sqlite", text, StringComparison.OrdinalIgnoreCase);
        Assert.Contains(app.Log, line => line.Contains("no such table", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("localhost", true)]
    [InlineData("192.168.1.20", true)]
    [InlineData("kitchen", true)]
    [InlineData("kitchen.local", true)]
    [InlineData("cook.home.arpa", true)]
    [InlineData("cook.example", true)]
    [InlineData("elsewhere.example", false)]
    [InlineData("local.elsewhere.example", false)]
    [InlineData("", false)]
    public void A_server_answers_to_the_names_of_its_home_and_those_it_was_given(string host, bool answers) =>
        Assert.Equal(answers, HostNames.Answers(host, ["cook.example"]));

    [Fact]
    public async Task A_request_by_another_name_is_refused_in_words()
    {
        await using var app = new AppFactory { Address = new Uri("http://elsewhere.example") };

        using var answer = await app.NewBrowser().GetAsync("/sign-in");

        Assert.Equal(HttpStatusCode.MisdirectedRequest, answer.StatusCode);
        Assert.Contains("--hosts", await Text(answer), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/health/live", "alive")]
    [InlineData("/health/ready", "ready")]
    public async Task A_healthy_server_says_so_and_no_more(string path, string says)
    {
        await using var app = new AppFactory();

        Assert.Equal(says, await app.NewBrowser().ReadAsync(path));
    }

    [Fact]
    public async Task A_server_whose_database_does_not_answer_is_alive_but_not_ready()
    {
        await using var app = new AppFactory();
        var browser = app.NewBrowser();
        await browser.ReadAsync("/health/live");
        await using (var db = app.NewDb())
        {
            await db.Database.ExecuteSqlRawAsync("DROP TABLE Hosts", TestContext.Current.CancellationToken);
        }

        using var live = await browser.GetAsync("/health/live");
        using var ready = await browser.GetAsync("/health/ready");

        Assert.Equal(HttpStatusCode.OK, live.StatusCode);
        Assert.Equal(HttpStatusCode.ServiceUnavailable, ready.StatusCode);
    }

    static Task<string> Text(HttpResponseMessage answer) => answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
}
