using System.Collections.Immutable;
using CookAlong.Domain;
using CookAlong.Domain.Debrief.Learning;
using CookAlong.Domain.Debrief.Learning.Ovens;
using CookAlong.Domain.Meals;
using CookAlong.Intake.MealFiles;
using CookAlong.Web.Data;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Features.Meals;

/// <summary>A meal as it is kept: its row, and what the row's file says, with what the household takes for its steps and its ovens where its cook accepted that.</summary>
public sealed record KeptMeal(MealRow Row, Meal Meal)
{
    /// <summary>What the file says where <see cref="Meal"/> says what was learned, by step and way (-1 = as written).</summary>
    public ImmutableDictionary<(StepId Step, int Option), WrittenTime> Written { get; init; } = [];
}

/// <summary>The household's meals. Every change is made on a version; one made on an older version is refused.</summary>
public sealed class MealBook(IDbContextFactory<CookAlongDb> database, TimeProvider clock)
{
    /// <summary>Latest changed first.</summary>
    public async Task<IReadOnlyList<KeptMeal>> AllAsync(CancellationToken stop = default)
    {
        await using var db = await database.CreateDbContextAsync(stop);
        var rows = await db.Meals.AsNoTracking().OrderByDescending(row => row.ChangedAt).ToListAsync(stop);
        var accepted = await AcceptedAsync(db, stop);
        return [.. rows.Select(row => Open(row, accepted))];
    }

    /// <summary>Null when it is not (or no longer) there.</summary>
    public async Task<KeptMeal?> OpenAsync(Guid meal, CancellationToken stop = default)
    {
        await using var db = await database.CreateDbContextAsync(stop);
        return await db.Meals.AsNoTracking().SingleOrDefaultAsync(row => row.Id == meal, stop) is { } row ? Open(row, await AcceptedAsync(db, stop)) : null;
    }

    /// <summary>Takes a meal file in; nothing is kept of one with errors.</summary>
    /// <param name="fromNow">Refuse table times that are past.</param>
    public Task<MealEdit> AddAsync(string file, bool fromNow, CancellationToken stop = default) => AddAsync(Guid.CreateVersion7(clock.GetUtcNow()), file, fromNow, stop);

    /// <summary>Under an id that whoever brings it names; outdated where there is a meal of that id already.</summary>
    public async Task<MealEdit> AddAsync(Guid id, string file, bool fromNow, CancellationToken stop = default)
    {
        var now = clock.GetUtcNow();
        var read = MealFile.Read(file, fromNow ? Minute.Of(now) : null);
        if (!read.IsGood)
        {
            return new MealEdit.Refused(read.Errors);
        }

        await using var db = await database.CreateDbContextAsync(stop);
        var row = new MealRow { Id = id, Name = read.Meal.Name, Document = file, ChangedAt = now.ToUnixTimeMilliseconds() };
        db.Meals.Add(row);
        try
        {
            await db.SaveChangesAsync(stop);
        }
        catch (DbUpdateException failure) when (CookAlongDb.IsTaken(failure))
        {
            return new MealEdit.Outdated();
        }

        return new MealEdit.Kept(new KeptMeal(row, read.Meal));
    }

    public Task<MealEdit> CopyAsync(KeptMeal meal, CancellationToken stop = default)
    {
        var copy = MealDocument.Of(meal.Row.Document);
        copy.Rename($"{meal.Meal.Name}, copy");
        return AddAsync(copy.Text, fromNow: false, stop);
    }

    /// <summary>The whole meal on another day, its times of the day as they were.</summary>
    public Task<MealEdit> AgainAsync(KeptMeal meal, DateOnly day, CancellationToken stop = default)
    {
        var copy = MealDocument.Of(meal.Row.Document);
        copy.MoveTo(day);
        return AddAsync(copy.Text, fromNow: true, stop);
    }

