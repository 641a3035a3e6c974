using System.Buffers;
using System.Net;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using CookAlong.Web.Features.Live.Outward;
using MQTTnet.Server;
using static CookAlong.Domain.Tests.Runs.SmallMeal;
using static CookAlong.Web.Tests.Live.OutwardKitchen;

namespace CookAlong.Web.Tests.Live;

public sealed class OutwardTests
{
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
        await kitchen.TickUntilAsync(UntilAsync(() => kitchen.House.Get<WaysOut>().NotReached.Any()));
        Assert.Contains("answered 502", await kitchen.Host.ReadAsync($"/cook/{kitchen.Run}/device"), StringComparison.Ordinal);

        hook.Again();
        hook.Answers = HttpStatusCode.OK;
        await kitchen.TickUntilAsync(hook.Next);
        await kitchen.TickUntilAsync(UntilAsync(() => !kitchen.House.Get<WaysOut>().NotReached.Any()));
    }

    [Fact]
    public async Task An_answered_call_is_not_sent()
    {
        using var hook = new Receiver();
        await using var kitchen = await StartAsync(hook);
        await RoastIsDueAsync(kitchen);
        Assert.True((await kitchen.TapAsync(kitchen.Host, new { kind = "acknowledge", call = "in:roast" })).Accepted);
        kitchen.House.Clock.Leap(TimeSpan.FromMinutes(2));
        await kitchen.House.Get<OutwardPost>().SendDueAsync(Stop);
        Assert.DoesNotContain(hook.Came, one => Encoding.UTF8.GetString(one.Body).Contains("in:roast", StringComparison.Ordinal));
    }

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

    /// <summary>RFC 2104, by the framework's own implementation.</summary>
    static string Signature(string sent, byte[] body) =>
        $"sha256={Convert.ToHexStringLower(HMACSHA256.HashData(Encoding.UTF8.GetBytes(Secret), (byte[])[.. Encoding.UTF8.GetBytes($"{sent}."), .. body]))}";

    static int FreePort()
    {
        using var listener = new System.Net.Sockets.TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
