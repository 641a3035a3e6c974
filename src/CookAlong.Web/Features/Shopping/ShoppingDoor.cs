using CookAlong.Domain.Runs;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Household;
using CookAlong.Web.Features.Live.Runs;

namespace CookAlong.Web.Features.Shopping;

/// <summary>Who may see a meal's shopping list and tick it off: hosts, and helpers who have joined a run of that meal.</summary>
public sealed class ShoppingDoor(EventLog log, LiveRuns runs)
{
    public async Task<bool> LetsInAsync(Visitor visitor, Guid meal) =>
        visitor.IsHost
        || (visitor.Run is { } id
            && await log.MealOfAsync(id) == meal
            && await runs.FindAsync(id) is { } live
            && live.Current.People.GetValueOrDefault(visitor.Person) is { Role: Role.Helper });
}
