using System.Runtime.CompilerServices;
using CookAlong.Domain;
using CookAlong.Domain.Debrief.Learning;
using CookAlong.Domain.Runs;
using CookAlong.Domain.Runs.Rehearsing;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Data;

/// <summary>What happened in the runs, in order, for good: an event that <see cref="AppendAsync"/> took survives a power cut.</summary>
public sealed class EventLog(IDbContextFactory<CookAlongDb> databases)
{
    /// <summary>The run as its events make it; null when there is none.</summary>
    public async Task<Run?> LoadAsync(RunId id, CancellationToken stop = default)
    {
        var run = Run.Empty(id);
        await foreach (var (_, logged) in ReadAsync(id, stop))
        {
            run = run.Apply(logged);
        }

        return run.HasBegun ? run : null;
    }

    /// <summary>The run with what was written since: the same one when that is nothing.</summary>
    public async Task<Run> CatchUpAsync(Run run, CancellationToken stop = default)
    {
        await foreach (var (_, logged) in ReadAsync(run, stop))
        {
            run = run.Apply(logged);
        }

        return run;
    }

    /// <summary>How far the log of each run has come that has not ended, and of these.</summary>
    public async Task<IReadOnlyDictionary<RunId, long>> StandingsAsync(IEnumerable<RunId> also, CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        Guid[] ids = [.. also.Select(run => run.Value)];
        var standings = await db.Set<RunRow>()
            .Where(run => run.Ended == null || ids.Contains(run.Id))
            .Select(run => new { run.Id, Last = db.Set<RunEventRow>().Where(happened => happened.Run == run.Id).Max(happened => happened.Sequence) })
            .ToListAsync(stop);
        return standings.ToDictionary(one => new RunId(one.Id), one => one.Last);
    }

    /// <summary>All that happened in a run, in order: each row and the event it holds.</summary>
    public IAsyncEnumerable<(RunEventRow Row, Logged Logged)> ReadAsync(RunId id, CancellationToken stop = default) => ReadAsync(Run.Empty(id), stop);

    async IAsyncEnumerable<(RunEventRow Row, Logged Logged)> ReadAsync(Run run, [EnumeratorCancellation] CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        var (id, from) = (run.Id.Value, run.Sequence);
        // A plan is read by the meal as it was then: dishes may have been left out and table times moved since it began.
        var rows = db.Set<RunEventRow>().AsNoTracking().Where(row => row.Run == id && row.Sequence > from).OrderBy(row => row.Sequence).AsAsyncEnumerable();
        await foreach (var row in rows.WithCancellation(stop))
        {
            var happened = StoredEvent.Read(row.Kind, row.Document, run.HasBegun ? run.Meal : null);
            var logged = new Logged(
                row.Sequence,
                new CommandId(row.Command),
                row.By is { } by ? new PersonId(by) : null,
                DateTimeOffset.FromUnixTimeMilliseconds(row.At),
                happened);
            run = run.Apply(logged);
            yield return (row, logged);
        }
    }

