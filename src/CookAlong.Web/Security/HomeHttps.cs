using System.Net;
using System.Security.Cryptography.X509Certificates;

namespace CookAlong.Web.Security;

/// <summary>
/// The server's certificate from the household's authority, anew whenever it grows old or this machine is found under another name or address.
/// Asked at each connection, so nothing is restarted for it.
/// </summary>
/// <param name="authority">Null = HTTPS is off.</param>
/// <param name="look">What the machine is called now.</param>
public sealed class HomeHttps(HomeAuthority? authority, Func<HomeNames> look, TimeProvider time, ILogger<HomeHttps> log) : IHostedService, IDisposable
{
    static readonly TimeSpan Looks = TimeSpan.FromDays(1);
    static readonly TimeSpan RenewsBefore = TimeSpan.FromDays(30);

    readonly Lock renewing = new();
    HomeNames names = new([], []);
    X509Certificate2? current;
    ITimer? daily;

    public HomeAuthority? Authority => authority;

    public bool IsOn => authority is not null;

    /// <summary>What the certificate in force is made out to.</summary>
    public HomeNames Names => names;

    /// <summary>The certificate in force; null when HTTPS is off.</summary>
    public X509Certificate2? Current => current;

    /// <param name="reached">This machine's address that the connection came in by: it must be in the certificate, whatever the system said before.</param>
    /// <returns>Null when HTTPS is off.</returns>
    public X509Certificate2? For(IPAddress? reached)
    {
        if (authority is null)
        {
            return null;
        }

        lock (renewing)
        {
            var now = time.GetUtcNow();
            var isStrange = reached is not null && HomeNames.IsOfHome(reached) && !names.Addresses.Contains(HomeNames.Plain(reached));
            if (isStrange || current is null || now < current.NotBefore || now >= current.NotAfter - RenewsBefore)
            {
                Renew(authority, isStrange ? reached : null, now);
            }

            return current;
        }
    }

    public Task StartAsync(CancellationToken cancellationToken)
    {
        if (authority is not null)
        {
            LookAgain();
            daily = time.CreateTimer(_ => LookAgain(), state: null, Looks, Looks);
        }

        return Task.CompletedTask;
    }

    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public void Dispose() => daily?.Dispose();

    /// <summary>New names and addresses lead to a new certificate; what is gone stays in it until it grows old.</summary>
    void LookAgain()
    {
        var found = look();
        lock (renewing)
        {
            if (found.Names.Except(names.Names).Any() || found.Addresses.Except(names.Addresses).Any())
            {
                Renew(authority!, reached: null, time.GetUtcNow());
            }
        }

        For(reached: null);
    }

    void Renew(HomeAuthority by, IPAddress? reached, DateTimeOffset now)
    {
        var found = look();
        names = reached is null ? found : found with { Addresses = [.. found.Addresses.Append(HomeNames.Plain(reached)).Distinct()] };

        // The old one is not disposed: a connection may be opening with it.
        current = by.Issue(names, now);
        log.LogInformation("A new certificate for {Names}, good until {Until:yyyy-MM-dd}.", string.Join(", ", names.Names.Select(name => name).Concat(names.Addresses.Select(address => address.ToString()))), current.NotAfter);
    }
}
