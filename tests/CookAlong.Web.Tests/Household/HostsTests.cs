using System.Net;
using System.Text.RegularExpressions;
using CookAlong.Web.Features.Household.Hosts;

namespace CookAlong.Web.Tests.Household;

public sealed partial class HostsTests
{
    const string Password = "nine kettles on a cold morning";

    [Fact]
    public async Task A_host_invites_another_who_is_one_at_once()
    {
        await using var app = new AppFactory();
        var rowan = await app.HostAsync();
        var linden = app.NewBrowser();

        using var answer = await ComeAsync(linden, await InviteAsync(rowan), "Linden");

        Assert.Equal("/meals", answer.Headers.Location?.OriginalString);
        Assert.Contains("Linden (you)", await linden.ReadAsync("/account"), StringComparison.Ordinal);
        Assert.Contains("Linden", await rowan.ReadAsync("/account"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_invitation_is_for_one()
    {
        await using var app = new AppFactory();
        var secret = await InviteAsync(await app.HostAsync());
        using var first = await ComeAsync(app.NewBrowser(), secret, "Linden");

        using var second = await ComeAsync(app.NewBrowser(), secret, "Hazel");

        Assert.Equal(HttpStatusCode.Forbidden, second.StatusCode);
    }

    [Fact]
    public async Task An_invitation_is_for_a_day_and_the_latest_one_counts()
    {
        await using var app = new AppFactory();
        var rowan = await app.HostAsync();
        var before = await InviteAsync(rowan);
        var secret = await InviteAsync(rowan);

        using var replaced = await ComeAsync(app.NewBrowser(), before, "Linden");
        app.Clock.Leap(HostInvitations.GoodFor);
        using var late = await ComeAsync(app.NewBrowser(), secret, "Linden");

        Assert.Equal(HttpStatusCode.Forbidden, replaced.StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, late.StatusCode);
    }

    [Fact]
    public async Task A_weak_password_or_a_name_that_is_taken_does_not_use_it_up()
    {
        await using var app = new AppFactory();
        var secret = await InviteAsync(await app.HostAsync());

        using var weak = await ComeAsync(app.NewBrowser(), secret, "Linden", "short");
        using var taken = await ComeAsync(app.NewBrowser(), secret, AppFactory.HostName);
        using var good = await ComeAsync(app.NewBrowser(), secret, "Linden");

        Assert.Equal(HttpStatusCode.BadRequest, weak.StatusCode);
        Assert.Equal(HttpStatusCode.BadRequest, taken.StatusCode);
        Assert.Equal(HttpStatusCode.Redirect, good.StatusCode);
    }

    [Fact]
    public async Task A_removed_host_is_out_everywhere_and_cannot_come_back()
    {
        await using var app = new AppFactory();
        var (rowan, linden) = (await app.HostAsync(), app.NewBrowser());
        using var _ = await ComeAsync(linden, await InviteAsync(rowan), "Linden");
        await using var db = app.NewDb();
        var id = db.Hosts.Single(host => host.Name == "Linden").Id;

        using var answer = await RemoveAsync(rowan, id);
        using var again = await linden.GetAsync("/meals");
        using var signIn = await app.NewBrowser().PostFormAsync("/sign-in", new() { ["name"] = "Linden", ["password"] = Password });

        Assert.Equal("/account?done=host", answer.Headers.Location?.OriginalString);
        Assert.Contains("/sign-in", again.Headers.Location?.OriginalString, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Unauthorized, signIn.StatusCode);
    }

    [Fact]
    public async Task The_last_host_stays()
    {
        await using var app = new AppFactory();
        var rowan = await app.HostAsync();
        await using var db = app.NewDb();

        using var answer = await RemoveAsync(rowan, db.Hosts.Single().Id);

        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        Assert.Contains("last host cannot be removed", await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Single(db.Hosts);
    }

    static Task<HttpResponseMessage> RemoveAsync(Browser host, Guid id) =>
        host.PostFormAsync("/account/hosts/remove", new() { ["id"] = id.ToString() }, page: "/account");

    static Task<HttpResponseMessage> ComeAsync(Browser browser, string secret, string name, string password = Password) =>
        browser.PostFormAsync("/new-host", new() { ["secret"] = secret, ["name"] = name, ["password"] = password });

    internal static async Task<string> InviteAsync(Browser host)
    {
        using var answer = await host.PostFormAsync("/account/hosts/invite", [], page: "/account");
        return Secret().Match(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)).Groups[1].Value;
    }

    [GeneratedRegex("http://localhost/new-host#([A-Za-z0-9_-]{22})<")]
    private static partial Regex Secret();
}
