using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;

namespace CookAlong.Web.Features.Household;

/// <summary>Once the server listens, the log shows the one address to open: the first start's, or the household's.</summary>
sealed class FirstStartAnnouncement(Accounts accounts, FirstStart firstStart, IServer server, HouseSettings settings, ILogger<FirstStartAnnouncement> log) : IHostedLifecycleService
{
    string? secret;

    // Before the server listens: the address must work from the moment it can be reached.
    public async Task StartingAsync(CancellationToken cancellationToken) =>
        secret = await accounts.AnyAsync(cancellationToken) ? null : firstStart.Open();

    public Task StartedAsync(CancellationToken cancellationToken)
    {
        if (secret is null)
        {
            log.LogInformation("CookAlong is ready at {Address}", Address());
        }
        else
        {
            log.LogInformation("Open this address once to make the host cook's account: {Address}/first-start#{Secret}", Address(), secret);
        }

        return Task.CompletedTask;
    }

    public Task StartAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StoppingAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StoppedAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    // "Every address of this machine" cannot be opened in a browser; localhost can.
    string Address() =>
        (server.Features.Get<IServerAddressesFeature>()?.Addresses.FirstOrDefault() ?? "http://localhost")
            .Replace("//0.0.0.0", "//localhost", StringComparison.Ordinal)
            .Replace("//[::]", "//localhost", StringComparison.Ordinal)
            .TrimEnd('/') + settings.BasePath;
}
