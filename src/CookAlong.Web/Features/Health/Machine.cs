using System.Net;
using System.Net.Sockets;
using CookAlong.Web.Security;

namespace CookAlong.Web.Features.Health;

/// <summary>What a check asks of the machine.</summary>
/// <param name="FreeBytes">Where a folder lies.</param>
/// <param name="Mounts">As in /proc/mounts; null where there is no such file.</param>
/// <param name="IsFree">Whether an address and port can be listened on.</param>
/// <param name="AnswerOf">What a server on this machine answers at an address; null = nothing.</param>
/// <param name="WhyNotReached">Null when a line to host and port can be had; else why not. The last says that only the public internet may be asked.</param>
sealed record Machine(
    Func<string, long> FreeBytes,
    Func<string?> Mounts,
    Func<IPEndPoint, bool> IsFree,
    Func<Uri, CancellationToken, Task<string?>> AnswerOf,
    Func<string, int, bool, CancellationToken, Task<string?>> WhyNotReached)
{
    static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);

    public static Machine This { get; } = new(
        folder => new DriveInfo(folder).AvailableFreeSpace,
        () => File.Exists("/proc/mounts") ? File.ReadAllText("/proc/mounts") : null,
        CanListen,
        AskAsync,
        DialAsync);

    static bool CanListen(IPEndPoint address)
    {
        using var socket = new Socket(address.AddressFamily, SocketType.Stream, ProtocolType.Tcp);
        try
        {
            socket.Bind(address);
            return true;
        }
        catch (SocketException)
        {
            return false;
        }
    }

    static async Task<string?> AskAsync(Uri address, CancellationToken stop)
    {
        using var client = new HttpClient { Timeout = Patience };
        try
        {
            return await client.GetStringAsync(address, stop);
        }
        catch (Exception failure) when (failure is HttpRequestException or TaskCanceledException && !stop.IsCancellationRequested)
        {
            return null;
        }
    }

    static async Task<string?> DialAsync(string host, int port, bool isPublic, CancellationToken stop)
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(stop);
        patience.CancelAfter(Patience);
        try
        {
            var addresses = await Dns.GetHostAddressesAsync(host, patience.Token);
            if (isPublic && !addresses.All(PublicAddresses.IsPublic))
            {
                return "it is not an address of the public internet";
            }

            using var socket = new Socket(SocketType.Stream, ProtocolType.Tcp);
            await socket.ConnectAsync(addresses, port, patience.Token);
            return null;
        }
        catch (SocketException failure)
        {
            return failure.Message;
        }
        catch (OperationCanceledException) when (!stop.IsCancellationRequested)
        {
            return $"no answer within {Patience.TotalSeconds} seconds";
        }
    }
}
