using CookAlong.Domain.Runs;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Live.Line;

namespace CookAlong.Web.Features.Live.Runs;

/// <summary>One running meal on this server: its state, and one tap after another.</summary>
public sealed class LiveRun(Run run, EventLog log, LiveScreens screens, RunClocks clocks) : IDisposable
{
    readonly SemaphoreSlim turn = new(1, 1);

    // What changed nothing left nothing in the log. A copy of it that was long on its way must not do now what was refused then.
    readonly Dictionary<CommandId, Decision> withoutEffect = [];
    readonly Queue<CommandId> oldest = [];

    /// <summary>Taps without effect that are remembered; a copy that comes after so many others is decided anew.</summary>
    const int Remembered = 500;

    volatile Run current = run;

    public Run Current => current;

    /// <summary>Decides, keeps what happened, and tells every screen. What was accepted is on disk.</summary>
    public async Task<Decision> SendAsync(Tap tap)
    {
        await turn.WaitAsync();
        try
        {
            if (withoutEffect.TryGetValue(tap.Id, out var before))
            {
                return before;
            }

            while (true)
            {
                // The log keeps milliseconds; what is decided now must be what a replay finds.
                var now = DateTimeOffset.FromUnixTimeMilliseconds(clocks.Now(current.Id).ToUnixTimeMilliseconds());
                var decision = current.Decide(tap, now);
                if (decision is not Decision.Accepted { Events.IsEmpty: false } accepted)
                {
                    // What the kitchen does by itself is sent once and never again under that id: nothing to remember.
                    if (tap.By is not null)
                    {
                        Remember(tap.Id, decision);
                    }

                    return decision;
                }

                var sequence = current.Sequence;
                Logged[] events = [.. accepted.Events.Select(happened => new Logged(++sequence, tap.Id, tap.By, now, happened))];
                if (await log.AppendAsync(current, events))
                {
                    current = events.Aggregate(current, (state, logged) => state.Apply(logged));
                    screens.Tell(current, accepted.Events);
                    return decision;
                }

                // Somebody else wrote to this run (another server on the same log): see what, and decide again.
                await TakeInAsync();
            }
        }
        finally
        {
            turn.Release();
        }
    }

    /// <summary>Takes in what another server on the same log has written.</summary>
    public async Task CatchUpAsync()
    {
        await turn.WaitAsync();
        try
        {
            await TakeInAsync();
        }
        finally
        {
            turn.Release();
        }
    }

    public void Dispose() => turn.Dispose();

    async Task TakeInAsync()
    {
        var before = current;
        current = await log.CatchUpAsync(before);
        if (current.Sequence != before.Sequence)
        {
            screens.TellOfOthers(current);
        }
    }

    void Remember(CommandId tap, Decision decision)
    {
        withoutEffect[tap] = decision;
        oldest.Enqueue(tap);
        if (oldest.Count > Remembered)
        {
            withoutEffect.Remove(oldest.Dequeue());
        }
    }
}
