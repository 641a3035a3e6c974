using CookAlong.Domain.Runs;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Live.Runs;

namespace CookAlong.Web.Features.Live.Outward;

/// <summary>Sends what is to go beyond the page, and tries again what did not arrive.</summary>
public sealed class OutwardPost(Deliveries deliveries, WaysOut ways, PushSubscriptions subscriptions, LiveRuns runs, TimeProvider time, ILogger<OutwardPost> log) : BackgroundService
{
    static readonly TimeSpan Beat = TimeSpan.FromSeconds(1);

    /// <summary>Calls that were due within this of each other go as one message.</summary>
    static readonly TimeSpan MergedWithin = TimeSpan.FromSeconds(5);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        var sending = new List<Task>();
        try
        {
            while (true)
            {
                await Task.Delay(Beat, time, stoppingToken);
                // Not awaited: a web hook that hangs must not hold up a locked phone. What is on its way is claimed.
                sending.RemoveAll(one => one.IsCompleted);
                sending.Add(TrySendDueAsync(stoppingToken));
            }
        }
        finally
        {
            await Task.WhenAll(sending);
        }
    }

    async Task TrySendDueAsync(CancellationToken stop)
    {
        try
        {
            await SendDueAsync(stop);
        }
        catch (Exception failure) when (!stop.IsCancellationRequested)
        {
            // The last resort of a loop that must not stop, as in CallClock: the next beat tries again.
            log.LogError(failure, "Calls could not be sent out; the next try is in {Seconds} s.", Beat.TotalSeconds);
        }
    }

    public async Task SendDueAsync(CancellationToken stop)
    {
        var claimed = await deliveries.ClaimAsync(time.GetUtcNow(), stop);
        await Task.WhenAll(claimed.GroupBy(row => (row.Run, row.Way)).SelectMany(group => Together([.. group])).Select(rows => HandleAsync(rows, stop)));
    }

    async Task HandleAsync(IReadOnlyList<DeliveryRow> rows, CancellationToken stop)
    {
        try
        {
            await SendAsync(rows, stop);
        }
        finally
        {
            deliveries.LetGo(rows);
        }
    }

    async Task SendAsync(IReadOnlyList<DeliveryRow> rows, CancellationToken stop)
    {
        var run = new RunId(rows[0].Run);
        var wanted = new List<DeliveryRow>();
        foreach (var row in rows)
        {
            if (await IsAnsweredAsync(row))
            {
                await deliveries.DoneAsync(row, time.GetUtcNow(), "Answered before it was sent.", stop);
            }
            else if (await deliveries.RenewAsync(row, time.GetUtcNow(), stop))
            {
                wanted.Add(row);
            }
        }

        if (wanted.Count == 0)
        {
            return;
        }

        if (await ways.FindAsync(run, wanted[0].Way, stop) is not { } way)
        {
            await MarkAsync(wanted, "It is not asked for any more.", stop);
            return;
        }

        var calls = wanted.Select(row => new OutwardCall(row.Run, row.Call, row.Text, row.Priority, DateTimeOffset.FromUnixTimeMilliseconds(row.Due))).ToList();
        if (await SendHeldAsync(way, wanted, calls, stop) is not { } failed)
        {
            await MarkAsync(wanted, why: null, stop);
        }
        else if (failed.IsGone)
        {
            await subscriptions.PruneAsync(way.Id, stop);
            await MarkAsync(wanted, failed.Message, stop);
        }
        else
        {
            log.LogWarning("A call could not be sent by {Way}: {Why}", way.Id, failed.Message);
            foreach (var row in wanted)
            {
                await deliveries.FailedAsync(row, time.GetUtcNow(), failed.Message, stop);
            }
        }
    }

    /// <summary>Others see by the renewed claims that this server is alive, however slow the receiver is.</summary>
    async Task<NotReachedException?> SendHeldAsync(IWayOut way, List<DeliveryRow> rows, List<OutwardCall> calls, CancellationToken stop)
    {
        using var over = CancellationTokenSource.CreateLinkedTokenSource(stop);
        var holding = HoldAsync(rows, over.Token);
        try
        {
            return await ways.TrySendAsync(way, calls, stop);
        }
        finally
        {
            await over.CancelAsync();
            await holding;
        }
    }

    async Task HoldAsync(List<DeliveryRow> rows, CancellationToken over)
    {
        while (!over.IsCancellationRequested)
        {
            try
            {
                await Task.Delay(Beat, time, over);
                foreach (var row in rows)
                {
                    await deliveries.RenewAsync(row, time.GetUtcNow(), over);
                }
            }
            catch (Exception failure)
            {
                if (!over.IsCancellationRequested)
                {
                    log.LogError(failure, "What is being sent could not be held; the next try is in {Seconds} s.", Beat.TotalSeconds);
                }
            }
        }
    }

    /// <summary>However long the database is away: what is sent and not marked would go out again.</summary>
    async Task MarkAsync(List<DeliveryRow> rows, string? why, CancellationToken stop)
    {
        foreach (var row in rows)
        {
            while (!await TryMarkAsync(row, why, stop))
            {
                await Task.Delay(Beat, time, stop);
            }
        }
    }

    async Task<bool> TryMarkAsync(DeliveryRow row, string? why, CancellationToken stop)
    {
        try
        {
            await deliveries.DoneAsync(row, time.GetUtcNow(), why, stop);
            return true;
        }
        catch (Exception failure) when (!stop.IsCancellationRequested)
        {
            log.LogError(failure, "A call that was sent could not be marked so; the next try is in {Seconds} s.", Beat.TotalSeconds);
            return false;
        }
    }

    async Task<bool> IsAnsweredAsync(DeliveryRow row) =>
        await runs.FindAsync(new RunId(row.Run)) is not { Current: var run }
        || !CallSchedule.Of(run, time.GetUtcNow()).Any(call => call.Id.Value == row.Call && !call.IsAcknowledged);

    static IEnumerable<IReadOnlyList<DeliveryRow>> Together(List<DeliveryRow> rows)
    {
        var group = new List<DeliveryRow>();
        foreach (var row in rows.OrderBy(row => row.Due))
        {
            if (group.Count > 0 && row.Due - group[0].Due > MergedWithin.TotalMilliseconds)
            {
                yield return group;
                group = [];
            }

            group.Add(row);
        }

        yield return group;
    }
}
