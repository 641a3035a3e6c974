using CookAlong.Intake.MealFiles;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Meals;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Features.Dishes;

/// <summary>The household's dishes and all their versions. An edit made on an older state is refused.</summary>
public sealed class DishBook(IDbContextFactory<CookAlongDb> database, TimeProvider clock)
{
    /// <summary>Those in the library by name, deleted ones behind them.</summary>
    public async Task<IReadOnlyList<KeptDish>> AllAsync(CancellationToken stop = default)
    {
        await using var db = await database.CreateDbContextAsync(stop);
        var all = await Current(db).ToListAsync(stop);
        return [.. all.Select(one => Open(one.Row, one.Version)).OrderBy(dish => dish.Row.DeletedAt is not null).ThenBy(dish => dish.Dish.Name, StringComparer.OrdinalIgnoreCase)];
    }

    /// <summary>Null when it is not there, or deleted.</summary>
    public async Task<KeptDish?> OpenAsync(Guid dish, CancellationToken stop = default)
    {
        await using var db = await database.CreateDbContextAsync(stop);
        return await Current(db).SingleOrDefaultAsync(one => one.Row.Id == dish && one.Row.DeletedAt == null, stop) is { } one ? Open(one.Row, one.Version) : null;
    }

    /// <summary>An id for a dish that is yet to be added, so that what is made of it meanwhile can name it.</summary>
    public Guid NewId() => Guid.CreateVersion7(clock.GetUtcNow());

    public Task<DishEdit> AddAsync(string document, CancellationToken stop = default) => AddAsync(NewId(), document, stop);

    public async Task<DishEdit> AddAsync(Guid id, string document, CancellationToken stop = default)
    {
        var read = DishFile.Read(document);
        if (!read.IsGood)
        {
            return new DishEdit.Refused(read.Errors);
        }

        var (row, version) = Rows(id, document, read.Dish.Name);
        await using var db = await database.CreateDbContextAsync(stop);
        db.AddRange(row, version);
        await db.SaveChangesAsync(stop);
        return new DishEdit.Kept(new KeptDish(row, version, read.Dish));
    }

    /// <summary>Many at once, all or none.</summary>
    /// <returns>Their names.</returns>
    /// <exception cref="InvalidDataException">One is no dish.</exception>
    public async Task<IReadOnlyList<string>> AddAllAsync(IEnumerable<string> documents, CancellationToken stop = default)
    {
        await using var db = await database.CreateDbContextAsync(stop);
        List<string> names = [];
        foreach (var document in documents)
        {
            var read = DishFile.Read(document);
            names.Add(read.IsGood ? read.Dish.Name : throw new InvalidDataException($"not a dish: {read.Errors[0].Place} {read.Errors[0].Problem}"));
            var (row, version) = Rows(NewId(), document, names[^1]);
            db.AddRange(row, version);
        }

        await db.SaveChangesAsync(stop);
        return names;
    }

    (DishRow Row, DishVersionRow Version) Rows(Guid id, string document, string name)
    {
        var row = new DishRow { Id = id, Name = name, ChangedAt = clock.GetUtcNow().ToUnixTimeMilliseconds() };
        var version = new DishVersionRow { Dish = row.Id, Number = row.Number, Document = document, ChangedAt = row.ChangedAt };
        return (row, version);
    }

    public Task<DishEdit> CopyAsync(KeptDish dish, CancellationToken stop = default)
    {
        var copy = dish.Document;
        copy.Rename($"{dish.Dish.Name}, copy");
        return AddAsync(copy.Text, stop);
    }

    /// <summary>Keeps a document at once, if it is a dish.</summary>
    /// <param name="sitting">The version that this sitting of its cook began and goes on changing; null begins a new one.</param>
    public async Task<DishEdit> KeepAsync(KeptDish dish, string document, int? sitting, CancellationToken stop = default)
    {
        var read = DishFile.Read(document);
        if (!read.IsGood)
        {
            return new DishEdit.Refused(read.Errors);
        }

        var now = clock.GetUtcNow().ToUnixTimeMilliseconds();
        var (id, revision, number) = (dish.Row.Id, dish.Row.Revision, dish.Row.Number == sitting ? dish.Row.Number : dish.Row.Number + 1);
        await using var db = await database.CreateDbContextAsync(stop);
        await using var whole = await db.Database.BeginTransactionAsync(stop);
        var changed = await db.Dishes.Where(row => row.Id == id && row.Revision == revision && row.DeletedAt == null).ExecuteUpdateAsync(
            set => set
                .SetProperty(row => row.Name, read.Dish.Name)
                .SetProperty(row => row.Number, number)
                .SetProperty(row => row.Revision, revision + 1)
                .SetProperty(row => row.ChangedAt, now),
            stop);
        if (changed == 0)
        {
            return new DishEdit.Outdated();
        }

        if (number == dish.Row.Number)
        {
            await db.DishVersions.Where(row => row.Dish == id && row.Number == number).ExecuteUpdateAsync(
                set => set.SetProperty(row => row.Document, document).SetProperty(row => row.ChangedAt, now), stop);
        }
        else
        {
            db.DishVersions.Add(new DishVersionRow { Dish = id, Number = number, Document = document, ChangedAt = now });
            await db.SaveChangesAsync(stop);
        }

        await whole.CommitAsync(stop);
        return new DishEdit.Kept((await OpenAsync(id, stop))!);
    }

