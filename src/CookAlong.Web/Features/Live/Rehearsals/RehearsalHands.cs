using CookAlong.Domain.Runs;
using CookAlong.Domain.Runs.Rehearsing;
using CookAlong.Web.Features.Live.Runs;

namespace CookAlong.Web.Features.Live.Rehearsals;

/// <summary>Lets the simulated hands of every rehearsal tap, as screens would.</summary>
public sealed class RehearsalHands(LiveRuns runs, RunClocks clocks, Boards boards, TimeProvider time, ILogger<RehearsalHands> log) : BackgroundService
{
    /// <summary>Half a minute of the fastest rehearsal.</summary>
    static readonly TimeSpan Beat = TimeSpan.FromMilliseconds(250);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (true)
        {
            await Task.Delay(Beat, time, stoppingToken);
            foreach (var live in runs.Known.Where(live => live.Current.Ended is null && clocks.IsRehearsal(live.Current.Id)))
            {
                await TapAsync(live, stoppingToken);
            }
        }
    }

    async Task TapAsync(LiveRun live, CancellationToken stop)
    {
        try
        {
            var run = live.Current;
            foreach (var tap in new SimulatedHands(run.Id).Taps(run, boards.Of(run)).ToList())
            {
                await live.SendAsync(tap);
            }
        }
        catch (Exception failure) when (!stop.IsCancellationRequested)
        {
            // The last resort of a loop that must not stop: one rehearsal's fault would stand every other still.
            log.LogError(failure, "The hands of rehearsal {Run} could not tap.", live.Current.Id);
        }
    }
}
