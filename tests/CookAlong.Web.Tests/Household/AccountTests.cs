using System.Net;
using CookAlong.Web.Features.Household;

namespace CookAlong.Web.Tests.Household;

public sealed class AccountTests
{
    const string NewPassword = "nine kettles on a cold morning";

    [Fact]
    public async Task A_host_sees_where_they_are_signed_in()
    {
        await using var app = new AppFactory();
        var tablet = await app.HostAsync();
        app.Clock.Leap(TimeSpan.FromHours(2));
        var phone = await app.HostAsync();
        phone.Client.DefaultRequestHeaders.Add("User-Agent", "Mozilla/5.0 (X11; Linux x86_64; rv:140.0) Gecko/20100101 Firefox/140.0");
        await SignInAsync(phone);

        var page = await phone.ReadAsync("/account");

        Assert.Matches("<b>Firefox on Linux</b>\\s*<span class=\"this\">this one</span>", page);
        Assert.Contains("A device without a name", page, StringComparison.Ordinal);
        Assert.Contains("since Sunday 20 December 2026, 09:00", page, StringComparison.Ordinal);
        Assert.Contains("last seen", page, StringComparison.Ordinal);
        Assert.Contains("nobody uses for 30 days is signed out", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task One_device_is_signed_out_from_another()
    {
        await using var app = new AppFactory();
        var tablet = await app.HostAsync();
        await using var db = app.NewDb();
        var first = db.Sessions.Single().Id;
        var phone = await app.HostAsync();

        using var answer = await phone.PostFormAsync("/account/sessions/end", new() { ["id"] = first.ToString() }, page: "/account");

        Assert.Equal("/account?done=device", answer.Headers.Location?.OriginalString);
        Assert.False(await IsSignedInAsync(tablet));
        Assert.True(await IsSignedInAsync(phone));
    }

    [Fact]
    public async Task All_other_devices_are_signed_out_at_once()
    {
        await using var app = new AppFactory();
        var (tablet, laptop, phone) = (await app.HostAsync(), await app.HostAsync(), await app.HostAsync());

        using var answer = await phone.PostFormAsync("/account/sessions/end-others", [], page: "/account");

        Assert.False(await IsSignedInAsync(tablet));
        Assert.False(await IsSignedInAsync(laptop));
        Assert.True(await IsSignedInAsync(phone));
    }

    [Fact]
    public async Task A_changed_password_opens_and_the_old_one_does_not_and_other_devices_are_out()
    {
        await using var app = new AppFactory();
        var (tablet, phone) = (await app.HostAsync(), await app.HostAsync());

        using var answer = await ChangeAsync(phone, AppFactory.HostPassword, NewPassword);

        Assert.Equal("/account?done=password", answer.Headers.Location?.OriginalString);
        Assert.False(await IsSignedInAsync(tablet));
        Assert.True(await IsSignedInAsync(phone));
        using var old = await SignInAsync(app.NewBrowser());
        using var now = await SignInAsync(app.NewBrowser(), NewPassword);
        Assert.Equal(HttpStatusCode.Unauthorized, old.StatusCode);
        Assert.Equal(HttpStatusCode.Redirect, now.StatusCode);
    }

    [Theory]
    [InlineData("not the one", NewPassword, "is another")]
    [InlineData(AppFactory.HostPassword, "short", "at least 8")]
    [InlineData(AppFactory.HostPassword, "password123", "anybody would try")]
    public async Task A_password_is_not_changed_to_a_weak_one_or_by_somebody_else(string current, string next, string says)
    {
        await using var app = new AppFactory();
        var (tablet, phone) = (await app.HostAsync(), await app.HostAsync());

        using var answer = await ChangeAsync(phone, current, next);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains(says, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.True(await IsSignedInAsync(tablet));
    }

    [Fact]
    public async Task Guessing_the_password_on_the_page_closes_it_as_it_does_the_door()
    {
        await using var app = new AppFactory();
        var phone = await app.HostAsync();
        for (var i = 0; i < 6; i++)
        {
            using var wrong = await ChangeAsync(phone, $"guess number {i}", NewPassword);
        }

        using var answer = await ChangeAsync(phone, AppFactory.HostPassword, NewPassword);

        Assert.Equal(HttpStatusCode.TooManyRequests, answer.StatusCode);
    }

    [Fact]
    public async Task A_screen_that_has_stood_signed_in_changes_nothing_before_it_says_again_who_it_is()
    {
        await using var app = new AppFactory();
        var tablet = await app.HostAsync();
        using var early = await tablet.GetAsync("/account");
        app.Clock.Leap(Sessions.Fresh);

        var page = await tablet.ReadAsync("/account");
        using var answer = await tablet.PostFormAsync("/account/sessions/end-others", [], page: "/sign-in");
        using var script = await tablet.PostJsonAsync("/account/passkeys/question", new { });

        Assert.Contains("Sign in once more", page, StringComparison.Ordinal);
        Assert.DoesNotContain("name=\"current\"", page, StringComparison.Ordinal);
        Assert.Equal("/sign-in?returnUrl=%2Faccount", answer.Headers.Location?.OriginalString);
        Assert.Equal(HttpStatusCode.Forbidden, script.StatusCode);
        await SignInAsync(tablet);
        Assert.Contains("name=\"current\"", await tablet.ReadAsync("/account"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Nobody_ends_a_session_that_is_not_theirs()
    {
        await using var app = new AppFactory();
        var rowan = await app.HostAsync();
        var (linden, _) = await app.Get<Accounts>().CreateAsync("Linden", NewPassword, TestContext.Current.CancellationToken);
        var other = app.NewBrowser();
        using var _1 = await other.PostFormAsync("/sign-in", new() { ["name"] = "Linden", ["password"] = NewPassword });
        await using var db = app.NewDb();
        var theirs = db.Sessions.Single(one => one.Person == linden!.Id).Id;

        using var answer = await rowan.PostFormAsync("/account/sessions/end", new() { ["id"] = theirs.ToString() }, page: "/account");

        Assert.True(await IsSignedInAsync(other));
    }

    static Task<HttpResponseMessage> ChangeAsync(Browser browser, string current, string next) =>
        browser.PostFormAsync("/account/password", new() { ["current"] = current, ["next"] = next }, page: "/account");

    static Task<HttpResponseMessage> SignInAsync(Browser browser, string password = AppFactory.HostPassword) =>
        browser.PostFormAsync("/sign-in", new() { ["name"] = AppFactory.HostName, ["password"] = password });

    static async Task<bool> IsSignedInAsync(Browser browser)
    {
        using var answer = await browser.GetAsync("/account");
        return answer.StatusCode == HttpStatusCode.OK;
    }
}
