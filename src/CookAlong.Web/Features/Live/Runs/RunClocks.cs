using System.Collections.Concurrent;
using CookAlong.Domain.Runs;
using CookAlong.Domain.Runs.Rehearsing;

namespace CookAlong.Web.Features.Live.Runs;

/// <summary>What time it is in a run: the kitchen's, except in a rehearsal. Whatever a screen shows or a tap decides asks here.</summary>
public sealed class RunClocks(TimeProvider time)
{
    readonly ConcurrentDictionary<RunId, RunClock> rehearsals = new();

    /// <summary>Null for the real meal.</summary>
    public RunClock? Of(RunId run) => rehearsals.GetValueOrDefault(run);

    public bool IsRehearsal(RunId run) => rehearsals.ContainsKey(run);

    public DateTimeOffset Now(RunId run) => Of(run)?.At(time.GetUtcNow()) ?? time.GetUtcNow();

    public void Set(RunId run, RunClock clock) => rehearsals[run] = clock;
}
