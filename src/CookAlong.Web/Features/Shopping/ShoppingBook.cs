using System.Text.Json;
using CookAlong.Domain.Runs;
using CookAlong.Domain.Shopping;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Meals;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Features.Shopping;

/// <summary>A meal's shopping list as it stands.</summary>
/// <param name="Sequence">Of the last tap; 0 = nobody has tapped.</param>
/// <param name="Tag">Changes whenever the list does.</param>
public sealed record KeptList(KeptMeal Meal, ShoppingList List, ShoppingState State, long Sequence, string Tag);

/// <summary>The shopping lists: what the meals take, and the taps on it.</summary>
public sealed class ShoppingBook(IDbContextFactory<CookAlongDb> databases, MealBook meals, TimeProvider time)
{
    const int SqliteConstraint = 19;

    /// <summary>Two phones may want the same number at once; after so many the third gives up and sends again.</summary>
    const int Tries = 20;

    /// <summary>Null when the meal is not there.</summary>
    public async Task<KeptList?> OfAsync(Guid meal, CancellationToken stop = default)
    {
        if (await meals.OpenAsync(meal, stop) is not { } kept)
        {
            return null;
        }

        await using var db = await databases.CreateDbContextAsync(stop);
        var own = await db.Set<ShoppingTapRow>().AsNoTracking().Where(row => row.Meal == meal && !row.IsOfHousehold).OrderBy(row => row.Sequence).ToListAsync(stop);
        var shop = await db.Set<ShoppingTapRow>().AsNoTracking().Where(row => row.IsOfHousehold).OrderBy(row => row.At).ThenBy(row => row.Sequence).ToListAsync(stop);
        var state = own.Concat(shop).Select(Read).Aggregate(ShoppingState.Empty, (before, tap) => before.Apply(tap));
        var sequence = own.Concat(shop.Where(row => row.Meal == meal)).Select(row => row.Sequence).DefaultIfEmpty().Max();
        return new KeptList(kept, ShoppingList.Of(kept.Meal, state.Portions), state, sequence, $"{kept.Row.Version}-{sequence}-{shop.Count}");
    }

    /// <summary>Keeps a tap once, however often it is sent.</summary>
    /// <returns>The list's sequence afterwards.</returns>
    public async Task<long> KeepAsync(Guid meal, Guid command, PersonId by, ShoppingTap tap, CancellationToken stop = default)
    {
        for (var attempt = 1; ; attempt++)
        {
            await using var db = await databases.CreateDbContextAsync(stop);
            var taps = db.Set<ShoppingTapRow>();
            if (await taps.AsNoTracking().SingleOrDefaultAsync(row => row.Meal == meal && row.Command == command, stop) is { } known)
            {
                return known.Sequence;
            }

            var last = await taps.Where(row => row.Meal == meal).MaxAsync(row => (long?)row.Sequence, stop) ?? 0;
            taps.Add(new ShoppingTapRow
            {
                Meal = meal,
                Sequence = last + 1,
                Command = command,
                By = by.Value,
                At = time.GetUtcNow().ToUnixTimeMilliseconds(),
                IsOfHousehold = tap is ShoppingTap.MoveAisle,
                Document = ShoppingTapJson.Write(tap),
            });
            try
            {
                await db.SaveChangesAsync(stop);
                return last + 1;
            }
            catch (DbUpdateException failure) when (attempt < Tries && failure.InnerException is SqliteException { SqliteErrorCode: SqliteConstraint })
            {
                // Somebody else took the number, or this very tap came twice at once: looked at again.
            }
        }
    }

    // What was kept was read before it was kept, so a row that cannot be read is our bug.
    static ShoppingTap Read(ShoppingTapRow row)
    {
        using var json = JsonDocument.Parse(row.Document);
        return ShoppingTapJson.Read(json.RootElement) ?? throw new InvalidDataException($"tap {row.Sequence} on the list of {row.Meal} is none");
    }
}
