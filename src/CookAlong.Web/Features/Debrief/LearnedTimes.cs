using System.Collections.Concurrent;
using System.Collections.Immutable;
using CookAlong.Domain;
using CookAlong.Domain.Debrief.Learning;
using CookAlong.Domain.Debrief.Learning.Ovens;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Runs;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Meals;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Features.Debrief;

/// <summary>What the household's runs say of its pace, and what of it its cook plans with.</summary>
public sealed class LearnedTimes(IDbContextFactory<CookAlongDb> databases, EventLog log, TimeProvider clock)
{
    // A run that is over never changes, so its log is read once.
    readonly ConcurrentDictionary<Guid, TimedMeal> read = new();

    /// <summary>Every timing of every meal that was really cooked to its end, but for those that were forgotten.</summary>
    public async Task<ImmutableArray<Timing>> TimingsAsync(CancellationToken stop) => [.. (await MealsAsync(stop)).SelectMany(meal => meal.Timings)];

    /// <summary>The same by meal, the latest first; meals in which nothing was timed are not among them, nor invented ones once the household has cooked.</summary>
    public async Task<ImmutableArray<TimedMeal>> MealsAsync(CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        var runs = await db.Set<RunRow>().AsNoTracking()
            .Where(run => run.Rate == null && run.Ended != null && !db.Set<ForgottenRunRow>().Any(forgotten => forgotten.Run == run.Id))
            .OrderByDescending(run => run.Began).ToListAsync(stop);
        var meals = ImmutableArray.CreateBuilder<TimedMeal>();
        foreach (var run in runs)
        {
            if (!read.TryGetValue(run.Id, out var known))
            {
                read[run.Id] = known = await ReadAsync(db, run, stop);
            }

            if (!known.Timings.IsEmpty)
            {
                meals.Add(known);
            }
        }

        // What invented people did says nothing of real ones.
        return meals.Any(meal => !meal.IsInvented) ? [.. meals.Where(meal => !meal.IsInvented)] : meals.ToImmutable();
    }

    /// <summary>The run teaches nothing from now on; its log stays.</summary>
    public async Task ForgetMealAsync(Guid run, CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        await using var whole = await db.Database.BeginTransactionAsync(stop);
        if (await db.Set<RunRow>().AnyAsync(one => one.Id == run, stop) && !await db.Set<ForgottenRunRow>().AnyAsync(one => one.Run == run, stop))
        {
            db.Add(new ForgottenRunRow { Run = run });
            await db.SaveChangesAsync(stop);
        }

        await whole.CommitAsync(stop);
    }

    /// <summary>What a dish of this meal is known by; by its name alone where the meal is gone.</summary>
    public async Task<Func<Dish, string>> DishOfAsync(Guid meal, CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        return await DishOfAsync(db, meal, stop);
    }

    /// <summary>What it plans with, by dish and words.</summary>
    public async Task<IReadOnlyList<LearnedTimeRow>> UsedAsync(CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        return await db.Set<LearnedTimeRow>().AsNoTracking().OrderBy(row => row.DishName).ThenBy(row => row.Text).ToListAsync(stop);
    }

    /// <summary>From now on the step is planned so, wherever the household's meals have it.</summary>
    public async Task UseAsync(Lesson lesson, CancellationToken stop)
    {
        var (key, time) = (lesson.Learned.Step, AcceptedTime.Of(lesson.Learned));
        await using var db = await databases.CreateDbContextAsync(stop);
        await using var whole = await db.Database.BeginTransactionAsync(stop);
        await db.Set<LearnedTimeRow>().Where(row => row.Dish == key.Dish && row.Text == key.Text).ExecuteDeleteAsync(stop);
        db.Add(new LearnedTimeRow
        {
            Dish = key.Dish,
            Text = key.Text,
            DishName = lesson.Dish.Name,
            Least = time.Least,
            Likely = time.Likely,
            Most = time.Most,
            Meals = lesson.Learned.Meals,
            AcceptedAt = clock.GetUtcNow().ToUnixTimeMilliseconds(),
        });
        await db.SaveChangesAsync(stop);
        await OutdatePlansAsync(db, row => row == key, stop);
        await whole.CommitAsync(stop);
    }

    /// <summary>The step is planned as written again; what was timed stays in the logs.</summary>
    public Task ForgetAsync(StepKey key, CancellationToken stop) => ForgetAsync(row => row == key, stop);

