using System.Collections.Concurrent;
using System.Collections.Immutable;
using CookAlong.Domain;
using CookAlong.Domain.Debrief.Learning;
using CookAlong.Domain.FoodSafety;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Domain.Runs;
using CookAlong.Domain.Runs.Rehearsing;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Live.Line;

namespace CookAlong.Web.Features.Live.Runs;

/// <summary>The runs this server knows, each loaded from its log the first time somebody asks.</summary>
public sealed class LiveRuns(EventLog log, LiveScreens screens, RunClocks clocks, HouseSettings settings, TimeProvider time) : IDisposable
{
    /// <summary>A run that is over is kept in memory for so long after somebody asked for it.</summary>
    static readonly TimeSpan KeptFor = TimeSpan.FromMinutes(10);

    readonly ConcurrentDictionary<RunId, LiveRun> runs = new();
    readonly ConcurrentDictionary<RunId, DateTimeOffset> asked = new();
    readonly SemaphoreSlim starting = new(1, 1);

    /// <summary>Those in memory.</summary>
    public ICollection<LiveRun> Known => runs.Values;

    bool IsShared => settings.Postgres is not null;

    /// <summary>With all that other servers have written to it. Null when there is no such run.</summary>
    public async Task<LiveRun?> FindAsync(RunId id)
    {
        if (runs.TryGetValue(id, out var known))
        {
            asked[id] = time.GetUtcNow();
            if (IsShared)
            {
                await known.CatchUpAsync();
            }

            return known;
        }

        return await log.LoadAsync(id) is { } run ? await KeepAsync(run) : null;
    }

    /// <summary>After a restart: what was being cooked goes on, whether or not a screen has asked yet.</summary>
    public async Task LoadUnfinishedAsync(CancellationToken stop)
    {
        foreach (var id in await log.UnfinishedAsync(stop))
        {
            await FindAsync(id);
        }
    }

    /// <summary>Where other servers write to the same log: takes in what they wrote and began, whether or not a screen here asks.</summary>
    public async Task CatchUpAsync(CancellationToken stop)
    {
        if (!IsShared)
        {
            return;
        }

        foreach (var (id, last) in await log.StandingsAsync(runs.Keys, stop))
        {
            if (!runs.TryGetValue(id, out var live))
            {
                await FindAsync(id);
            }
            else if (live.Current.Sequence < last)
            {
                await live.CatchUpAsync();
            }
        }
    }

    /// <summary>Lets go of a run that is over and that nobody has asked for of late.</summary>
    /// <returns>True when it was let go.</returns>
    public bool Forget(LiveRun live)
    {
        var id = live.Current.Id;
        if (live.Current.Ended is null || time.GetUtcNow() - asked.GetValueOrDefault(id) < KeptFor)
        {
            return false;
        }

        asked.TryRemove(id, out _);
        return runs.TryRemove(id, out _);
    }

    /// <summary>Begins the meal's run; where it, or its rehearsal, is going on already, that one: a host who taps twice has one kitchen, not two.</summary>
    /// <param name="mealId">The meal's row.</param>
    /// <param name="host">The account that starts it; <see cref="Names.OfHost"/> says whose hands they are.</param>
    /// <param name="rate">How fast the clock of a rehearsal runs; null = the meal is cooked.</param>
    /// <param name="written">What the recipes say where the meal says what was learned; null = nowhere.</param>
    /// <param name="authority">Whose limits the household goes by.</param>
    public async Task<LiveRun> StartAsync(Guid mealId, Meal meal, Plan plan, PersonId host, string name, int? rate = null, ImmutableDictionary<(StepId Step, int Option), WrittenTime>? written = null, Region? authority = null)
    {
        await starting.WaitAsync();
        try
        {
            if (await log.UnfinishedAsync(mealId, rate is not null) is { } going && await FindAsync(going) is { } before)
            {
                return before;
            }

            var now = time.GetUtcNow();
            var hands = meal.Helpers.OfHost(name);
            var id = new RunId(Guid.CreateVersion7(now));
            var command = new CommandId(Guid.CreateVersion7(now));
            var at = DateTimeOffset.FromUnixTimeMilliseconds(now.ToUnixTimeMilliseconds());
            ImmutableArray<Logged> events = rate is null
                ? [.. Run.Start(meal, plan, host, name, hands?.Id, authority).Select((happened, index) => new Logged(index + 1, command, host, at, happened))]
                : [.. Rehearsal.Start(meal, plan, host, name, hands?.Id, authority, () => new PersonId(Guid.CreateVersion7(now)))
                    .Select((one, index) => new Logged(index + 1, command, one.By, one.At, one.Event))];
            var row = new RunRow { Id = id.Value, Meal = mealId, Name = meal.Name, Began = at.ToUnixTimeMilliseconds(), Rate = rate };
            row.Shows = rate is null ? null : Rehearsal.Begins(plan).ToUnixTimeMilliseconds();
            var begun = await log.BeginAsync(row, events, written ?? []);

            // Loaded, not made of the events at hand: what is cooked is what the log can give back.
            return await KeepAsync(await log.LoadAsync(begun) ?? throw new InvalidOperationException($"Run {begun} was written and is not there."));
        }
        finally
        {
            starting.Release();
        }
    }

    public void Dispose()
    {
        starting.Dispose();
        foreach (var run in runs.Values)
        {
            run.Dispose();
        }
    }

    async Task<LiveRun> KeepAsync(Run run)
    {
        if (await log.ClockOfAsync(run.Id) is { } clock)
        {
            clocks.Set(run.Id, clock);
        }

        asked[run.Id] = time.GetUtcNow();
        return runs.GetOrAdd(run.Id, _ => new LiveRun(run, log, screens, clocks));
    }
}
