using System.Collections.Immutable;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Domain.Planning.Order;

namespace CookAlong.Domain.Confidence;

/// <summary>
/// A plan laid out flat for cooking it very often. Everybody keeps to the plan's order; each step begins as soon as what it waits for
/// is done, but not before its planned start. Nobody looks ahead: a limit on waiting changes nothing here.
/// </summary>
sealed class SimulatedKitchen
{
    // Times hold every start and, behind them, every end, so that a link reads one number whichever it waits for.
    readonly double[] times;
    readonly int[] firstLink;
    readonly int[] source;
    readonly double[] least;
    readonly double[] floor;
    readonly double[] length;
    readonly (int From, int To)[]?[] spans;
    readonly (int Entry, Triangular Minutes)[] uncertain;
    readonly (int Entry, double Promised)[] tables;

    public SimulatedKitchen(Meal meal, Plan plan)
    {
        var order = OrderOfWork.Of(meal, plan).Trimmed();
        Entries = order.Entries;
        var count = Entries.Length;
        times = new double[2 * count];
        firstLink = new int[count + 1];
        source = [.. order.Links.Select(link => link.FromEnd ? count + link.From : link.From)];
        least = [.. order.Links.Select(link => (double)link.Least)];
        for (var at = 0; at < count; at++)
        {
            firstLink[at + 1] = firstLink[at] + order.Into(at).Length;
        }

        floor = [.. Entries.Select(entry => (double)entry.Start)];
        length = [.. Entries.Select(entry => (double)entry.Length)];
        spans = [.. Entries.Select(entry => entry.Spans)];
        uncertain =
        [
            .. from one in Entries.Index()
               where one.Item.Way is { } way && way.Minutes.Least < way.Minutes.Most
               select (one.Index, new Triangular(one.Item.Way!.Minutes)),
        ];
        tables =
        [
            .. from one in Entries.Index()
               where one.Item.Course is not null
               select (one.Index, (double)(one.Item.Course!.Promised - order.Zero)),
        ];
    }

    public ImmutableArray<Entry> Entries { get; }

    /// <summary>Cooks once. Minutes that the latest course comes after its promise, 0 when none does.</summary>
    public double Cook(ref Dice dice)
    {
        foreach (ref readonly var one in uncertain.AsSpan())
        {
            length[one.Entry] = one.Minutes.At(dice.Fraction());
        }

        Sweep(firstLink, source, least, floor, length, times);

        return Math.Max(0, Latest().Late);
    }

    /// <summary>
    /// Follows back what the latest course of the last cooking waited for, and charges each step on the way with the minutes it took
    /// over its likely ones.
    /// </summary>
    /// <param name="minutes">One sum for each of <see cref="Entries"/>.</param>
    public void ChargeWhatHeldUp(double[] minutes)
    {
        var count = floor.Length;
        var at = Latest().Entry;
        while (LastLink(at) is { } link)
        {
            at = source[link] % count;
            var entry = Entries[at];
            if (source[link] >= count && entry.Kind == EntryKind.Step && length[at] > entry.Length)
            {
                minutes[at] += length[at] - entry.Length;
            }
        }
    }

    void Sweep(ReadOnlySpan<int> firstLink, ReadOnlySpan<int> source, ReadOnlySpan<double> least, ReadOnlySpan<double> floor, ReadOnlySpan<double> length, Span<double> times)
    {
        var link = 0;
        for (var at = 0; at < floor.Length; at++)
        {
            var start = floor[at];
            for (var end = firstLink[at + 1]; link < end; link++)
            {
                var ready = times[source[link]] + least[link];
                start = ready > start ? ready : start;
            }

            start = spans[at] is { } here ? Spans.Earliest(here, start, length[at]) : start;
            times[at] = start;
            times[floor.Length + at] = start + length[at];
        }
    }

    (int Entry, double Late) Latest()
    {
        var latest = (Entry: 0, Late: double.MinValue);
        foreach (var (entry, promised) in tables)
        {
            var late = times[entry] - promised;
            latest = late > latest.Late ? (entry, late) : latest;
        }

        return latest;
    }

    /// <summary>The link an entry waited for longest; null when it began when it was planned to.</summary>
    int? LastLink(int entry)
    {
        int? last = null;
        var start = floor[entry];
        for (var link = firstLink[entry]; link < firstLink[entry + 1]; link++)
        {
            if (times[source[link]] + least[link] > start)
            {
                (start, last) = (times[source[link]] + least[link], link);
            }
        }

        return last;
    }
}
