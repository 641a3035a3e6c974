using System.Collections.Immutable;
using System.Diagnostics;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Planning.Order;

/// <summary>Which of the links and limits leave no minute at the latest times, followed from a step to where they end.</summary>
sealed class TightLinks
{
    enum Kind { Food, Oven, Place, Hands }

    readonly Meal meal;
    readonly OrderDraft draft;
    readonly OrderOfWork order;
    readonly EarliestTimes earliest;
    readonly LatestTimes latest;
    readonly ILookup<int, (Kind Kind, Link Link)> links;

    public TightLinks(Meal meal, Plan plan)
    {
        this.meal = meal;
        order = OrderOfWork.Of(meal, plan);
        draft = new OrderDraft(meal, plan, order.Entries);
        earliest = new EarliestTimes(order, now: 0);
        latest = new LatestTimes(order, earliest, course => course.TableTime);

        // What is easiest to see comes first: of chains that are as short, the first found is told.
        (Kind Kind, IEnumerable<Link> Links)[] kinds =
        [
            (Kind.Food, DishOrder.Links(draft)), (Kind.Oven, OvenOrder.Links(draft)),
            (Kind.Place, PlaceOrder.Links(draft)), (Kind.Hands, HelperOrder.Links(draft)),
        ];
        links = kinds.SelectMany(kind => kind.Links.Where(link => link.From < link.To).Select(link => (kind.Kind, link))).ToLookup(one => one.link.From);
    }

    public WhyHere Why(StepId step)
    {
        var from = draft.Step(step) ?? throw new ArgumentException($"{step} is not in the plan", nameof(step));
        var cameBy = new Dictionary<int, (int From, Because Reason)?> { [from] = null };
        var open = new Queue<int>([from]);
        while (open.TryDequeue(out var at))
        {
            if (Ends(at) is { } end)
            {
                return Told(step, from, [.. Back(cameBy, at), end]);
            }

            foreach (var (to, reason) in Tight(at))
            {
                if (cameBy.TryAdd(to, (at, reason)))
                {
                    if (order.Entries[to].Kind == EntryKind.Table)
                    {
                        return Told(step, from, [.. Back(cameBy, to)]);
                    }

                    open.Enqueue(to);
                }
            }
        }

        return Told(step, from, []);
    }

    WhyHere Told(StepId step, int at, ImmutableArray<Because> chain) => new(step, Time(latest.Starts[at]), Time(latest.Ends[at]), chain);

    static Stack<Because> Back(Dictionary<int, (int From, Because Reason)?> cameBy, int at)
    {
        var chain = new Stack<Because>();
        while (cameBy[at] is { } by)
        {
            chain.Push(by.Reason);
            at = by.From;
        }

        return chain;
    }

    /// <summary>What holds the entry by itself, at its latest time.</summary>
    Because? Ends(int at)
    {
        var entry = order.Entries[at];
        if (entry.FixedAt is { } start && latest.Starts[at] == start)
        {
            return new Because.Fixed(Time(start));
        }

        var end = Time(latest.Ends[at]);
        if (entry.Spans is null || !entry.Spans.Any(span => span.To == latest.Ends[at] && span.From <= earliest.Starts[at]))
        {
            return null;
        }

        if (entry.Kind == EntryKind.Step && meal.Step(entry.Step!.Step).Window?.To == end)
        {
            return new Because.WindowCloses(end);
        }

        var hands = entry.Tend is { } tend ? [tend.Helper] : entry.Step!.Helpers;
        return new Because.Leaves(hands.Cast<HelperId?>().FirstOrDefault(id => meal.Helpers.Any(helper => helper.Id == id && helper.Available.Any(span => span.To == end))), end);
    }

    IEnumerable<(int To, Because Reason)> Tight(int at)
    {
        foreach (var (kind, link) in links[at])
        {
            if ((link.FromEnd ? latest.Ends[at] : latest.Starts[at]) == latest.Starts[link.To] - link.Least)
            {
                yield return (link.To, Of(kind, link) with { Next = order.Entries[link.To].Step?.Step ?? order.Entries[link.To].Tend?.Step });
            }
        }

        foreach (var limit in earliest.Kept)
        {
            if (limit.To == at && latest.Starts[at] == latest.Ends[limit.From] + limit.Most)
            {
                yield return (limit.From, new Because.SoonAfter(Time(latest.Ends[limit.From]), limit.Most) { Next = order.Entries[limit.From].Step?.Step });
            }
        }
    }

    Because Of(Kind kind, Link link)
    {
        var (from, to, at) = (order.Entries[link.From], order.Entries[link.To], Time(latest.Starts[link.To]));
        return kind switch
        {
            Kind.Food => to.Kind switch
            {
                EntryKind.Table => new Because.Served(to.Course!.Course, at, link.Least),
                EntryKind.WarmHold => new Because.KeptWarm(to.Hold!.Dish, at),
                EntryKind.Tend => new Because.Tended(at),
                EntryKind.Step => new Because.Awaited(at, link.Least),
                _ => throw new UnreachableException(),
            },
            Kind.Oven => new Because.OvenTurns(OvenOf(to), at, to.Way?.Uses.Oven?.Celsius ?? WarmAt(to), link.Least),
            Kind.Place => new Because.PlaceNeeded(PlaceOf(from, to), at),
            Kind.Hands => new Because.HandsNeeded(Hands(from).Intersect(Hands(to)).First(), at),
            _ => throw new UnreachableException(),
        };
    }

    static OvenId OvenOf(Entry entry) => (entry.Step?.Oven ?? entry.Hold?.Oven)!.Value;

    CelsiusRange WarmAt(Entry entry) => meal.Dishes.Single(dish => dish.Id == entry.Hold!.Dish).Holds[entry.Hold!.Hold].Oven!.Celsius;

    static ImmutableArray<HelperId> Hands(Entry entry) => entry.Tend is { } tend ? [tend.Helper] : entry.Step!.Helpers;

    /// <summary>What both take. A warm hold, and a grill beside its own oven, take shelves.</summary>
    static PlaceKind PlaceOf(Entry from, Entry to) =>
        from.Way is not { } one || to.Way is not { } other ? PlaceKind.Shelf
        : from.Step!.Oven is not null && from.Step.Oven == to.Step!.Oven ? PlaceKind.Shelf
        : from.Step.Grill is not null && from.Step.Grill == to.Step!.Grill ? PlaceKind.Grill
        : from.Step.Appliances.Intersect(to.Step!.Appliances).Any() ? PlaceKind.Appliance
        : one.Uses.Rings > 0 && other.Uses.Rings > 0 ? PlaceKind.Ring
        : PlaceKind.Shelf;

    Minute Time(int at) => order.Zero + at;
}
