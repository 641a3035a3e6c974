using System.Net;

namespace CookAlong.Web.Features.Health;

/// <summary>The addresses that are listened on, and the ways out of the house.</summary>
sealed class WayChecks(HouseSettings settings, Machine machine)
{
    public IEnumerable<string> Listening() => settings.Urls.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    public async Task<Finding> AddressAsync(string url, CancellationToken stop)
    {
        var address = BindingAddress.Parse(url);
        var at = new IPEndPoint(IPAddress.TryParse(address.Host, out var ip) ? ip : address.Host == "localhost" ? IPAddress.Loopback : IPAddress.Any, address.Port);
        if (machine.IsFree(at))
        {
            return HealthWords.Free(url);
        }

        // A certificate for another name would not be believed here, and says nothing about whose server it is.
        var own = new Uri($"http://{(at.Address.Equals(IPAddress.Any) || at.Address.Equals(IPAddress.IPv6Any) ? "localhost" : address.Host)}:{address.Port}/health/live");
        return address.Scheme == Uri.UriSchemeHttps ? HealthWords.TakenBySomebody(url)
            : await machine.AnswerOf(own, stop) == HealthFeature.Alive ? HealthWords.Ours(url)
            : HealthWords.Taken(url);
    }

    /// <summary>Each host once. Where devices have their push services is said by browsers; where the household's own receivers are, by its settings, and they may be within the house.</summary>
    public IReadOnlyList<(string Host, int Port, bool IsPublic)> Outward(IEnumerable<Uri> push) =>
    [
        .. push.Select(address => (address.Host, address.Port, IsPublic: true)).Distinct(),
        .. settings.Webhook is { } webhook ? [(webhook.Host, webhook.Port, false)] : Array.Empty<(string, int, bool)>(),
        .. settings.Broker is { } broker ? [(broker.Host, broker.Port > 0 ? broker.Port : broker.Scheme == "mqtts" ? SecureMqtt : Mqtt, false)] : Array.Empty<(string, int, bool)>(),
    ];

    // Registered with IANA.
    const int Mqtt = 1883;
    const int SecureMqtt = 8883;
}
