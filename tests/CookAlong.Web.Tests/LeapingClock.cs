using Microsoft.Extensions.Time.Testing;

namespace CookAlong.Web.Tests;

/// <summary>
/// Stands still until it is moved. It can leap as well: then what beats once a second beats once, as after the machine has slept,
/// and not once for every second between, which takes minutes for a day.
/// </summary>
public sealed class LeapingClock(DateTimeOffset now) : FakeTimeProvider(now)
{
    readonly Lock gate = new();
    List<Beat>? missed;

    public void Leap(TimeSpan by)
    {
        lock (gate)
        {
            missed = [];
        }

        Advance(by);
        List<Beat> late;
        lock (gate)
        {
            (late, missed) = (missed, null);
        }

        late.ForEach(beat => beat.Call());
    }

    /// <param name="at">Not before now.</param>
    public void LeapTo(DateTimeOffset at) => Leap(at - GetUtcNow());

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) =>
        period <= TimeSpan.Zero ? base.CreateTimer(callback, state, dueTime, period) : new Beat(this, callback, state, dueTime, period);

    ITimer CreateOnce(TimerCallback callback) => base.CreateTimer(callback, null, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);

    bool IsMissed(Beat beat)
    {
        lock (gate)
        {
            missed?.Add(beat);
            return missed is not null;
        }
    }

    /// <summary>A timer that comes again and again, made of one that is set anew each time it has come.</summary>
    sealed class Beat : ITimer
    {
        readonly LeapingClock clock;
        readonly TimerCallback callback;
        readonly object? state;
        readonly ITimer once;
        TimeSpan period;

        public Beat(LeapingClock clock, TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
        {
            (this.clock, this.callback, this.state, this.period) = (clock, callback, state, period);
            once = clock.CreateOnce(_ => Come());
            once.Change(dueTime, Timeout.InfiniteTimeSpan);
        }

        public void Call()
        {
            once.Change(period, Timeout.InfiniteTimeSpan);
            callback(state);
        }

        public bool Change(TimeSpan dueTime, TimeSpan period)
        {
            this.period = period;
            return once.Change(dueTime, Timeout.InfiniteTimeSpan);
        }

        public void Dispose() => once.Dispose();

        public ValueTask DisposeAsync() => once.DisposeAsync();

        void Come()
        {
            if (!clock.IsMissed(this))
            {
                Call();
            }
        }
    }
}
