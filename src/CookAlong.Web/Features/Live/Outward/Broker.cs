using MQTTnet;
using MQTTnet.Exceptions;
using MQTTnet.Protocol;

namespace CookAlong.Web.Features.Live.Outward;

/// <summary>
/// Publishes calls, as the same JSON, to a topic of the household's MQTT broker (MQTT 5 or 3.1.1, at least once). Calls are
/// rare, so a connection is made for each message.
/// </summary>
/// <param name="address">mqtt:// or mqtts://, with user and password if the broker wants them; the path is the topic.</param>
public sealed class Broker(Uri address, TimeProvider time) : IWayOut
{
    public const string UsualTopic = "cookalong/calls";

    public string Id => "mqtt";

    string Topic => address.AbsolutePath.Trim('/') is { Length: > 0 } topic ? Uri.UnescapeDataString(topic) : UsualTopic;

    public async Task SendAsync(IReadOnlyList<OutwardCall> calls, CancellationToken stop)
    {
        var message = new MqttApplicationMessageBuilder()
            .WithTopic(Topic)
            .WithPayload(OutwardJson.Of(calls, time.GetUtcNow()))
            .WithContentType("application/json")
            .WithQualityOfServiceLevel(MqttQualityOfServiceLevel.AtLeastOnce)
            .Build();
        using var client = new MqttClientFactory().CreateMqttClient();
        try
        {
            await client.ConnectAsync(Options(), stop);
            var answer = await client.PublishAsync(message, stop);
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
