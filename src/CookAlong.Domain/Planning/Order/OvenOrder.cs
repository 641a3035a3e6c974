using CookAlong.Domain.Kitchens;

namespace CookAlong.Domain.Planning.Order;

/// <summary>
/// Two uses of an oven whose ranges do not meet keep their order, with the time to heat or cool between them. Keeping every pair
/// apart is enough: a curve through all of them exists exactly when one exists through each two.
/// </summary>
static class OvenOrder
{
    readonly record struct Use(int From, int Until, CelsiusRange Celsius);

    public static IEnumerable<Link> Links(OrderDraft draft) =>
        from oven in draft.Meal.Kitchen.Ovens
        let uses = UsesOf(draft, oven).OrderBy(use => use.From).ToArray()
        from later in Enumerable.Range(0, uses.Length)
        from earlier in Enumerable.Range(0, later)
        let before = uses[earlier]
        let after = uses[later]
        let minutes = oven.MinutesBetween(before.Celsius, after.Celsius)
        where minutes > 0
        select new Link(before.Until, FromEnd: true, after.From, minutes);

    static IEnumerable<Use> UsesOf(OrderDraft draft, Oven oven)
    {
        foreach (var (at, entry) in draft.Entries.Index())
        {
            if (entry.Step?.Oven == oven.Id && entry.Way!.Uses.Oven is { } use)
            {
                yield return new(at, at, use.Celsius);
            }
        }

        foreach (var dish in draft.Meal.Dishes)
        {
            if (draft.WarmHold(dish.Id) is { } at && draft.Table(dish.Course) is { } table && draft.Entries[at].Hold is { } hold && hold.Oven == oven.Id)
            {
                yield return new(at, table, dish.Holds[hold.Hold].Oven!.Celsius);
            }
        }
    }
}
