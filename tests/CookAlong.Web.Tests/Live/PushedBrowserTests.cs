using System.Buffers.Text;
using System.Net;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Live.Outward;
using CookAlong.Web.Security;
using static CookAlong.Web.Tests.Live.OutwardKitchen;

namespace CookAlong.Web.Tests.Live;

public sealed class PushedBrowserTests
{
    static CancellationToken Stop => TestContext.Current.CancellationToken;

    // RFC 8292: the token is signed with the key that the browser was told, for the origin of its push service.
    [Fact]
    public async Task A_closed_phone_is_called_by_its_push_service_with_the_household_s_key()
    {
        using var service = new Receiver();
        await using var kitchen = await StartAsync(push: service);
        var ivo = await SubscribedAsync(kitchen);
        await UnansweredAsync(kitchen, service);
        var authorization = service.Came[0].Request.Headers.Authorization!;
        Assert.Equal("vapid", authorization.Scheme, ignoreCase: true);
        var parts = authorization.Parameter!.Split(',').Select(part => part.Trim().Split('=', 2)).ToDictionary(part => part[0], part => part[1]);
        Assert.Equal(await ivo.ReadAsync($"/cook/{kitchen.Run}/push-key"), parts["k"]);
        var token = parts["t"].Split('.');
        Assert.Equal("https://push.example", JsonDocument.Parse(Base64Url.DecodeFromChars(token[1])).RootElement.GetProperty("aud").GetString());
        var point = Base64Url.DecodeFromChars(parts["k"]);
        using var key = ECDsa.Create(new ECParameters { Curve = ECCurve.NamedCurves.nistP256, Q = new ECPoint { X = point[1..33], Y = point[33..] } });
        Assert.True(key.VerifyData(Encoding.ASCII.GetBytes($"{token[0]}.{token[1]}"), Base64Url.DecodeFromChars(token[2]), HashAlgorithmName.SHA256));
    }

    [Fact]
    public async Task That_a_phone_s_push_service_is_away_is_said_on_that_person_s_page_about_the_device()
    {
        using var service = new Receiver { Answers = HttpStatusCode.BadGateway };
        await using var kitchen = await StartAsync(push: service);
        var ivo = await SubscribedAsync(kitchen);
        await UnansweredAsync(kitchen, service);
        await kitchen.TickUntilAsync(SaidAsync());
        Assert.DoesNotContain("answered 502", await kitchen.Host.ReadAsync($"/cook/{kitchen.Run}/device"), StringComparison.Ordinal);

        async Task SaidAsync()
        {
            while (!(await ivo.ReadAsync($"/cook/{kitchen.Run}/device")).Contains("The push service answered 502", StringComparison.Ordinal))
            {
                await Task.Delay(20, Stop);
            }
        }
    }

    [Theory]
    [InlineData(HttpStatusCode.Gone)]
    [InlineData(HttpStatusCode.NotFound)]
    public async Task A_browser_that_is_gone_is_not_called_again(HttpStatusCode answer)
    {
        using var service = new Receiver { Answers = answer };
        await using var kitchen = await StartAsync(push: service);
        await SubscribedAsync(kitchen);
        await UnansweredAsync(kitchen, service);
        await kitchen.TickUntilAsync(UntilAsync(() =>
        {
            using var db = kitchen.House.NewDb();
            return !db.Set<PushSubscriptionRow>().Any();
        }));
    }

    // SEC 1, 3.2.2: a public key is a point of its curve; 65 bytes that are none cannot be encrypted for.
    [Fact]
    public async Task A_subscription_without_its_key_or_with_none_of_the_curve_is_refused()
    {
        await using var kitchen = await StartAsync();
        var ivo = await kitchen.JoinAsync("Ivo");
        byte[] none = [4, .. Enumerable.Repeat((byte)7, 64)];
        foreach (var asked in new object[] { new { }, new { endpoint = "https://push.example/1", p256dh = Base64Url.EncodeToString(none), auth = Base64Url.EncodeToString(new byte[16]) } })
        {
            using var answer = await ivo.PostJsonAsync($"/cook/{kitchen.Run}/push", asked);
            Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        }
    }

    [Theory]
    [InlineData("http://push.example/1")]
    [InlineData("file:///etc/passwd")]
    [InlineData("nonsense")]
    public async Task Only_a_push_service_over_https_is_taken(string endpoint)
    {
        await using var kitchen = await StartAsync();
        var ivo = await kitchen.JoinAsync("Ivo");
        using var answer = await ivo.PostJsonAsync($"/cook/{kitchen.Run}/push", Subscription(endpoint));
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
    }

    // IANA's registries of special-purpose addresses, from memory.
    [Theory]
    [InlineData("192.168.1.4")]
    [InlineData("10.1.2.3")]
    [InlineData("127.0.0.1")]
    [InlineData("169.254.169.254")]
    [InlineData("100.64.0.1")]
    [InlineData("::1")]
    [InlineData("::ffff:192.168.1.4")]
    [InlineData("fd00::1")]
    [InlineData("fe80::1")]
    [InlineData("64:ff9b::c0a8:104")]
    public void Addresses_of_the_home_are_not_of_the_public_internet(string address) => Assert.False(PublicAddresses.IsPublic(IPAddress.Parse(address)));

    [Theory]
    [InlineData("9.9.9.9")]
    [InlineData("2606:4700::1111")]
    public void Others_are(string address) => Assert.True(PublicAddresses.IsPublic(IPAddress.Parse(address)));

    [Fact]
    public async Task A_name_that_leads_home_is_not_connected_to()
    {
        using var client = new HttpClient(new SocketsHttpHandler { ConnectCallback = PublicAddresses.OfThisMachine.ConnectAsync });
        var refused = await Assert.ThrowsAsync<HttpRequestException>(() => client.GetAsync(new Uri("http://localhost:9/"), Stop));
        Assert.Contains("public internet", refused.Message, StringComparison.Ordinal);
    }

    static async Task<Browser> SubscribedAsync(LiveKitchen kitchen)
    {
        var ivo = await kitchen.JoinAsync("Ivo");
        using var answer = await ivo.PostJsonAsync($"/cook/{kitchen.Run}/push", Subscription("https://push.example/send/1"));
        Assert.Equal(HttpStatusCode.NoContent, answer.StatusCode);
        return ivo;
    }

    static object Subscription(string endpoint)
    {
        using var key = ECDiffieHellman.Create(ECCurve.NamedCurves.nistP256);
        var point = key.ExportParameters(includePrivateParameters: false).Q;
        return new { endpoint, p256dh = Base64Url.EncodeToString([4, .. point.X!, .. point.Y!]), auth = Base64Url.EncodeToString(new byte[16]) };
    }
}
