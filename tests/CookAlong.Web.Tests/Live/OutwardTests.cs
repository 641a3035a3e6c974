using System.Buffers;
using System.Buffers.Text;
using System.Data.Common;
using System.Net;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Live.Outward;
using CookAlong.Web.Security;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Microsoft.Extensions.DependencyInjection;
using MQTTnet.Server;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Web.Tests.Live;

public sealed class OutwardTests
{
    const string Secret = "the pantry key hangs behind the door";

    // Only for a test that fails.
    static readonly TimeSpan Patience = TimeSpan.FromMinutes(1);

    static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_call_nobody_answers_for_ninety_seconds_is_posted_and_signed()
    {
        using var hook = new Receiver();
        await using var kitchen = await StartAsync(hook);

        // The oven was to be turned on at 12:20.
        kitchen.House.Clock.Advance(TimeSpan.FromSeconds(60));
        Assert.Empty(hook.Came);
        await kitchen.TickUntilAsync(hook.Next);
        Assert.InRange(kitchen.House.Clock.GetUtcNow(), Clock(12, 21).AddSeconds(30), DateTimeOffset.MaxValue);
        var (request, body) = Assert.Single(hook.Came);
        using var json = JsonDocument.Parse(body);
        Assert.StartsWith("dial:oven:", json.RootElement.GetProperty("calls")[0].GetProperty("call").GetString(), StringComparison.Ordinal);

        Assert.Equal(Signature(request.Headers.GetValues("CookAlong-Sent").Single(), body), request.Headers.GetValues("CookAlong-Signature").Single());
    }

    [Fact]
    public async Task A_receiver_that_is_away_is_tried_again_and_said_to_be_away_meanwhile()
    {
        using var hook = new Receiver { Answers = HttpStatusCode.BadGateway };
        await using var kitchen = await StartAsync(hook);
        await UnansweredAsync(kitchen, hook);
        await kitchen.TickUntilAsync(Until(() => kitchen.House.Get<WaysOut>().NotReached.Any()));
        Assert.Contains("answered 502", await kitchen.Host.ReadAsync($"/cook/{kitchen.Run}/device"), StringComparison.Ordinal);

        hook.Again();
        hook.Answers = HttpStatusCode.OK;
        await kitchen.TickUntilAsync(hook.Next);
        await kitchen.TickUntilAsync(Until(() => !kitchen.House.Get<WaysOut>().NotReached.Any()));
    }

