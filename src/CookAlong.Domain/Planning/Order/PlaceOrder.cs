using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Planning.Order;

/// <summary>
/// Shelves, rings, grills and appliances are taken over in the plan's order. Each use is given single units (this ring, that shelf)
/// and waits for whoever had them before. Whatever the times then become, no more is ever in use than there is.
/// </summary>
static class PlaceOrder
{
    /// <param name="From">Position of what takes the place.</param>
    /// <param name="Until">Position of what gives it back by its end.</param>
    readonly record struct Use(int From, int Until, int Amount, DishId Dish);

    public static IEnumerable<Link> Links(OrderDraft draft)
    {
        var kitchen = draft.Meal.Kitchen;
        var dishes = draft.Meal.Dishes.SelectMany(dish => dish.Steps.Select(step => (step.Id, dish.Id))).ToDictionary(one => one.Item1, one => one.Item2);
        var steps = draft.Entries.Index().Where(one => one.Item.Kind == EntryKind.Step).ToArray();

        IEnumerable<Use> Steps(Func<Entry, int> amount) =>
            from one in steps
            let taken = amount(one.Item)
            where taken > 0
            select new Use(one.Index, one.Index, taken, dishes[one.Item.Step!.Step]);

        IEnumerable<Use> WarmIn(Oven oven) =>
            from dish in draft.Meal.Dishes
            let warm = draft.WarmHold(dish.Id)
            let table = draft.Table(dish.Course)
            where warm is not null && table is not null && draft.Entries[warm.Value].Hold!.Oven == oven.Id
            select new Use(warm.Value, table.Value, dish.Holds[draft.Entries[warm.Value].Hold!.Hold].Oven!.Shelves, dish.Id);

        int ShelvesOf(Oven oven, Entry entry) =>
            entry.Step!.Oven == oven.Id ? entry.Way!.Uses.Oven?.Shelves ?? 0
            : kitchen.Grills.Any(grill => grill.InsideOven == oven.Id && grill.Id == entry.Step.Grill) ? oven.Shelves
            : 0;

        return kitchen.Ovens.SelectMany(oven => Chains(draft, Steps(entry => ShelvesOf(oven, entry)).Concat(WarmIn(oven)), oven.Shelves))
            .Concat(kitchen.Grills.SelectMany(grill => Chains(draft, Steps(entry => entry.Step!.Grill == grill.Id ? 1 : 0), 1)))
            .Concat(kitchen.Appliances.SelectMany(kind => Chains(draft, Steps(entry => entry.Step!.Appliances.Count(one => one == kind.Id)), kind.Count)))
            .Concat(Chains(draft, Steps(entry => entry.Way!.Uses.Rings), kitchen.Rings));
    }

    static IEnumerable<Link> Chains(OrderDraft draft, IEnumerable<Use> uses, int units)
    {
        var last = new Use?[units];
        foreach (var use in uses.OrderBy(use => use.From))
        {
            var start = draft.Entries[use.From].Start;
            int FreeAt(int unit) => last[unit] is { } before ? PromisedBack(draft, before) : int.MinValue;
            // The same dish waits for its earlier step anyway, so its own place costs no freedom; else the place longest free.
            var taken = Enumerable.Range(0, units)
                .OrderBy(unit => last[unit]?.Dish == use.Dish && FreeAt(unit) <= start ? 0 : 1)
                .ThenBy(FreeAt)
                .Take(use.Amount)
                .ToArray();
            foreach (var unit in taken)
            {
                if (last[unit] is { } before)
                {
                    yield return new(before.Until, FromEnd: true, use.From, 0);
                }

                last[unit] = use;
            }
        }
    }

    // A step that runs late must not hand its place to somebody else than planned: who waits for whom would depend on how late it is.
    static int PromisedBack(OrderDraft draft, Use use) => draft.Entries[use.Until] is { IsBegun: true, Step: { } planned } begun
        ? Math.Min(planned.End - draft.Plan.NotBefore, begun.End)
        : draft.Entries[use.Until].End;
}