    /// <summary>Every step is planned as written, and no meal until now teaches anything.</summary>
    public async Task ForgetAllAsync(CancellationToken stop)
    {
        foreach (var meal in await MealsAsync(stop))
        {
            await ForgetMealAsync(meal.Run, stop);
        }

        await ForgetAsync(_ => true, stop);
    }

    async Task ForgetAsync(Func<StepKey, bool> which, CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        await using var whole = await db.Database.BeginTransactionAsync(stop);
        var rows = await db.Set<LearnedTimeRow>().ToListAsync(stop);
        var keys = rows.Select(row => new StepKey(row.Dish, row.Text)).Where(which).ToHashSet();
        db.RemoveRange(rows.Where(row => keys.Contains(new StepKey(row.Dish, row.Text))));
        await db.SaveChangesAsync(stop);
        await OutdatePlansAsync(db, keys.Contains, stop);
        await whole.CommitAsync(stop);
    }

    /// <summary>A plan was made with other minutes: meals that have the step count as changed since, so that nobody cooks by it unasked.</summary>
    static async Task OutdatePlansAsync(CookAlongDb db, Func<StepKey, bool> which, CancellationToken stop)
    {
        foreach (var row in await db.Meals.AsNoTracking().ToListAsync(stop))
        {
            var (dishOf, meal) = (MealBook.DishOf(row.Document), Intake.MealFiles.MealFile.Read(row.Document).Meal!);
            if (meal.Dishes.Any(dish => dish.Steps.Any(step => which(StepKey.Of(dishOf(dish), step.Text)))))
            {
                await db.Meals.Where(one => one.Id == row.Id).ExecuteUpdateAsync(set => set.SetProperty(one => one.Version, one => one.Version + 1), stop);
            }
        }
    }

    async Task<TimedMeal> ReadAsync(CookAlongDb db, RunRow run, CancellationToken stop)
    {
        var events = await log.ReadAsync(new RunId(run.Id), stop).Select(one => one.Logged).ToArrayAsync(stop);
        var written = await db.Set<WrittenTimeRow>().AsNoTracking().Where(row => row.Run == run.Id)
            .ToDictionaryAsync(row => (new StepId(row.Step), row.Option), row => new WrittenTime(row.Least, row.Likely, row.Most), stop);
        var zone = events.Select(logged => logged.Event).OfType<RunEvent.RunStarted>().Single().Meal.TimeZone;
        return new TimedMeal(
            run.Id,
            run.Name,
            LocalTime.Show(Minute.Of(DateTimeOffset.FromUnixTimeMilliseconds(run.Began)), zone),
            Timing.Of(new RunId(run.Id), events, await DishOfAsync(db, run.Meal, stop), way => written.TryGetValue(way, out var time) ? time : null))
        {
            Ovens = [.. HotTaps.Of(events).Select(one => (OvenOf(events, one.Oven), one.Tap))],
            Joints = [.. JointReadings.Of(new RunId(run.Id), events).Select(one => (OvenOf(events, one.Oven), one.Reading))],
            Dials = [.. DialReadings.Of(new RunId(run.Id), events).Select(one => (OvenOf(events, one.Oven), one.Reading))],
        };
    }

    static string OvenOf(IReadOnlyList<Logged> events, OvenId id) =>
        events.Select(logged => logged.Event).OfType<RunEvent.RunStarted>().Single().Meal.Kitchen.Ovens.Single(oven => oven.Id == id).Name;

    static async Task<Func<Dish, string>> DishOfAsync(CookAlongDb db, Guid meal, CancellationToken stop) =>
        await db.Meals.AsNoTracking().SingleOrDefaultAsync(row => row.Id == meal, stop) is { } row ? MealBook.DishOf(row.Document) : dish => dish.Name;
}

/// <summary>A meal that was cooked, and what was timed in it.</summary>
/// <param name="Began">By the clocks of where it was cooked.</param>
public sealed record TimedMeal(Guid Run, string Name, DateTimeOffset Began, ImmutableArray<Timing> Timings)
{
    /// <summary>When its ovens were said to be hot, by their names.</summary>
    public ImmutableArray<(string Oven, HotTap Tap)> Ovens { get; init; } = [];

    /// <summary>What thermometers in its ovens showed, by their names.</summary>
    public ImmutableArray<(string Oven, DialReading Reading)> Dials { get; init; } = [];

    /// <summary>What joints' readings say of the ovens they roasted in, by their names.</summary>
    public ImmutableArray<(string Oven, JointReading Reading)> Joints { get; init; } = [];

    /// <summary>It came with the demo.</summary>
    public bool IsInvented => EarlierMeals.Invented.ContainsKey(Run);
}
