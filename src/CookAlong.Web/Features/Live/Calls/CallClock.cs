using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Live.Line;
using CookAlong.Web.Features.Live.Outward;
using CookAlong.Web.Features.Live.Runs;
using CookAlong.Web.Features.Telemetry;

namespace CookAlong.Web.Features.Live.Calls;

/// <summary>Looks at every running meal once a second: sends the calls that have come, says what has moved, and does what the kitchen does by itself.</summary>
public sealed class CallClock(LiveRuns runs, LiveScreens screens, DueCalls calls, ByItself byItself, OutwardCalls outward, ReplanOffers offers, OpenScreens open, Boards boards, TimeProvider time, ILogger<CallClock> log) : BackgroundService
{
    static readonly TimeSpan Beat = TimeSpan.FromSeconds(1);

    // Spares the database: what it was asked once it need not be asked every second.
    readonly HashSet<(RunId, CallId)> settled = [];

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var clock = new PeriodicTimer(Beat, time);
        var isLoaded = false;
        do
        {
            // First what was being cooked, then what other servers have written.
            isLoaded |= await ReadAsync(isLoaded ? runs.CatchUpAsync : runs.LoadUnfinishedAsync, stoppingToken);
            foreach (var live in runs.Known)
            {
                if (live.Current.Ended is null)
                {
                    await LookAtAsync(live, stoppingToken);
                }
                else if (open.Of(live.Current.Id).All.Length == 0 && runs.Forget(live))
                {
                    Forget(live.Current.Id);
                }
            }
        }
        while (await clock.WaitForNextTickAsync(stoppingToken));
    }

    /// <returns>False when the database failed.</returns>
    async Task<bool> ReadAsync(Func<CancellationToken, Task> read, CancellationToken stop)
    {
        try
        {
            await read(stop);
            return true;
        }
        catch (Exception failure) when (!stop.IsCancellationRequested)
        {
            // The last resort of a loop that must not stop: what is known is looked at, and the next beat asks again.
            log.LogError(failure, "What is being cooked could not be read; the next try is in {Seconds} s.", Beat.TotalSeconds);
            return false;
        }
    }

    void Forget(RunId run)
    {
        boards.Forget(run);
        screens.Forget(run);
        offers.Forget(run);
        settled.RemoveWhere(one => one.Item1 == run);
    }

    async Task LookAtAsync(LiveRun live, CancellationToken stop)
    {
        try
        {
            await byItself.ActAsync(live, boards.NewOf(live.Current));
            await RingAsync(live.Current, stop);
        }
        catch (Exception failure) when (!stop.IsCancellationRequested)
        {
            // The last resort of a loop that must not stop: one run's fault would silence every other kitchen's calls.
            log.LogError(failure, "Run {Run} could not be looked at; the next look is in {Seconds} s.", live.Current.Id, Beat.TotalSeconds);
        }
    }

    /// <summary>One look at one run.</summary>
    public async Task RingAsync(Run run, CancellationToken stop)
    {
        var board = boards.NewOf(run);
        var now = board.At;
        screens.LookForPlan(run, board);
        screens.TellIfMoved(run, board);
        foreach (var call in board.Calls.Where(call => call.Due <= now && !call.IsAcknowledged && !settled.Contains((run.Id, call.Id))))
        {
            var claim = await calls.ClaimAsync(run.Id, call, now);
            if (claim == Claim.Mine)
            {
                screens.Ring(run.Id, call.Id);
                Measures.Called(now - call.Due);
                await calls.RungAsync(run.Id, call.Id, now);
                log.LogInformation("Run {Run}: called {Call}, due {Due}.", run.Id, call.Id, call.Due);
            }

            if (claim != Claim.Others)
            {
                settled.Add((run.Id, call.Id));
            }
        }

        await outward.LookAsync(run, board, stop);
    }
}