    /// <summary>Changes the file and keeps it at once, if it is still a meal afterwards.</summary>
    /// <param name="fromNow">Refuse table times that are past.</param>
    public async Task<MealEdit> EditAsync(KeptMeal meal, Action<MealDocument> edit, bool fromNow, CancellationToken stop = default)
    {
        var document = MealDocument.Of(meal.Row.Document);
        edit(document);
        return await KeepAsync(meal, document.Text, fromNow, stop);
    }

    /// <summary>Gives the meal back the file it had, if nobody has changed it since.</summary>
    public Task<MealEdit> PutBackAsync(KeptMeal meal, string document, CancellationToken stop = default) => KeepAsync(meal, document, fromNow: false, stop);

    async Task<MealEdit> KeepAsync(KeptMeal meal, string text, bool fromNow, CancellationToken stop)
    {
        var now = clock.GetUtcNow();
        var read = MealFile.Read(text, fromNow ? Minute.Of(now) : null);
        if (!read.IsGood)
        {
            return new MealEdit.Refused(read.Errors);
        }

        await using var db = await database.CreateDbContextAsync(stop);
        var (id, version) = (meal.Row.Id, meal.Row.Version);
        var changed = await db.Meals.Where(row => row.Id == id && row.Version == version).ExecuteUpdateAsync(
            set => set
                .SetProperty(row => row.Name, read.Meal.Name)
                .SetProperty(row => row.Document, text)
                .SetProperty(row => row.Version, version + 1)
                .SetProperty(row => row.ChangedAt, now.ToUnixTimeMilliseconds()),
            stop);
        return changed == 1 ? new MealEdit.Kept((await OpenAsync(id, stop))!) : new MealEdit.Outdated();
    }

    /// <summary>With the plans made for it, and its shopping list.</summary>
    public async Task DeleteAsync(Guid meal, CancellationToken stop = default)
    {
        await using var db = await database.CreateDbContextAsync(stop);
        await using var whole = await db.Database.BeginTransactionAsync(stop);
        await db.Plans.Where(row => row.Meal == meal).ExecuteDeleteAsync(stop);
        await db.Set<ShoppingTapRow>().Where(row => row.Meal == meal && row.Setting == null).ExecuteDeleteAsync(stop);
        await db.Meals.Where(row => row.Id == meal).ExecuteDeleteAsync(stop);
        await whole.CommitAsync(stop);
    }

    /// <summary>What a dish is known by from meal to meal: its place in the library, else its name.</summary>
    public static Func<Dish, string> DishOf(string document)
    {
        var from = MealDocument.Of(document).FromDishes;
        return dish => from.GetValueOrDefault(dish.Id) ?? dish.Name;
    }

    static async Task<Accepted> AcceptedAsync(CookAlongDb db, CancellationToken stop) => new(
        await db.Set<LearnedTimeRow>().AsNoTracking()
            .Select(row => new AcceptedTime(new StepKey(row.Dish, row.Text), row.Least, row.Likely, row.Most))
            .ToDictionaryAsync(time => time.Step, stop),
        (await db.Set<OvenFigureRow>().AsNoTracking().ToListAsync(stop)).Select(row => row.Accepted).ToDictionary(oven => oven.Name));

    // What was kept was read before it was kept, so a row that cannot be read is our bug.
    static KeptMeal Open(MealRow row, Accepted accepted)
    {
        var meal = MealFile.Read(row.Document).Meal ?? throw new InvalidDataException($"the kept meal {row.Id} is no meal file");
        var measured = accepted.Ovens.Count == 0 ? meal : AcceptedOven.Apply(meal, accepted.Ovens);
        if (accepted.Times.Count == 0)
        {
            return new KeptMeal(row, measured);
        }

        var (learned, written) = AcceptedTime.Apply(measured, DishOf(row.Document), accepted.Times);
        return new KeptMeal(row, learned) { Written = written };
    }

    /// <summary>What the household's cook takes in place of what meals say.</summary>
    sealed record Accepted(IReadOnlyDictionary<StepKey, AcceptedTime> Times, IReadOnlyDictionary<string, AcceptedOven> Ovens);
}
