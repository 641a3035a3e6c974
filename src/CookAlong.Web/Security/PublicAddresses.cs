using System.Net;
using System.Net.Sockets;

namespace CookAlong.Web.Security;

/// <summary>
/// Connects only to the public internet, whatever a name resolves to at that moment. For addresses that come from outside:
/// without this a guest could have the server knock at the doors of the home network.
/// </summary>
/// <param name="resolve">All addresses of a host's name.</param>
/// <param name="dial">A line to one address.</param>
sealed class PublicAddresses(Func<string, CancellationToken, Task<IPAddress[]>> resolve, Func<IPEndPoint, CancellationToken, Task<Stream>> dial)
{
    // IANA's registries of special-purpose addresses for IPv4 and IPv6 (RFC 6890 and later), as of 2026, from memory.
    static readonly IPNetwork[] special =
    [
        .. new[]
        {
            "0.0.0.0/8", "10.0.0.0/8", "100.64.0.0/10", "127.0.0.0/8", "169.254.0.0/16", "172.16.0.0/12", "192.0.0.0/24", "192.0.2.0/24",
            "192.88.99.0/24", "192.168.0.0/16", "198.18.0.0/15", "198.51.100.0/24", "203.0.113.0/24", "224.0.0.0/4", "240.0.0.0/4",
            "::/96", "64:ff9b::/96", "64:ff9b:1::/48", "100::/64", "2001::/23", "2001:db8::/32", "2002::/16", "3fff::/20", "5f00::/16",
            "fc00::/7", "fe80::/10", "fec0::/10", "ff00::/8",
        }.Select(network => IPNetwork.Parse(network)),
    ];

    /// <summary>By the machine's own resolver and sockets.</summary>
    public static PublicAddresses OfThisMachine { get; } = new(Dns.GetHostAddressesAsync, DialAsync);

    public static bool IsPublic(IPAddress address)
    {
        var plain = address.IsIPv4MappedToIPv6 ? address.MapToIPv4() : address;
        return !special.Any(network => network.Contains(plain));
    }

    /// <summary>For <see cref="SocketsHttpHandler.ConnectCallback"/>.</summary>
    /// <exception cref="NotPublicException">The name leads to an address that is not public. The client wraps it in its own.</exception>
    public async ValueTask<Stream> ConnectAsync(SocketsHttpConnectionContext context, CancellationToken stop)
    {
        var addresses = await resolve(context.DnsEndPoint.Host, stop);
        if (addresses.Length == 0 || !addresses.All(IsPublic))
        {
            throw new NotPublicException($"{context.DnsEndPoint.Host} is not an address of the public internet.");
        }

        // To the address that was looked at, not to the name, which may lead elsewhere the next time it is asked.
        return await dial(new IPEndPoint(addresses[0], context.DnsEndPoint.Port), stop);
    }

    static async Task<Stream> DialAsync(IPEndPoint to, CancellationToken stop)
    {
        var socket = new Socket(to.AddressFamily, SocketType.Stream, ProtocolType.Tcp) { NoDelay = true };
        try
        {
            await socket.ConnectAsync(to, stop);
            return new NetworkStream(socket, ownsSocket: true);
        }
        catch (SocketException)
        {
            socket.Dispose();
            throw;
        }
    }
}

/// <summary>An address from outside leads into a home, a machine or nowhere.</summary>
sealed class NotPublicException(string message) : IOException(message);