    /// <summary>The latest first.</summary>
    public async Task<IReadOnlyList<DishVersion>> VersionsAsync(Guid dish, CancellationToken stop = default)
    {
        await using var db = await database.CreateDbContextAsync(stop);
        var versions = await db.DishVersions.Where(row => row.Dish == dish).OrderByDescending(row => row.Number).Select(row => new { row.Number, row.ChangedAt }).ToListAsync(stop);
        return [.. versions.Select(row => new DishVersion(row.Number, DateTimeOffset.FromUnixTimeMilliseconds(row.ChangedAt)))];
    }

    /// <summary>What a version said. Versions are never taken away.</summary>
    public async Task<string> DocumentAsync(Guid dish, int version, CancellationToken stop = default)
    {
        await using var db = await database.CreateDbContextAsync(stop);
        return await db.DishVersions.Where(row => row.Dish == dish && row.Number == version).Select(row => row.Document).SingleAsync(stop);
    }

    /// <summary>Out of the library, to be brought back.</summary>
    public Task DeleteAsync(Guid dish, CancellationToken stop = default) => MarkAsync(dish, clock.GetUtcNow().ToUnixTimeMilliseconds(), stop);

    public Task BringBackAsync(Guid dish, CancellationToken stop = default) => MarkAsync(dish, null, stop);

    /// <summary>The meals that have dishes from each of the library's.</summary>
    public Task<ILookup<Guid, (Guid Meal, string Name)>> UsedInAsync(CancellationToken stop = default) => UsedInAsync("fromDish", stop);

    /// <summary>The meals that have dishes from this one.</summary>
    public async Task<IReadOnlyList<(Guid Meal, string Name)>> UsedInAsync(Guid dish, CancellationToken stop = default) => [.. (await UsedInAsync(dish.ToString(), stop))[dish]];

    /// <param name="words">Only files with these words are opened.</param>
    async Task<ILookup<Guid, (Guid Meal, string Name)>> UsedInAsync(string words, CancellationToken stop)
    {
        await using var db = await database.CreateDbContextAsync(stop);
        var meals = await db.Meals.AsNoTracking().Where(row => row.Document.Contains(words)).OrderBy(row => row.Name).ToListAsync(stop);
        return meals
            .SelectMany(row => MealDocument.Of(row.Document).FromDishes.Values.Distinct()
                .Select(from => (IsKnown: Guid.TryParse(from, out var dish), Dish: dish, Meal: (row.Id, row.Name))))
            .Where(one => one.IsKnown)
            .ToLookup(one => one.Dish, one => one.Meal);
    }

    async Task MarkAsync(Guid dish, long? deletedAt, CancellationToken stop)
    {
        await using var db = await database.CreateDbContextAsync(stop);
        await db.Dishes.Where(row => row.Id == dish).ExecuteUpdateAsync(
            set => set.SetProperty(row => row.DeletedAt, deletedAt).SetProperty(row => row.Revision, row => row.Revision + 1), stop);
    }

    static IQueryable<Pair> Current(CookAlongDb db) =>
        from row in db.Dishes.AsNoTracking()
        join version in db.DishVersions.AsNoTracking() on new { row.Id, row.Number } equals new { Id = version.Dish, version.Number }
        select new Pair { Row = row, Version = version };

    // What was kept was read before it was kept, so a version that cannot be read is our bug.
    static KeptDish Open(DishRow row, DishVersionRow version) =>
        new(row, version, DishFile.Read(version.Document).Dish ?? throw new InvalidDataException($"version {version.Number} of the dish {row.Id} is no dish"));

    sealed class Pair
    {
        public required DishRow Row { get; init; }

        public required DishVersionRow Version { get; init; }
    }
}
