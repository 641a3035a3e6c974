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

        await using var db = await databases.CreateDbContextAsync();
        return await db.Set<RunRow>().AnyAsync(run => run.Id == id.Value && run.Meal == meal)
            && await runs.FindAsync(id) is { } live
            && live.Current.People.GetValueOrDefault(visitor.Person) is { Role: Role.Helper };
    }
}
