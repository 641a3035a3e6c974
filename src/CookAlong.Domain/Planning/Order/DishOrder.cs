using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Planning.Order;

/// <summary>What the food itself asks for: gaps between steps, tends inside them, the wait for the table.</summary>
static class DishOrder
{
    public static IEnumerable<Link> Links(OrderDraft draft) =>
        Gaps(draft).Select(gap => new Link(gap.From, FromEnd: true, gap.To, gap.After.Least)).Concat(Tends(draft)).Concat(Waits(draft));

    /// <summary>Most-gaps first, then holds: where not all can be kept, the earlier ones are.</summary>
    public static IEnumerable<Limit> Limits(OrderDraft draft) =>
        Gaps(draft).Where(gap => gap.After.Most is not null).Select(gap => new Limit(gap.From, gap.To, gap.After.Most!.Value)).Concat(HoldLimits(draft));

    static IEnumerable<(int From, int To, After After)> Gaps(OrderDraft draft)
    {
        foreach (var step in draft.Meal.Steps)
        {
            foreach (var after in step.After)
            {
                if (draft.Step(after.Step) is { } from && draft.Step(step.Id) is { } to)
                {
                    yield return (from, to, after);
                }
            }
        }
    }

    static IEnumerable<Link> Tends(OrderDraft draft)
    {
        var steps = draft.Meal.Steps.ToDictionary(step => step.Id);
        foreach (var (at, entry) in draft.Entries.Index().Where(one => one.Item.Kind == EntryKind.Tend))
        {
            if (draft.Step(entry.Tend!.Step) is not { } parent)
            {
                continue;
            }

            var tend = steps[entry.Tend.Step].Tends[entry.Tend.Tend];
            yield return new(parent, FromEnd: false, at, 0);
            yield return tend.At < 0
                ? new(parent, FromEnd: true, at, tend.At.Value - tend.Give)
                : new(parent, FromEnd: false, at, (tend.At ?? ((entry.Tend.Turn + 1) * tend.Every!.Value)) - tend.Give);
        }
    }

    static IEnumerable<Link> Waits(OrderDraft draft)
    {
        foreach (var (dish, hold) in Holds(draft))
        {
            var table = draft.Table(dish.Course)!.Value;
            var warm = draft.WarmHold(dish.Id);
            foreach (var step in draft.StepsOf(dish))
            {
                yield return new(step, FromEnd: true, table, hold.Least);
                if (warm is { } place)
                {
                    yield return new(step, FromEnd: true, place, 0);
                }
            }

            if (warm is { } from)
            {
                yield return new(from, FromEnd: true, table, 0);
            }
        }
    }

    /// <summary>A wait counts from the dish's last step; the one planned last stands for it.</summary>
    static IEnumerable<Limit> HoldLimits(OrderDraft draft)
    {
        foreach (var (dish, hold) in Holds(draft))
        {
            var last = draft.StepsOf(dish).MaxBy(step => draft.Entries[step].End);
            yield return new(last, draft.Table(dish.Course)!.Value, hold.Limit);
            if (draft.WarmHold(dish.Id) is { } warm)
            {
                yield return new(last, warm, hold.Oven!.StandFirst);
            }
        }
    }

    static IEnumerable<(Dish Dish, Hold Hold)> Holds(OrderDraft draft) =>
        from dish in draft.Meal.Dishes
        let planned = draft.Plan.Holds.FirstOrDefault(hold => hold.Dish == dish.Id)
        where planned is not null && draft.Table(dish.Course) is not null && draft.StepsOf(dish).Any()
        select (dish, dish.Holds[planned.Hold]);
}
