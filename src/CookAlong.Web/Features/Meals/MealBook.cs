using CookAlong.Web.Data;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Features.Meals;

/// <summary>The household's meals. Every change says which version it was made on; one made on an older version is refused.</summary>
public sealed class MealBook(IDbContextFactory<CookAlongDb> database, TimeProvider clock)
{
    public async Task<IReadOnlyList<MealRow>> AllAsync(CancellationToken stop = default)
    {
        await using var db = await database.CreateDbContextAsync(stop);
        return await db.Meals.AsNoTracking().ToListAsync(stop);
    }

    public async Task<MealRow?> FindAsync(Guid meal, CancellationToken stop = default)
    {
        await using var db = await database.CreateDbContextAsync(stop);
        return await db.Meals.AsNoTracking().SingleOrDefaultAsync(row => row.Id == meal, stop);
    }

    public async Task<MealRow> AddAsync(string name, string document, CancellationToken stop = default)
    {
        await using var db = await database.CreateDbContextAsync(stop);
        var now = clock.GetUtcNow();
        var row = new MealRow { Id = Guid.CreateVersion7(now), Name = name, Document = document, ChangedAt = now.ToUnixTimeMilliseconds() };
        db.Meals.Add(row);
        await db.SaveChangesAsync(stop);
        return row;
    }

    /// <summary>The row as it stands after the change; null when somebody else changed or deleted the meal since <paramref name="version"/>.</summary>
    public async Task<MealRow?> ChangeAsync(Guid meal, int version, string name, string document, CancellationToken stop = default)
    {
        await using var db = await database.CreateDbContextAsync(stop);
        var now = clock.GetUtcNow().ToUnixTimeMilliseconds();
        var changed = await db.Meals.Where(row => row.Id == meal && row.Version == version).ExecuteUpdateAsync(
            set => set.SetProperty(row => row.Name, name).SetProperty(row => row.Document, document)
                .SetProperty(row => row.Version, version + 1).SetProperty(row => row.ChangedAt, now),
            stop);
        return changed == 1 ? await FindAsync(meal, stop) : null;
    }

    /// <summary>With the plans made for it.</summary>
    public async Task DeleteAsync(Guid meal, CancellationToken stop = default)
    {
        await using var db = await database.CreateDbContextAsync(stop);
        await using var whole = await db.Database.BeginTransactionAsync(stop);
        await db.Plans.Where(row => row.Meal == meal).ExecuteDeleteAsync(stop);
        await db.Meals.Where(row => row.Id == meal).ExecuteDeleteAsync(stop);
        await whole.CommitAsync(stop);
    }
}
