using System.Net;
using System.Net.NetworkInformation;

namespace CookAlong.Web.Security;

/// <summary>What this machine is called and where it is found within the home: what its certificate is made out to.</summary>
/// <param name="Names">Names without a dot, and names of the home network.</param>
/// <param name="Addresses">Private ones and loopback.</param>
public sealed record HomeNames(IReadOnlyList<string> Names, IReadOnlyList<IPAddress> Addresses)
{
    /// <summary>Private and shared ranges: RFC 1918, 3927, 6598 and 4193, and loopback. Link-local IPv6 cannot be written in a browser's address.</summary>
    public static IReadOnlyList<IPNetwork> Ranges { get; } =
        [.. new[] { "10.0.0.0/8", "172.16.0.0/12", "192.168.0.0/16", "169.254.0.0/16", "100.64.0.0/10", "127.0.0.0/8", "fc00::/7", "::1/128" }.Select(range => IPNetwork.Parse(range))];

    public static bool IsOfHome(IPAddress address) => Ranges.Any(range => range.Contains(Plain(address)));

    /// <param name="given">Names that the household set; those of the wide world are left out, since only a public authority can vouch for them.</param>
    public static HomeNames OfThisMachine(IReadOnlyList<string> given) => Of(Environment.MachineName, OwnAddresses(), given);

    public static HomeNames Of(string machine, IEnumerable<IPAddress> addresses, IReadOnlyList<string> given)
    {
        var name = machine.Split('.')[0].ToLowerInvariant();
        string[] own = Uri.CheckHostName(name) == UriHostNameType.Dns ? [name, $"{name}.local"] : [];
        return new(
            [.. own.Append("localhost").Concat(given.Where(HostNames.IsOfHome).Select(one => one.ToLowerInvariant())).Distinct()],
            [.. addresses.Concat(given.Select(one => IPAddress.TryParse(one, out var address) ? address : null).OfType<IPAddress>()).Append(IPAddress.Loopback).Append(IPAddress.IPv6Loopback)
                .Select(Plain).Where(IsOfHome).Distinct()]);
    }

    /// <summary>IPv4 as itself, and no scope: as it stands in a certificate.</summary>
    public static IPAddress Plain(IPAddress address) => address.IsIPv4MappedToIPv6 ? address.MapToIPv4() : new IPAddress(address.GetAddressBytes());

    // Where the system does not tell its addresses (a sandbox), the one that a device reaches is learned when it does.
    static IEnumerable<IPAddress> OwnAddresses()
    {
        try
        {
            return [.. NetworkInterface.GetAllNetworkInterfaces()
                .Where(one => one.OperationalStatus is OperationalStatus.Up or OperationalStatus.Unknown)
                .SelectMany(one => one.GetIPProperties().UnicastAddresses).Select(one => one.Address)];
        }
        catch (NetworkInformationException)
        {
            return [];
        }
    }
}
