using Microsoft.AspNetCore.SignalR;

namespace CookAlong.Web.Features.Live.Line;

/// <summary>Tells every screen that the server goes down to come back, before their lines are cut, so that nobody looks for a fault.</summary>
sealed class Farewell(IHostApplicationLifetime life, IHubContext<LiveHub> hub, ILogger<Farewell> log) : IHostedService
{
    /// <summary>A phone in a dead corner must not hold up the end.</summary>
    static readonly TimeSpan longest = TimeSpan.FromSeconds(1);

    public Task StartAsync(CancellationToken cancellationToken)
    {
        // What is registered last is called first, and the hub cuts its lines by the same signal: it was mapped before anything started.
        life.ApplicationStopping.Register(() =>
        {
            if (!hub.Clients.All.SendAsync("Restarting").Wait(longest))
            {
                log.LogWarning("Not every screen could be told that the server restarts.");
            }
        });
        return Task.CompletedTask;
    }

    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;
}
