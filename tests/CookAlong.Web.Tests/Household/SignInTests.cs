using System.Net;
using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Household;

namespace CookAlong.Web.Tests.Household;

public sealed class SignInTests
{
    static readonly Dictionary<string, string> Right = new() { ["name"] = AppFactory.HostName, ["password"] = AppFactory.HostPassword };

    [Fact]
    public async Task A_host_signs_in_with_name_and_password()
    {
        await using var app = new AppFactory();
        await app.HostAsync();
        var browser = app.NewBrowser();

        using var answer = await browser.PostFormAsync("/sign-in", Right);

        Assert.Equal("/", answer.Headers.Location?.OriginalString);
        Assert.Contains("cookalong=", browser.Cookies.Header, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Rowan", "seven winters and a duck")]
    [InlineData("Nobody", "seven winters and a goose")]
    public async Task A_wrong_name_and_a_wrong_password_get_the_same_answer(string name, string password)
    {
        await using var app = new AppFactory();
        await app.HostAsync();
        var browser = app.NewBrowser();

        using var answer = await browser.PostFormAsync("/sign-in", new() { ["name"] = name, ["password"] = password });

        Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
        Assert.Contains("do not belong together", await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.DoesNotContain("cookalong=", browser.Cookies.Header, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Guessing_closes_the_door_for_a_while_even_to_the_right_password()
    {
        await using var app = new AppFactory();
        await app.HostAsync();
        var browser = app.NewBrowser();
        for (var i = 0; i < 6; i++)
        {
            using var wrong = await browser.PostFormAsync("/sign-in", new() { ["name"] = AppFactory.HostName, ["password"] = $"guess number {i}" });
        }

        using var closed = await browser.PostFormAsync("/sign-in", Right);
        app.Clock.Advance(TimeSpan.FromSeconds(2));
        using var open = await browser.PostFormAsync("/sign-in", Right);

        Assert.Equal(HttpStatusCode.TooManyRequests, closed.StatusCode);
        Assert.Equal(HttpStatusCode.Redirect, open.StatusCode);
    }

    [Theory]
    [InlineData("/meals", "/meals")]
    [InlineData("//elsewhere.example", "/")]
    [InlineData("https://elsewhere.example/", "/")]
    [InlineData("/\\elsewhere.example", "/")]
    public async Task Signing_in_leads_back_to_pages_of_this_server_only(string asked, string goesTo)
    {
        await using var app = new AppFactory();
        await app.HostAsync();

        using var answer = await app.NewBrowser().PostFormAsync("/sign-in", new(Right) { ["returnUrl"] = asked });

        Assert.Equal(goesTo, answer.Headers.Location?.OriginalString);
    }

    [Fact]
    public async Task Signing_out_ends_the_session_on_the_server_too()
    {
        await using var app = new AppFactory();
        var browser = await app.HostAsync();
        var stolen = browser.Cookies.Header;

        using var answer = await browser.PostFormAsync("/sign-out", [], page: "/sign-in");

        Assert.Equal("/sign-in", answer.Headers.Location?.OriginalString);
        Assert.False(await IsSignedInAsync(app, stolen));
    }

    [Fact]
    public async Task A_session_that_was_ended_is_out_at_its_next_request()
    {
        await using var app = new AppFactory();
        var browser = await app.HostAsync();
        Assert.True(await IsSignedInAsync(app, browser.Cookies.Header));
        await using var db = app.NewDb();

        await app.Get<Sessions>().EndOfAsync(new PersonId(db.Hosts.Single().Id), run: null);

        Assert.False(await IsSignedInAsync(app, browser.Cookies.Header));
    }

    [Fact]
    public async Task A_session_has_a_limit_however_much_it_is_used()
    {
        await using var app = new AppFactory();
        var browser = await app.HostAsync();
        for (var used = TimeSpan.Zero; used < Sessions.HostLimit; used += TimeSpan.FromDays(15))
        {
            Assert.True(await IsSignedInAsync(app, browser.Cookies.Header));
            app.Clock.Leap(TimeSpan.FromDays(15));
        }

        Assert.False(await IsSignedInAsync(app, browser.Cookies.Header));
    }

    [Fact]
    public async Task A_session_that_nobody_uses_for_a_month_is_out_and_stands_on_no_page()
    {
        await using var app = new AppFactory();
        var browser = await app.HostAsync();
        await using var db = app.NewDb();
        var host = new PersonId(db.Hosts.Single().Id);

        app.Clock.Leap(Sessions.HostIdle - TimeSpan.FromMinutes(1));
        var before = await IsSignedInAsync(app, browser.Cookies.Header);
        app.Clock.Leap(Sessions.HostIdle);

        Assert.True(before);
        Assert.Empty(await app.Get<Sessions>().OfAsync(host, TestContext.Current.CancellationToken));
        Assert.False(await IsSignedInAsync(app, browser.Cookies.Header));
    }

    [Fact]
    public async Task A_page_held_open_is_use_and_is_written_down_no_oftener_than_every_five_minutes()
    {
        await using var app = new AppFactory();
        await app.HostAsync();
        await using var db = app.NewDb();
        var session = db.Sessions.Select(one => one.Id).Single();
        var seen = new HashSet<long?>();
        for (var second = 0; second < 600; second += 4)
        {
            app.Clock.Advance(TimeSpan.FromSeconds(4));
            Assert.Empty(await app.Get<Sessions>().GoneAsync([session], TestContext.Current.CancellationToken));
            seen.Add(db.Sessions.Select(one => one.LastSeenAt).Single());
        }

        Assert.Equal(3, seen.Count);
        app.Clock.Leap(Sessions.HostIdle);
        Assert.Equal([session], await app.Get<Sessions>().GoneAsync([session], TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task Signing_in_again_ends_the_session_the_browser_had()
    {
        await using var app = new AppFactory();
        var browser = await app.HostAsync();
        var first = browser.Cookies.Header;

        using var answer = await browser.PostFormAsync("/sign-in", Right);

        Assert.False(await IsSignedInAsync(app, first));
        Assert.True(await IsSignedInAsync(app, browser.Cookies.Header));
    }

    [Fact]
    public async Task The_session_cookie_is_kept_from_scripts_and_from_other_sites()
    {
        await using var app = new AppFactory();
        var browser = await app.HostAsync();

        var cookie = Assert.Single(browser.Cookies.LastSet, set => set.StartsWith("cookalong=", StringComparison.Ordinal));
        Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("samesite=lax", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("secure", cookie, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Over_https_the_session_cookie_is_bound_to_the_host()
    {
        await using var app = new AppFactory { Address = new Uri("https://localhost") };
        var browser = await app.HostAsync();

        var cookie = Assert.Single(browser.Cookies.LastSet, set => set.StartsWith("__Host-cookalong=", StringComparison.Ordinal));
        Assert.Contains("secure", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("path=/;", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("domain=", cookie, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task A_form_without_its_token_is_refused()
    {
        await using var app = new AppFactory();
        await app.HostAsync();

        using var answer = await app.NewBrowser().PostAsync("/sign-in", Right);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
    }

    // A protected page sends those it does not know to the sign-in page.
    static async Task<bool> IsSignedInAsync(AppFactory app, string cookies)
    {
        using var client = app.CreateDefaultClient();
        client.DefaultRequestHeaders.Add("Cookie", cookies);
        using var answer = await client.GetAsync("/meals", TestContext.Current.CancellationToken);
        return answer.StatusCode == HttpStatusCode.OK;
    }
}
