using System.Net;

namespace CookAlong.Web.Tests.Household;

public sealed class AddressLimitsTests
{
    static readonly TimeSpan Minute = TimeSpan.FromMinutes(1);

    static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task An_address_posts_sixty_secrets_a_minute_at_any_door_and_is_told_when_to_come_again()
    {
        await using var app = new AppFactory();
        var stranger = app.NewBrowser();
        for (var post = 0; post < 60; post++)
        {
            using var answer = await PostAsync(stranger, "/sign-in/passkey/question");
            Assert.NotEqual(HttpStatusCode.TooManyRequests, answer.StatusCode);
        }

        using var more = await PostAsync(stranger, "/sign-in/passkey/question");
        using var elsewhere = await PostAsync(stranger, "/join");

        Assert.Equal((HttpStatusCode.TooManyRequests, Minute), (more.StatusCode, more.Headers.RetryAfter?.Delta));
        Assert.Equal((HttpStatusCode.TooManyRequests, Minute), (elsewhere.StatusCode, elsewhere.Headers.RetryAfter?.Delta));
    }

    [Fact]
    public async Task A_thermometer_that_chatters_keeps_nobody_from_signing_in()
    {
        await using var app = new AppFactory();
        var address = app.NewBrowser();
        for (var reading = 0; reading < 60; reading++)
        {
            using var answer = await PostAsync(address, "/probe/nobody-s");
            Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        }

        using var more = await PostAsync(address, "/probe/nobody-s");
        using var question = await PostAsync(address, "/sign-in/passkey/question");
        using var page = await address.GetAsync("/sign-in");

        Assert.Equal(HttpStatusCode.TooManyRequests, more.StatusCode);
        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.OK), (question.StatusCode, page.StatusCode));
    }

    static Task<HttpResponseMessage> PostAsync(Browser browser, string path) => browser.Client.PostAsync(path, new FormUrlEncodedContent([]), Stop);
}
