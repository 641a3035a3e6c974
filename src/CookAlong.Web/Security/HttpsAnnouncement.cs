namespace CookAlong.Web.Security;

/// <summary>At the start the log says what the household has by plain HTTP, and what it could have.</summary>
sealed class HttpsAnnouncement(HomeHttps https, HouseSettings settings, ILogger<HttpsAnnouncement> log) : IHostedLifecycleService
{
    public Task StartedAsync(CancellationToken cancellationToken)
    {
        if (https.IsOn)
        {
            log.LogInformation("HTTPS is on, port {Port}. Each device is told once to trust this kitchen, on the page /secure.{Plain}", settings.HttpsPort, settings.IsHttpsOnly ? " Plain HTTP answers nothing else." : "");
        }
        else
        {
            log.LogInformation("Plain HTTP: everything works but what browsers keep for HTTPS (the screen kept awake, calls while the page is closed, the board after a reload without the server). 'https on' brings it to the home network.");
        }

        return Task.CompletedTask;
    }

    public Task StartingAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StartAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StoppingAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StoppedAsync(CancellationToken cancellationToken) => Task.CompletedTask;
}
