using System.Collections.Immutable;
using CookAlong.Intake.Photos;
using CookAlong.Web.Data;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Features.Debrief.Pictures;

/// <summary>Pictures of a run's dishes.</summary>
public sealed class DebriefPhotos(IDbContextFactory<CookAlongDb> databases, TimeProvider clock)
{
    public const int MostOfDish = 4;

    /// <summary>Of one run, without their bytes; the earliest first.</summary>
    public Task<ImmutableArray<DishPhoto>> OfAsync(Guid run, CancellationToken stop) => OfAsync(row => row.Run == run, stop);

    public Task<ImmutableArray<DishPhoto>> AllAsync(CancellationToken stop) => OfAsync(_ => true, stop);

    /// <summary>Null when the run has no such picture.</summary>
    public async Task<Photo?> OpenAsync(Guid run, Guid photo, CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        return await db.Set<DebriefPhotoRow>().Where(row => row.Run == run && row.Id == photo).Select(row => new Photo(row.Kind, row.Image)).SingleOrDefaultAsync(stop);
    }

    /// <returns>False when the dish has as many as it may have.</returns>
    public async Task<bool> AddAsync(Guid run, string dish, Photo photo, CancellationToken stop)
    {
        var now = clock.GetUtcNow();
        await using var db = await databases.CreateDbContextAsync(stop);
        await using var whole = await db.Database.BeginTransactionAsync(stop);
        if (await db.Set<DebriefPhotoRow>().CountAsync(row => row.Run == run && row.Dish == dish, stop) >= MostOfDish)
        {
            return false;
        }

        db.Add(new DebriefPhotoRow { Id = Guid.CreateVersion7(now), Run = run, Dish = dish, Kind = photo.Kind, Image = photo.Image, AddedAt = now.ToUnixTimeMilliseconds() });
        await db.SaveChangesAsync(stop);
        await whole.CommitAsync(stop);
        return true;
    }

    public Task DeleteAsync(Guid photo, CancellationToken stop) => DeleteAsync(row => row.Id == photo, stop);

    public Task DeleteAllAsync(CancellationToken stop) => DeleteAsync(_ => true, stop);

    async Task DeleteAsync(System.Linq.Expressions.Expression<Func<DebriefPhotoRow, bool>> which, CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        await db.Set<DebriefPhotoRow>().Where(which).ExecuteDeleteAsync(stop);
    }

    async Task<ImmutableArray<DishPhoto>> OfAsync(System.Linq.Expressions.Expression<Func<DebriefPhotoRow, bool>> which, CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        return
        [
            .. await db.Set<DebriefPhotoRow>().Where(which).OrderBy(row => row.AddedAt).ThenBy(row => row.Id)
                .Select(row => new DishPhoto(row.Id, row.Run, row.Dish, row.Kind, row.Image.Length, row.AddedAt)).ToListAsync(stop),
        ];
    }
}

/// <param name="Bytes">Of the file.</param>
/// <param name="AddedAt">Milliseconds since the Unix epoch, UTC.</param>
public sealed record DishPhoto(Guid Id, Guid Run, string Dish, string Kind, int Bytes, long AddedAt)
{
    public string Address => $"/cook/{Run}/debrief/photos/{Id}";
}
