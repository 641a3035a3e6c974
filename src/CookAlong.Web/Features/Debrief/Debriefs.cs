using System.Collections.Immutable;
using CookAlong.Domain.Debrief;
using CookAlong.Domain.Debrief.Learning;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Runs;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Debrief.Pictures;
using CookAlong.Web.Features.Live;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Features.Debrief;

/// <summary>Runs looked at afterwards, and what the household says of them.</summary>
public sealed class Debriefs(IDbContextFactory<CookAlongDb> databases, EventLog log, LearnedTimes times, DebriefPhotos photos, TimeProvider clock)
{
    /// <summary>Seen less often, a person's or a kind's pace is not spoken of.</summary>
    const int LeastTimings = 3, LeastMealsOfPerson = 2, LeastTimingsOfPerson = 8;

    /// <summary>A pace nearer to what is written is as written.</summary>
    const double WorthSaying = 1.1;

    /// <param name="live">The run, over, as whoever looks may see it.</param>
    public async Task<DebriefView> OfAsync(LiveView live, CancellationToken stop)
    {
        var events = await log.ReadAsync(live.Run, stop).Select(one => one.Logged).ToArrayAsync(stop);
        var debrief = RunDebrief.Of(events);
        await using var db = await databases.CreateDbContextAsync(stop);
        var row = await db.Set<RunRow>().AsNoTracking().SingleAsync(one => one.Id == live.Run.Value, stop);
        var notes = await db.Set<DebriefNoteRow>().AsNoTracking().Where(note => note.Run == row.Id).ToDictionaryAsync(note => note.Dish, stop);
        if (live.Rate is not null)
        {
            // Nobody's hands were in a rehearsal.
            return new DebriefView(live, row.Meal, debrief, notes, [], [], []);
        }

        var all = await times.TimingsAsync(stop);
        var pace = new HouseholdPace(all);
        var used = await times.UsedAsync(stop);
        // A dish may have two steps of the same words, which are one to learn of.
        var own = all.Where(timing => timing.Run == live.Run).DistinctBy(timing => timing.Step).ToDictionary(timing => timing.Step);
        var dishOf = await times.DishOfAsync(row.Meal, stop);
        return new DebriefView(
            live,
            row.Meal,
            debrief,
            notes,
            [
                .. (from dish in debrief.Meal.Dishes
                    from step in dish.Steps
                    let key = StepKey.Of(dishOf(dish), step.Text)
                    where own.ContainsKey(key)
                    let learned = pace.Of(key, own[key].Kind, own[key].Written)
                    let written = new Durations((int)learned.Written.Least, (int)learned.Written.Likely, (int)learned.Written.Most)
                    select new Lesson(dish, step, learned, written, AcceptedTime.Of(learned).Of(written), used.Any(one => one.Dish == key.Dish && one.Text == key.Text)))
                    .DistinctBy(lesson => lesson.Learned.Step)
                    .OrderByDescending(lesson => Math.Abs(Math.Log(lesson.Learned.Factor))),
            ],
            [.. pace.Kinds.Where(kind => kind.Timings >= LeastTimings && IsWorthSaying(kind))],
            [.. pace.People.Where(person => person is { Timings: >= LeastTimingsOfPerson, Meals: >= LeastMealsOfPerson } && IsWorthSaying(person))])
        {
            Photos = await photos.OfAsync(row.Id, stop),
        };
    }

    /// <summary>The last time a meal, or the one it is again, was really cooked to its end; null = never.</summary>
    public async Task<Guid?> LastOfAsync(Guid meal, CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        return await db.Set<RunRow>().Where(run => run.Meal == meal && run.Rate == null && run.Ended != null).OrderByDescending(run => run.Began).Select(run => (Guid?)run.Id).FirstOrDefaultAsync(stop)
            ?? await db.Set<AgainRow>().Where(again => again.Meal == meal).Select(again => (Guid?)again.Run).SingleOrDefaultAsync(stop);
    }

    public async Task NoteAgainAsync(Guid meal, Guid run, CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        db.Add(new AgainRow { Meal = meal, Run = run });
        await db.SaveChangesAsync(stop);
    }

    /// <summary>Keeps what is said of each dish ("" = the whole meal); "" takes back what was, null leaves it as it is.</summary>
    public async Task SayAsync(Guid run, IEnumerable<(string Dish, string? Verdict, string? Note)> said, CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        // Whoever says something at the same time waits, and then finds what was said.
        await using var whole = await db.Database.BeginTransactionAsync(stop);
        var known = await db.Set<DebriefNoteRow>().Where(note => note.Run == run).ToDictionaryAsync(note => note.Dish, stop);
        foreach (var (dish, newVerdict, newNote) in said)
        {
            var row = known.GetValueOrDefault(dish);
            var (verdict, note) = (newVerdict ?? row?.Verdict ?? "", newNote ?? row?.Note ?? "");
            if (row is not null && verdict.Length + note.Length == 0)
            {
                db.Remove(row);
            }
            else if (row is not null && (row.Verdict, row.Note) != (verdict, note))
            {
                (row.Verdict, row.Note, row.ChangedAt) = (verdict, note, clock.GetUtcNow().ToUnixTimeMilliseconds());
            }
            else if (row is null && verdict.Length + note.Length > 0)
            {
                db.Add(new DebriefNoteRow { Run = run, Dish = dish, Verdict = verdict, Note = note, ChangedAt = clock.GetUtcNow().ToUnixTimeMilliseconds() });
            }
        }

        await db.SaveChangesAsync(stop);
        await whole.CommitAsync(stop);
    }

    /// <summary>It is not as written.</summary>
    internal static bool IsWorthSaying(Pace pace) => pace.Factor is >= WorthSaying or <= 1 / WorthSaying;
}
