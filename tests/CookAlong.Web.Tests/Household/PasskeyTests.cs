using System.Net;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Household.Passkeys;

namespace CookAlong.Web.Tests.Household;

public sealed class PasskeyTests
{
    static readonly CancellationToken Stop = TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_passkey_that_was_added_signs_its_host_in()
    {
        await using var app = new AppFactory();
        using var device = new SoftPasskey();
        await AddAsync(await app.HostAsync(), device);
        var browser = app.NewBrowser();
        device.SignCount++;

        using var answer = await SignInAsync(browser, device, "/settings");

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("/settings", (await answer.Content.ReadFromJsonAsync<JsonNode>(Stop))!["goTo"]!.GetValue<string>());
        Assert.Contains("My phone", await browser.ReadAsync("/account"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_removed_passkey_does_not()
    {
        await using var app = new AppFactory();
        using var device = new SoftPasskey();
        var host = await app.HostAsync();
        await AddAsync(host, device);
        await using var db = app.NewDb();
        using var removed = await host.PostFormAsync("/account/passkeys/remove", new() { ["id"] = db.Set<PasskeyRow>().Single().Id.ToString() }, page: "/account");
        device.SignCount++;

        using var answer = await SignInAsync(app.NewBrowser(), device);

        Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
    }

    [Fact]
    public async Task A_question_is_answered_once()
    {
        await using var app = new AppFactory();
        using var device = new SoftPasskey();
        await AddAsync(await app.HostAsync(), device);
        var browser = app.NewBrowser();
        var question = await AskAsync(browser, "/sign-in/passkey/question");
        device.SignCount++;
        using var first = await PostAsync(browser, device.Sign(question));
        device.SignCount++;

        using var second = await PostAsync(app.NewBrowser(), device.Sign(question));

        Assert.Equal(HttpStatusCode.OK, first.StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, second.StatusCode);
    }

    [Fact]
    public async Task A_question_grows_old()
    {
        await using var app = new AppFactory();
        using var device = new SoftPasskey();
        await AddAsync(await app.HostAsync(), device);
        var browser = app.NewBrowser();
        var question = await AskAsync(browser, "/sign-in/passkey/question");
        device.SignCount++;
        app.Clock.Leap(PasskeyChallenges.GoodFor);

        using var answer = await PostAsync(browser, device.Sign(question));

        Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
    }

    [Theory]
    [InlineData("https://localhost.elsewhere.example")]
    [InlineData("http://elsewhere.example")]
    public async Task An_answer_given_to_another_site_is_refused(string origin)
    {
        await using var app = new AppFactory();
        using var device = new SoftPasskey();
        await AddAsync(await app.HostAsync(), device);
        device.SignCount++;
        device.Origin = origin;

        using var answer = await SignInAsync(app.NewBrowser(), device);

        Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
    }

    // W3C, Web Authentication Level 2, 6.1.1: a count that does not grow may be a copy's.
    [Theory]
    [InlineData(5, 5, HttpStatusCode.Unauthorized)]
    [InlineData(5, 4, HttpStatusCode.Unauthorized)]
    [InlineData(5, 6, HttpStatusCode.OK)]
    [InlineData(0, 0, HttpStatusCode.OK)]
    public async Task A_copied_passkey_is_known_by_its_count(uint before, uint now, HttpStatusCode status)
    {
        await using var app = new AppFactory();
        using var device = new SoftPasskey { SignCount = before };
        await AddAsync(await app.HostAsync(), device);
        device.SignCount = now;

        using var answer = await SignInAsync(app.NewBrowser(), device);

        Assert.Equal(status, answer.StatusCode);
    }

    [Fact]
    public async Task A_stranger_with_a_known_passkeys_id_is_refused()
    {
        await using var app = new AppFactory();
        using var device = new SoftPasskey();
        await AddAsync(await app.HostAsync(), device);
        using var stranger = new SoftPasskey { Id = device.Id, UserHandle = device.UserHandle, SignCount = 9 };

        using var answer = await SignInAsync(app.NewBrowser(), stranger);

        Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
    }

    [Fact]
    public async Task No_two_passkeys_have_the_same_id()
    {
        await using var app = new AppFactory();
        using var device = new SoftPasskey();
        var host = await app.HostAsync();
        await AddAsync(host, device);
        using var same = new SoftPasskey { Id = device.Id };

        var question = await AskAsync(host, "/account/passkeys/question");
        using var answer = await host.PostJsonAsync("/account/passkeys", new { name = "Again", credential = same.Make(question) });

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        await using var db = app.NewDb();
        Assert.Single(db.Set<PasskeyRow>());
    }

    [Fact]
    public async Task A_question_for_one_browser_is_not_answered_by_another()
    {
        await using var app = new AppFactory();
        using var device = new SoftPasskey();
        var (one, other) = (await app.HostAsync(), await app.HostAsync());

        var question = await AskAsync(one, "/account/passkeys/question");
        using var answer = await other.PostJsonAsync("/account/passkeys", new { name = "My phone", credential = device.Make(question) });
        using var signIn = await PostAsync(app.NewBrowser(), device.Sign(new JsonObject { ["challenge"] = question["challenge"]!.DeepClone(), ["rpId"] = "localhost" }));

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, signIn.StatusCode);
    }

    [Fact]
    public async Task Guessing_is_slowed_down_as_it_is_with_passwords()
    {
        await using var app = new AppFactory();
        using var device = new SoftPasskey();
        await AddAsync(await app.HostAsync(), device);
        using var stranger = new SoftPasskey { Id = device.Id, UserHandle = device.UserHandle, SignCount = 9 };
        for (var i = 0; i < 6; i++)
        {
            using var wrong = await SignInAsync(app.NewBrowser(), stranger);
        }

        device.SignCount++;
        using var answer = await SignInAsync(app.NewBrowser(), device);

        Assert.Equal(HttpStatusCode.TooManyRequests, answer.StatusCode);
    }

    [Fact]
    public async Task A_server_called_by_a_number_says_why_there_are_no_passkeys()
    {
        await using var app = new AppFactory { Address = new Uri("http://192.168.1.20") };

        using var answer = await app.NewBrowser().PostJsonAsync("/sign-in/passkey/question", new { });

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("need a name in the address", await answer.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
    }

    // Whatever is sent, the answer is a refusal and never a failure of the server.
    [Theory]
    [InlineData("{}")]
    [InlineData("""{"credential":null}""")]
    [InlineData("""{"credential":{}}""")]
    [InlineData("""{"credential":{"id":"AA","rawId":"AA","type":"public-key","response":{}}}""")]
    [InlineData("""{"name":"x","credential":{"id":"AA","rawId":"AA","type":"public-key","response":{"clientDataJSON":"AA","authenticatorData":"AA","signature":"AA","attestationObject":"AA"}}}""")]
    [InlineData("""{"name":"x","credential":{"id":"AA","rawId":"!!","type":"public-key","response":{"clientDataJSON":"e30","authenticatorData":"","signature":"","attestationObject":""}}}""")]
    [InlineData("""{"name":"x","credential":{"id":"AA","rawId":"AA","type":"odd","response":{"clientDataJSON":"W10","authenticatorData":"AA","signature":"AA","attestationObject":"AA"}}}""")]
    public async Task Rubbish_is_refused(string body)
    {
        await using var app = new AppFactory();
        var host = await app.HostAsync();
        foreach (var path in new[] { "/sign-in/passkey", "/account/passkeys" })
        {
            using var answer = await host.Client.PostAsync(path, new StringContent(body, System.Text.Encoding.UTF8, "application/json"), Stop);
            Assert.InRange((int)answer.StatusCode, 400, 499);
        }
    }

    [Fact]
    public async Task A_broken_answer_to_a_real_question_is_refused()
    {
        await using var app = new AppFactory();
        var host = await app.HostAsync();
        using var device = new SoftPasskey();
        var made = device.Make(await AskAsync(host, "/account/passkeys/question"));
        var whole = made["response"]!["attestationObject"]!.GetValue<string>();
        foreach (var broken in new[] { "", "AA", "oA", whole[..20], whole[..^40] })
        {
            made = device.Make(await AskAsync(host, "/account/passkeys/question"));
            made["response"]!["attestationObject"] = broken;
            using var answer = await host.PostJsonAsync("/account/passkeys", new { name = "My phone", credential = made });
            Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        }

        await AddAsync(host, device);
        foreach (var part in new[] { "authenticatorData", "signature", "userHandle" })
        {
            var signed = device.Sign(await AskAsync(host, "/sign-in/passkey/question"));
            signed["response"]![part] = "AA";
            using var answer = await PostAsync(app.NewBrowser(), signed);
            Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
        }
    }

    static async Task AddAsync(Browser host, SoftPasskey device)
    {
        var question = await AskAsync(host, "/account/passkeys/question");
        using var answer = await host.PostJsonAsync("/account/passkeys", new { name = "My phone", credential = device.Make(question) });
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
    }

    static async Task<HttpResponseMessage> SignInAsync(Browser browser, SoftPasskey device, string? back = null) =>
        await PostAsync(browser, device.Sign(await AskAsync(browser, "/sign-in/passkey/question")), back);

    static Task<HttpResponseMessage> PostAsync(Browser browser, JsonObject credential, string? back = null) =>
        browser.PostJsonAsync("/sign-in/passkey", new { returnUrl = back, credential });

    static async Task<JsonNode> AskAsync(Browser browser, string path)
    {
        using var answer = await browser.PostJsonAsync(path, new { });
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return (await answer.Content.ReadFromJsonAsync<JsonNode>(Stop))!;
    }
}
