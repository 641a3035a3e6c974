using System.Collections.Immutable;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Domain.Planning.Order;

namespace CookAlong.Domain.Confidence;

/// <summary>
/// A plan laid out flat for cooking it very often, by the policy of a kitchen that keeps to it: everybody and every place in the
/// plan's order, each step as soon as what it waits for is done, but not before its planned start less an allowance. Food that
/// cannot wait is not kept waiting by the clock: where it is ready early, what follows within a limit begins early too; where the
/// rest is seen to be behind, it is held back. Nobody knows how long anything will take, so a limit can break, and that is counted.
/// </summary>
sealed class SimulatedKitchen
{
    /// <param name="allowance">Minutes that anything may begin before its planned start. 0 or more.</param>
    public SimulatedKitchen(Meal meal, Plan plan, int allowance)
    {
        var order = OrderOfWork.Of(meal, plan).Trimmed();
        Entries = order.Entries;
        Floor = [.. Entries.Select(entry => MayBeEarly(entry) ? Math.Max(0.0, entry.Start - allowance) : entry.Start)];
        Home = [.. Entries.Select(entry => entry.Spans?.Where(span => span.From <= entry.Start && entry.End <= span.To).Select(span => ((double, double)?)span).FirstOrDefault())];
        Spans = [.. Entries.Select(entry => entry.Spans)];
        (FirstLink, Source, Least) = Flat(order.Links.Select(link => (link.To, link.FromEnd ? Entries.Length + link.From : link.From, link.Least)));
        var pressing = order.Limits.Where(limit => limit.From < limit.To && MayBeEarly(Entries[limit.To]));
        (FirstLimit, Ready, Most) = Flat(pressing.Select(limit => (limit.To, Entries.Length + limit.From, limit.Most)).OrderBy(limit => limit.To));
        (FirstLook, Seen, Ahead) = Flat(HoldingBack.Looks(order).Select(look => (look.To, look.Seen, look.Least)));
        Waits = [.. order.Limits.Select(limit => new Wait(FoodOf(meal, limit), limit.From, limit.To, limit.Most))];
        var draws = meal.Steps.Index().ToDictionary(step => step.Item.Id, step => step.Index);
        Uncertain =
        [
            .. from one in Entries.Index()
               where one.Item.Way is { } way && way.Minutes.Least < way.Minutes.Most
               select new Uncertain(one.Index, draws[one.Item.Step!.Step], new Triangular(one.Item.Way!.Minutes)),
        ];
        Tables =
        [
            .. from one in Entries.Index()
               where one.Item.Course is not null
               select (one.Index, (double)(one.Item.Course!.Promised - order.Zero)),
        ];
    }

    public ImmutableArray<Entry> Entries { get; }

    /// <summary>Per entry, the earliest it begins by the clock.</summary>
    public double[] Floor { get; }

    /// <summary>Per entry, the spans it must lie in; null = anywhere.</summary>
    public (int From, int To)[]?[] Spans { get; }

    /// <summary>Per entry, the span it is planned in; null where that is not one of its own.</summary>
    public (double From, double To)?[] Home { get; }

    /// <summary>Per entry, where its links begin in <see cref="Source"/> and <see cref="Least"/>.</summary>
    public int[] FirstLink { get; }

    /// <summary>What a link waits for: an entry's start, or beyond all starts an entry's end.</summary>
    public int[] Source { get; }

    public double[] Least { get; }

    /// <summary>Per entry, where the limits that may pull it forward begin in <see cref="Ready"/> and <see cref="Most"/>.</summary>
    public int[] FirstLimit { get; }

    public int[] Ready { get; }

    public double[] Most { get; }

    /// <summary>Per entry, where what it is held back for begins in <see cref="Seen"/> and <see cref="Ahead"/>.</summary>
    public int[] FirstLook { get; }

    /// <summary>Entries looked at.</summary>
    public int[] Seen { get; }

    /// <summary>Minutes from the end of what is looked at; mostly negative.</summary>
    public double[] Ahead { get; }

    public ImmutableArray<Wait> Waits { get; }

    public ImmutableArray<Uncertain> Uncertain { get; }

    /// <summary>Per course, its entry and the minute promised.</summary>
    public ImmutableArray<(int Entry, double Promised)> Tables { get; }

    /// <summary>Nobody is called to the table before the planned time, and what the host has fixed stays fixed.</summary>
    static bool MayBeEarly(Entry entry) => entry is { Kind: not EntryKind.Table, FixedAt: null };

    /// <summary>A dish waits for the table from the end of whichever of its steps is done last.</summary>
    int[] FoodOf(Meal meal, Limit limit)
    {
        if (Entries[limit.To].Kind == EntryKind.Step)
        {
            return [limit.From];
        }

        var dish = meal.DishOf(Entries[limit.From].Step!.Step).Steps.Select(step => step.Id).ToHashSet();
        return [.. Entries.Index().Where(one => one.Item is { Kind: EntryKind.Step, Step: { } step } && dish.Contains(step.Step)).Select(one => one.Index)];
    }

    (int[] First, int[] Source, double[] Minutes) Flat(IEnumerable<(int To, int Source, int Minutes)> sorted)
    {
        var all = sorted.ToArray();
        var first = new int[Entries.Length + 1];
        foreach (var (to, _, _) in all)
        {
            first[to + 1]++;
        }

        for (var at = 0; at < Entries.Length; at++)
        {
            first[at + 1] += first[at];
        }

        return (first, [.. all.Select(one => one.Source)], [.. all.Select(one => (double)one.Minutes)]);
    }
}

/// <param name="Draw">Which of a day's numbers is its.</param>
readonly record struct Uncertain(int Entry, int Draw, Triangular Minutes);

/// <summary>Food may wait from the last end among <paramref name="Food"/> to the start of <paramref name="To"/> for <paramref name="Most"/> minutes.</summary>
/// <param name="After">The step whose food it is.</param>
readonly record struct Wait(int[] Food, int After, int To, double Most);
