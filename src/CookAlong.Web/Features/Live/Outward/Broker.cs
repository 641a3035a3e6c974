using System.Text;
using MQTTnet;
using MQTTnet.Exceptions;
using MQTTnet.Protocol;

namespace CookAlong.Web.Features.Live.Outward;

/// <summary>
/// Publishes calls, as the same JSON, to a topic of the household's MQTT 5 broker, at least once. Calls are rare, so a
/// connection is made for each message. With a secret user properties sign it, those of <see cref="Seal"/>; a receiver that
/// speaks MQTT 3.1.1 gets the message without them.
/// </summary>
/// <param name="address">mqtt:// or mqtts://, with user and password if the broker wants them; the path is the topic.</param>
public sealed class Broker(Uri address, string? secret, TimeProvider time) : IWayOut
{
    public const string UsualTopic = "cookalong/calls";

    public string Id => "mqtt";

    string Topic => address.AbsolutePath.Trim('/') is { Length: > 0 } topic ? Uri.UnescapeDataString(topic) : UsualTopic;

    public async Task SendAsync(IReadOnlyList<OutwardCall> calls, CancellationToken stop)
    {
        var now = time.GetUtcNow();
        var body = OutwardJson.Of(calls, now);
        var message = new MqttApplicationMessageBuilder()
            .WithTopic(Topic)
            .WithPayload(body)
            .WithContentType("application/json")
            .WithQualityOfServiceLevel(MqttQualityOfServiceLevel.AtLeastOnce);
        foreach (var (name, value) in Seal.Of(secret, body, now))
        {
            message.WithUserProperty(name, Encoding.UTF8.GetBytes(value));
        }

        using var client = new MqttClientFactory().CreateMqttClient();
        try
        {
            await client.ConnectAsync(Options(), stop);
            var answer = await client.PublishAsync(message.Build(), stop);
            await client.DisconnectAsync(new MqttClientDisconnectOptions(), stop);
            if (!answer.IsSuccess)
            {
                throw new NotReachedException($"The message broker refused the message: {answer.ReasonCode}.");
            }
        }
        catch (MqttCommunicationException failed)
        {
            throw new NotReachedException($"The message broker could not be reached: {failed.Message}", failed);
        }
    }

    MqttClientOptions Options()
    {
        var isSecure = address.Scheme == "mqtts";
        var options = new MqttClientOptionsBuilder()
            .WithTcpServer(address.Host, address.Port > 0 ? address.Port : isSecure ? 8883 : 1883)
            .WithTimeout(TimeSpan.FromSeconds(5));
        if (isSecure)
        {
            options.WithTlsOptions(tls => tls.UseTls());
        }

        if (address.UserInfo.Split(':', 2) is [{ Length: > 0 } user, .. var rest])
        {
            options.WithCredentials(Uri.UnescapeDataString(user), rest.Length > 0 ? Uri.UnescapeDataString(rest[0]) : null);
        }

        return options.Build();
    }
}
