using CookAlong.Web.Features.Household;

namespace CookAlong.Web.Features.Live.Line;

/// <summary>
/// A screen on a wall makes no requests while nobody taps; the line it holds says that it is in use. A line whose session ended
/// otherwise than by this server's doing (its limit, another server) is closed here, since the news would go on to it.
/// </summary>
public sealed class HeldLines(OpenScreens open, Sessions sessions, TimeProvider time, ILogger<HeldLines> log) : BackgroundService
{
    /// <summary>Ended sessions are to be out within 5 s.</summary>
    static readonly TimeSpan Beat = TimeSpan.FromSeconds(4);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var clock = new PeriodicTimer(Beat, time);
        while (await clock.WaitForNextTickAsync(stoppingToken))
        {
            await LookAsync(stoppingToken);
        }
    }

    /// <summary>One look at all of them.</summary>
    public async Task LookAsync(CancellationToken stop)
    {
        try
        {
            if (open.Sessions is { Length: > 0 } held)
            {
                foreach (var gone in await sessions.GoneAsync(held, stop))
                {
                    open.Close(gone);
                }
            }
        }
        catch (Exception failure) when (!stop.IsCancellationRequested)
        {
            // The last resort of a loop that must not stop; whoever taps is asked for their session all the same.
            log.LogError(failure, "The sessions of open lines could not be looked at; the next look is in {Seconds} s.", Beat.TotalSeconds);
        }
    }
}
