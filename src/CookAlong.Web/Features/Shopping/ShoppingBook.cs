using System.Text.Json;
using CookAlong.Domain.Runs;
using CookAlong.Domain.Shopping;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Features.Settings;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Features.Shopping;

/// <summary>A meal's shopping list as it stands.</summary>
/// <param name="Sequence">Of the last tap; 0 = nobody has tapped.</param>
public sealed record KeptList(KeptMeal Meal, ShoppingList List, ShoppingState State, long Sequence);

/// <summary>What became of a tap: the list's sequence afterwards, or why it was not kept.</summary>
public readonly record struct TapOutcome(long Sequence, string? Refusal);

/// <summary>The shopping lists: what the meals take, and the taps on it.</summary>
public sealed class ShoppingBook(IDbContextFactory<CookAlongDb> databases, MealBook meals, HouseholdRegion household, TimeProvider time)
{
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
        var (state, sequence) = await StateAsync(db, meal, stop);
        return new KeptList(kept, ShoppingList.Of(kept.Meal, state.Portions, await household.SpoonsAsync(stop)), state, sequence);
    }

    /// <summary>Changes whenever the list does. Null when the meal is not there.</summary>
    public async Task<string?> TagAsync(Guid meal, CancellationToken stop = default)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        if (await db.Meals.Where(row => row.Id == meal).Select(row => (int?)row.Version).SingleOrDefaultAsync(stop) is not { } version)
        {
            return null;
        }

        var settings = await SettingsAsync(db, stop);
        return $"\"{version}-{await LastAsync(db, meal, stop)}-{string.Join('-', settings.Select(row => row.Command))}-{await household.SpoonsAsync(stop)}\"";
    }

    /// <summary>Keeps a tap once, however often it is sent. Null when the meal is not there.</summary>
    public async Task<TapOutcome?> KeepAsync(Guid meal, Guid command, PersonId by, ShoppingTap tap, CancellationToken stop = default)
    {
        for (var attempt = 1; ; attempt++)
        {
            await using var db = await databases.CreateDbContextAsync(stop);
            if (!await db.Meals.AnyAsync(row => row.Id == meal, stop))
            {
                return null;
            }

            var taps = db.Set<ShoppingTapRow>();
            if (await taps.AsNoTracking().SingleOrDefaultAsync(row => row.Meal == meal && row.Command == command, stop) is { } known)
            {
                return new(known.Sequence, null);
            }

            if (tap is ShoppingTap.AddExtra && !(await StateAsync(db, meal, stop)).State.HasRoom)
            {
                return new(0, ShoppingWords.Full);
            }

            var (sequence, setting) = (await LastAsync(db, meal, stop) + 1, ShoppingTapJson.SettingOf(tap));
            taps.Add(new ShoppingTapRow
            {
                Meal = meal,
                Sequence = sequence,
                Command = command,
                By = by.Value,
                At = await AfterAsync(db, setting, stop),
                Setting = setting,
                Document = ShoppingTapJson.Write(tap),
            });
            try
            {
                await db.SaveChangesAsync(stop);
                return new(sequence, null);
            }
            catch (DbUpdateException failure) when (attempt < Tries && CookAlongDb.IsTaken(failure))
            {
                // Somebody else took the number, or this very tap came twice at once: looked at again.
            }
        }
    }

    static async Task<(ShoppingState State, long Sequence)> StateAsync(CookAlongDb db, Guid meal, CancellationToken stop)
    {
        var own = await db.Set<ShoppingTapRow>().AsNoTracking().Where(row => row.Meal == meal).OrderBy(row => row.Sequence).ToListAsync(stop);
        var taps = own.Where(row => row.Setting is null).Concat(await SettingsAsync(db, stop));
        return (taps.Select(Read).Aggregate(ShoppingState.Empty, (before, tap) => before.Apply(tap)), own.LastOrDefault()?.Sequence ?? 0);
    }

    /// <summary>The tap in force for each setting of the household that somebody made.</summary>
    static async Task<IReadOnlyList<ShoppingTapRow>> SettingsAsync(CookAlongDb db, CancellationToken stop)
    {
        var rows = new List<ShoppingTapRow>();
        foreach (var setting in ShoppingTapJson.Settings)
        {
            if (await Latest(db, setting).FirstOrDefaultAsync(stop) is { } row)
            {
                rows.Add(row);
            }
        }

        return rows;
    }

    static IQueryable<ShoppingTapRow> Latest(CookAlongDb db, string setting) =>
        db.Set<ShoppingTapRow>().AsNoTracking().Where(row => row.Setting == setting).OrderByDescending(row => row.At).ThenByDescending(row => row.Sequence).ThenBy(row => row.Meal);

    static async Task<long> LastAsync(CookAlongDb db, Guid meal, CancellationToken stop) =>
        await db.Set<ShoppingTapRow>().Where(row => row.Meal == meal).MaxAsync(row => (long?)row.Sequence, stop) ?? 0;

    /// <summary>Settings come from lists of several meals and have no other order than the clock, which may have been put back since the last.</summary>
    async Task<long> AfterAsync(CookAlongDb db, string? setting, CancellationToken stop)
    {
        var now = time.GetUtcNow().ToUnixTimeMilliseconds();
        return setting is not null && await Latest(db, setting).FirstOrDefaultAsync(stop) is { } before ? Math.Max(now, before.At + 1) : now;
    }

    /// <summary>Whose cups the household's recipes mean.</summary>
    // What was kept was read before it was kept, so a row that cannot be read is our bug.
    static ShoppingTap Read(ShoppingTapRow row)
    {
        using var json = JsonDocument.Parse(row.Document);
        return ShoppingTapJson.Read(json.RootElement) ?? throw new InvalidDataException($"tap {row.Sequence} on the list of {row.Meal} is none");
    }
}
