using System.Collections.Immutable;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Planning.Order;

/// <summary>
/// What comes before what in a plan: its entries in order, the links that keep them apart and the limits that keep them together.
/// Every link points forward in the order, so one sweep from the front finds the earliest times and one from the back the latest.
/// </summary>
sealed class OrderOfWork
{
    readonly Link[] byFrom;
    readonly int[] toStarts;
    readonly int[] fromStarts;

    OrderOfWork(Minute zero, ImmutableArray<Entry> entries, IEnumerable<Link> links, IEnumerable<Limit> limits)
    {
        (Zero, Entries) = (zero, entries);
        // A begun step waits for nothing any more. A link against the order can only come from a plan that breaks
        // its own rules; following it would go round in circles.
        var kept = links.Where(link => !entries[link.To].IsBegun && link.From < link.To).ToArray();
        Links = [.. kept.OrderBy(link => link.To)];
        byFrom = [.. kept.OrderBy(link => link.From)];
        toStarts = Starts(Links, link => link.To);
        fromStarts = Starts(byFrom, link => link.From);
        Limits = [.. limits.Where(limit => !entries[limit.To].IsBegun)];
    }

    public Minute Zero { get; }

    public ImmutableArray<Entry> Entries { get; }

    /// <summary>Sorted by <see cref="Link.To"/>.</summary>
    public Link[] Links { get; }

    public ImmutableArray<Limit> Limits { get; }

    /// <summary>The links that end at a position.</summary>
    public ReadOnlySpan<Link> Into(int to) => Links.AsSpan(toStarts[to]..toStarts[to + 1]);

    /// <summary>The links that begin at a position.</summary>
    public ReadOnlySpan<Link> OutOf(int from) => byFrom.AsSpan(fromStarts[from]..fromStarts[from + 1]);

    /// <summary>The order a plan gives before anything has happened.</summary>
    public static OrderOfWork Of(Meal meal, Plan plan) => Of(meal, plan, [], plan.NotBefore);

    /// <param name="plan">One that has passed <see cref="PlanCheck"/>.</param>
    /// <param name="facts">Steps that have begun.</param>
    public static OrderOfWork Of(Meal meal, Plan plan, IReadOnlyList<StepFact> facts, Minute now)
    {
        var entries = PlanEntries.Of(meal, plan, facts, now);
        var draft = new OrderDraft(meal, plan, entries);
        return new(plan.NotBefore, entries, DishOrder.Links(draft).Concat(HelperOrder.Links(draft)).Concat(PlaceOrder.Links(draft)).Concat(OvenOrder.Links(draft)),
            DishOrder.Limits(draft));
    }

    /// <summary>
    /// The same order without the links that say no more than two others do, by way of an entry between.
    /// Worth its while only for who sweeps over it thousands of times.
    /// </summary>
    public OrderOfWork Trimmed()
    {
        var least = new Dictionary<(int From, bool FromEnd, int To), int>();
        foreach (var link in Links)
        {
            least[(link.From, link.FromEnd, link.To)] = Math.Max(link.Least, least.GetValueOrDefault((link.From, link.FromEnd, link.To), link.Least));
        }

        var between = least.Where(link => link.Key.FromEnd).ToLookup(link => link.Key.To, link => (At: link.Key.From, Least: link.Value));
        bool IsSaid(int from, bool fromEnd, int to, int minutes) => between[to].Any(way =>
            least.TryGetValue((from, fromEnd, way.At), out var first) && first + way.Least >= minutes);
        return new(Zero, Entries,
            from link in least
            where !IsSaid(link.Key.From, link.Key.FromEnd, link.Key.To, link.Value)
            select new Link(link.Key.From, link.Key.FromEnd, link.Key.To, link.Value),
            Limits);
    }

    int[] Starts(Link[] sorted, Func<Link, int> end)
    {
        var starts = new int[Entries.Length + 1];
        foreach (var link in sorted)
        {
            starts[end(link) + 1]++;
        }

        for (var at = 0; at < Entries.Length; at++)
        {
            starts[at + 1] += starts[at];
        }

        return starts;
    }
}