    /// <summary>Runs that have not ended, the oldest first.</summary>
    public async Task<IReadOnlyList<RunId>> UnfinishedAsync(CancellationToken stop = default)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        var ids = await db.Set<RunRow>().Where(row => row.Ended == null).OrderBy(row => row.Began).Select(row => row.Id).ToListAsync(stop);
        return [.. ids.Select(id => new RunId(id))];
    }

    /// <summary>A rehearsal's clock; null for a real run.</summary>
    public async Task<RunClock?> ClockOfAsync(RunId id, CancellationToken stop = default)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        var row = await db.Set<RunRow>().AsNoTracking().SingleAsync(row => row.Id == id.Value, stop);
        return row is { Rate: { } rate, Shows: { } shows }
            ? new RunClock(DateTimeOffset.FromUnixTimeMilliseconds(row.Began), DateTimeOffset.FromUnixTimeMilliseconds(shows), rate)
            : null;
    }

    /// <summary>The run of this meal that is going on, or its rehearsal; null when there is none.</summary>
    public async Task<RunId?> UnfinishedAsync(Guid meal, bool isRehearsal, CancellationToken stop = default)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        var row = await Unfinished(db, meal, isRehearsal).FirstOrDefaultAsync(stop);
        return row is null ? null : new RunId(row.Id);
    }

    /// <summary>The latest run of each meal that is being cooked or was; rehearsals are none.</summary>
    public async Task<IReadOnlyDictionary<Guid, (RunId Run, bool IsOver)>> LatestAsync(CancellationToken stop = default)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        var rows = await db.Set<RunRow>().AsNoTracking().Where(row => row.Rate == null).OrderBy(row => row.Began).ToListAsync(stop);
        return rows.GroupBy(row => row.Meal).ToDictionary(runs => runs.Key, runs => (new RunId(runs.Last().Id), runs.Last().Ended is not null));
    }

    /// <summary>The meal that a run cooks; null when there is no such run.</summary>
    public async Task<Guid?> MealOfAsync(RunId id, CancellationToken stop = default)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        return await db.Set<RunRow>().Where(row => row.Id == id.Value).Select(row => (Guid?)row.Meal).SingleOrDefaultAsync(stop);
    }

    /// <summary>Writes the first events of a new run, unless the meal's run, or its rehearsal, goes on already.</summary>
    /// <param name="written">What the recipes say where its meal says what was learned.</param>
    /// <returns>The run that goes on: this one, or the one before.</returns>
    public async Task<RunId> BeginAsync(RunRow row, IReadOnlyList<Logged> events, IReadOnlyDictionary<(StepId Step, int Option), WrittenTime> written)
    {
        var meal = events.Select(logged => logged.Event).OfType<RunEvent.RunStarted>().Single().Meal;
        await using var db = await databases.CreateDbContextAsync();
        // SQLite lets one begin at a time by itself.
        await using var whole = await db.Database.BeginTransactionAsync();
        if (!db.Database.IsSqlite())
        {
            await db.Database.ExecuteSqlAsync($"SELECT pg_advisory_xact_lock(hashtextextended({row.Meal.ToString()}, 0))");
        }

        if (await Unfinished(db, row.Meal, row.Rate is not null).FirstOrDefaultAsync() is { } going)
        {
            return new RunId(going.Id);
        }

        db.Add(row);
        db.AddRange(written.Select(way => new WrittenTimeRow
        {
            Run = row.Id,
            Step = way.Key.Step.Value,
            Option = way.Key.Option,
            Least = (int)way.Value.Least,
            Likely = (int)way.Value.Likely,
            Most = (int)way.Value.Most,
        }));
        db.AddRange(events.Select((logged, part) => RowOf(new RunId(row.Id), logged, part, meal)));
        await db.SaveChangesAsync();
        await whole.CommitAsync();
        return new RunId(row.Id);
    }

    /// <summary>
    /// Writes all events of one command, or none. False when the log has moved on: another event has that number, or
    /// the command was written before. The caller then loads the run again and decides again.
    /// </summary>
    public async Task<bool> AppendAsync(Run run, IReadOnlyList<Logged> events)
    {
        await using var db = await databases.CreateDbContextAsync();
        db.AddRange(events.Select((logged, part) => RowOf(run.Id, logged, part, run.Meal)));
        if (events.FirstOrDefault(logged => logged.Event is RunEvent.RunEnded) is { } end)
        {
            var row = await db.Set<RunRow>().SingleAsync(one => one.Id == run.Id.Value);
            row.Ended = end.At.ToUnixTimeMilliseconds();
        }

        try
        {
            await db.SaveChangesAsync();
            return true;
        }
        catch (DbUpdateException failure) when (CookAlongDb.IsTaken(failure))
        {
            return false;
        }
    }

    static IQueryable<RunRow> Unfinished(CookAlongDb db, Guid meal, bool isRehearsal) =>
        db.Set<RunRow>().Where(row => row.Meal == meal && row.Ended == null && (row.Rate != null) == isRehearsal).OrderBy(row => row.Began);

    static RunEventRow RowOf(RunId run, Logged logged, int part, Domain.Meals.Meal meal)
    {
        var (kind, document) = StoredEvent.Write(logged.Event, meal);
        return new RunEventRow
        {
            Run = run.Value,
            Sequence = logged.Sequence,
            Command = logged.Command.Value,
            Part = part,
            By = logged.By?.Value,
            At = logged.At.ToUnixTimeMilliseconds(),
            Kind = kind,
            Document = document,
        };
    }
}
