using CookAlong.Domain.Runs;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Household;
using CookAlong.Web.Features.Live.Runs;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Features.Shopping;

/// <summary>Who may see a meal's shopping list and tick it off: hosts, and helpers who have joined a run of that meal.</summary>
public sealed class ShoppingDoor(IDbContextFactory<CookAlongDb> databases, LiveRuns runs)
{
    public async Task<bool> LetsInAsync(Visitor visitor, Guid meal)
    {
        if (visitor.IsHost)
        {
            return true;
        }

        if (visitor.Run is not { } id)
        {
            return false;
        }

        return await MealOfAsync(id) == meal
            && await runs.FindAsync(id) is { } live
            && live.Current.People.GetValueOrDefault(visitor.Person) is { Role: Role.Helper };
    }

    /// <summary>The meal that a run cooks; null when there is no such run.</summary>
    public async Task<Guid?> MealOfAsync(RunId id)
    {
        await using var db = await databases.CreateDbContextAsync();
        return await db.Set<RunRow>().Where(run => run.Id == id.Value).Select(run => (Guid?)run.Meal).SingleOrDefaultAsync();
    }
}