    [Fact]
    public async Task An_answered_call_is_not_sent()
    {
        using var hook = new Receiver();
        await using var kitchen = await StartAsync(hook);
        await RoastIsDueAsync(kitchen);
        Assert.True((await kitchen.TapAsync(kitchen.Host, new { kind = "acknowledge", call = "in:roast" })).Accepted);
        kitchen.House.Clock.Advance(TimeSpan.FromMinutes(2));
        await kitchen.House.Get<OutwardPost>().SendDueAsync(Stop);
        Assert.DoesNotContain(hook.Came, one => Encoding.UTF8.GetString(one.Body).Contains("in:roast", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_delivery_that_a_dead_server_had_claimed_is_sent_by_the_next_within_five_seconds()
    {
        using var hook = new Receiver();
        await using var kitchen = await StartAsync(hook);
        await RoastIsDueAsync(kitchen);
        var deliveries = kitchen.House.Get<Deliveries>();
        var run = await kitchen.LoadAsync();
        var board = Domain.Runs.Board.Of(run, kitchen.House.Clock.GetUtcNow());
        await deliveries.NoteAsync(run, board, board.Calls.Single(call => call.Id.Value == "in:roast"), ["elsewhere"], Stop);
        var now = kitchen.House.Clock.GetUtcNow();

        Assert.Contains(await deliveries.ClaimAsync(now, Stop), row => row.Way == "elsewhere");
        var next = Another(kitchen);
        Assert.DoesNotContain(await next.ClaimAsync(now.AddSeconds(3), Stop), row => row.Way == "elsewhere");
        // And a second until it looks.
        Assert.Contains(await next.ClaimAsync(now.AddSeconds(4), Stop), row => row.Way == "elsewhere");
    }

    [Fact]
    public async Task A_receiver_that_is_slow_gets_nothing_twice_while_the_server_that_sends_is_alive()
    {
        using var hook = new Receiver { Holds = new() };
        await using var kitchen = await StartAsync(hook);
        await UnansweredAsync(kitchen, hook);
        var first = Calls(hook.Came[0].Body);
        var (next, clock) = (Another(kitchen), kitchen.House.Clock);
        for (var second = 0; second < 12; second++)
        {
            clock.Advance(TimeSpan.FromSeconds(1));
            await Until(() => Held().All(until => until > clock.GetUtcNow().AddSeconds(3).ToUnixTimeMilliseconds())).WaitAsync(Patience, Stop);
            Assert.DoesNotContain(await next.ClaimAsync(clock.GetUtcNow(), Stop), row => first.Contains(row.Call));
        }

        hook.Holds.SetResult();
        await Until(() => Held().Count == 0).WaitAsync(Patience, Stop);
        Assert.Single(hook.Came, one => Calls(one.Body).Intersect(first).Any());

        List<long> Held()
        {
            using var db = kitchen.House.NewDb();
            return [.. db.Set<DeliveryRow>().Where(row => first.Contains(row.Call) && row.DoneAt == null).Select(row => row.NextAt)];
        }

        static List<string> Calls(byte[] body)
        {
            using var json = JsonDocument.Parse(body);
            return [.. json.RootElement.GetProperty("calls").EnumerateArray().Select(call => call.GetProperty("call").GetString()!)];
        }
    }

    [Fact]
    public async Task What_was_claimed_as_the_database_went_away_is_claimed_again()
    {
        var failing = new FailsAtTheSecond();
        await using var kitchen = await LiveKitchen.StartedAsync(services => services.ConfigureDbContext<CookAlongDb>(options => options.AddInterceptors(failing)));
        var deliveries = kitchen.House.Get<Deliveries>();
        var run = await kitchen.LoadAsync();
        var board = Domain.Runs.Board.Of(run, kitchen.House.Clock.GetUtcNow());
        await deliveries.NoteAsync(run, board, board.Calls[0], ["one", "two"], Stop);

        failing.IsOn = true;
        await Assert.ThrowsAsync<Microsoft.Data.Sqlite.SqliteException>(() => deliveries.ClaimAsync(board.At, Stop));
        failing.IsOn = false;

        Assert.Equal(2, (await deliveries.ClaimAsync(board.At.AddSeconds(4), Stop)).Count);
    }

    /// <summary>A database that goes away between two changes.</summary>
    sealed class FailsAtTheSecond : DbCommandInterceptor
    {
        int changes;

        public bool IsOn { get; set; }

        public override ValueTask<InterceptionResult<int>> NonQueryExecutingAsync(DbCommand command, CommandEventData eventData, InterceptionResult<int> result, CancellationToken cancellationToken = default) =>
            IsOn && ++changes == 2 ? throw new Microsoft.Data.Sqlite.SqliteException("disk I/O error", 10) : ValueTask.FromResult(result);
    }

    /// <summary>Another server's, on the same store.</summary>
    static Deliveries Another(LiveKitchen kitchen) => new(kitchen.House.Get<IDbContextFactory<CookAlongDb>>());

    [Fact]
    public async Task The_household_s_broker_gets_the_same_on_its_topic_and_signed()
    {
        var port = FreePort();
        using var broker = new MqttServerFactory().CreateMqttServer(
            new MqttServerOptionsBuilder().WithDefaultEndpoint().WithDefaultEndpointBoundIPAddress(IPAddress.Loopback).WithDefaultEndpointBoundIPV6Address(IPAddress.None).WithDefaultEndpointPort(port).Build());
        var heard = new TaskCompletionSource<(string Topic, byte[] Payload, Dictionary<string, string> Properties)>();
        broker.InterceptingPublishAsync += message =>
        {
            var properties = message.ApplicationMessage.UserProperties.ToDictionary(one => one.Name, one => Encoding.UTF8.GetString(one.ValueBuffer.Span));
            heard.TrySetResult((message.ApplicationMessage.Topic, message.ApplicationMessage.Payload.ToArray(), properties));
            return Task.CompletedTask;
        };
        await broker.StartAsync();
        await new Broker(new Uri($"mqtt://127.0.0.1:{port}/kitchen/calls"), Secret, TimeProvider.System)
            .SendAsync([new OutwardCall(Guid.Empty, "out:roast", "Tray out: Roast", "high", Clock(14, 10))], Stop);
        var (topic, payload, properties) = await heard.Task.WaitAsync(TimeSpan.FromMinutes(1), Stop);
        Assert.Equal("kitchen/calls", topic);
        using var json = JsonDocument.Parse(payload);
        Assert.Equal("Tray out: Roast", json.RootElement.GetProperty("say").GetString());
        Assert.Equal(Signature(properties["CookAlong-Sent"], payload), properties["CookAlong-Signature"]);
        await broker.StopAsync();
    }

    [Fact]
    public async Task A_broker_that_is_not_there_is_said_in_words() =>
        await Assert.ThrowsAsync<NotReachedException>(() =>
            new Broker(new Uri($"mqtt://127.0.0.1:{FreePort()}/kitchen"), secret: null, TimeProvider.System).SendAsync([], Stop));

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
        await kitchen.TickUntilAsync(Until(() =>
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

    /// <summary>RFC 2104, by the framework's own implementation.</summary>
    static string Signature(string sent, byte[] body) =>
        $"sha256={Convert.ToHexStringLower(HMACSHA256.HashData(Encoding.UTF8.GetBytes(Secret), (byte[])[.. Encoding.UTF8.GetBytes($"{sent}."), .. body]))}";

    static Task<LiveKitchen> StartAsync(Receiver? hook = null, Receiver? push = null) => LiveKitchen.StartedAsync(services =>
    {
        if (hook is not null)
        {
            var settings = (HouseSettings)services.Last(one => one.ServiceType == typeof(HouseSettings)).ImplementationInstance!;
            services.AddSingleton(settings with { Webhook = new Uri("http://hook.example/calls"), WebhookSecret = Secret });
            services.AddHttpClient(Webhook.Client).ConfigurePrimaryHttpMessageHandler(() => hook);
        }

        if (push is not null)
        {
            services.AddHttpClient(PushedBrowser.Client).ConfigurePrimaryHttpMessageHandler(() => push);
        }
    });

    static async Task RoastIsDueAsync(LiveKitchen kitchen)
    {
        kitchen.House.Clock.Advance(TimeSpan.FromMinutes(21));
        Assert.True((await kitchen.TapAsync(kitchen.Host, new { kind = "finishStep", step = "stuff" })).Accepted);
    }

    static async Task UnansweredAsync(LiveKitchen kitchen, Receiver receiver)
    {
        await RoastIsDueAsync(kitchen);
        kitchen.House.Clock.Advance(TimeSpan.FromSeconds(60));
        await kitchen.TickUntilAsync(receiver.Next);
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

    static async Task Until(Func<bool> holds)
    {
        while (!holds())
        {
            await Task.Delay(20, Stop);
        }
    }

    static int FreePort()
    {
        using var listener = new System.Net.Sockets.TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
