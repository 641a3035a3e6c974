using CookAlong.Domain.Planning.Order;

namespace CookAlong.Domain.Confidence;

/// <summary>
/// What a cook holds back because the rest is seen to be behind: the greens, when the roast is not out yet. Food that may not
/// wait long for something begins no earlier than that would want it, as far as can be told from what has begun by then,
/// and as if all that is still to come took its likely time.
/// </summary>
static class HoldingBack
{
    /// <summary>Being behind by more than this leads to a new plan, not to holding back by the old one. Minutes.</summary>
    const int Furthest = 30;

    /// <summary>Minutes.</summary>
    const int WellBefore = 15;

    /// <param name="To">What is held back.</param>
    /// <param name="Seen">What is looked at: something earlier in the order.</param>
    /// <param name="Least">Minutes from its end to the start.</param>
    public readonly record struct Look(int To, int Seen, int Least);

    /// <summary>Sorted by <see cref="Look.To"/>, what comes earlier first.</summary>
    public static IEnumerable<Look> Looks(OrderOfWork order)
    {
        var patience = Patience(order);
        var tails = new int?[order.Entries.Length][];
        int?[] TailOf(int to) => tails[to] ??= Tail(order, to);
        for (var to = 0; to < order.Entries.Length; to++)
        {
            if (order.Entries[to] is { Kind: EntryKind.Step, FixedAt: null } && patience[to].Count > 0)
            {
                var least = new int?[to];
                foreach (var (target, minutes) in patience[to])
                {
                    var tail = TailOf(target);
                    for (var seen = 0; seen < to; seen++)
                    {
                        least[seen] = tail[seen] is { } rest ? Math.Max(least[seen] ?? int.MinValue, rest - minutes - order.Entries[to].Length) : least[seen];
                    }
                }

                foreach (var look in Worthwhile(order, to, least, TailOf(to)))
                {
                    yield return look;
                }
            }
        }
    }

    static IEnumerable<Look> Worthwhile(OrderOfWork order, int to, int?[] least, int?[] waitedFor)
    {
        var entries = order.Entries;
        for (var seen = 0; seen < to; seen++)
        {
            if (least[seen] is { } minutes && entries[to].Start - entries[seen].End - minutes <= Furthest
                && !(waitedFor[seen] >= minutes) && !IsSeenLater(order, to, least, seen))
            {
                yield return new(to, seen, minutes);
            }
        }
    }

    /// <summary>What follows it tells as much and is under way by then, even on a day that is behind.</summary>
    static bool IsSeenLater(OrderOfWork order, int to, int?[] least, int seen)
    {
        foreach (var link in order.OutOf(seen))
        {
            if (link.FromEnd && link.To < to && order.Entries[link.To].Start + WellBefore <= order.Entries[to].Start
                && link.Least + order.Entries[link.To].Length + least[link.To] >= least[seen])
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Per entry, how long after its end what it leads to by limits begins at the latest.</summary>
    static Dictionary<int, int>[] Patience(OrderOfWork order)
    {
        var patience = Enumerable.Range(0, order.Entries.Length).Select(_ => new Dictionary<int, int>()).ToArray();
        foreach (var limit in order.Limits.Where(limit => limit.From < limit.To).OrderByDescending(limit => limit.From))
        {
            var here = patience[limit.From];
            here[limit.To] = Math.Min(limit.Most, here.GetValueOrDefault(limit.To, int.MaxValue));
            foreach (var (further, minutes) in patience[limit.To])
            {
                here[further] = Math.Min(limit.Most + order.Entries[limit.To].Length + minutes, here.GetValueOrDefault(further, int.MaxValue));
            }
        }

        return patience;
    }

    /// <summary>Per entry, the least minutes from its end to the start of <paramref name="to"/>; null where that does not wait for it.</summary>
    static int?[] Tail(OrderOfWork order, int to)
    {
        var (ends, starts) = (new int?[order.Entries.Length], new int?[order.Entries.Length]);
        starts[to] = 0;
        for (var at = to - 1; at >= 0; at--)
        {
            foreach (var link in order.OutOf(at))
            {
                if (starts[link.To] is { } rest)
                {
                    ref var side = ref link.FromEnd ? ref ends[at] : ref starts[at];
                    side = Math.Max(side ?? int.MinValue, link.Least + rest);
                }
            }

            starts[at] = ends[at] is { } tail ? Math.Max(starts[at] ?? int.MinValue, order.Entries[at].Length + tail) : starts[at];
        }

        return ends;
    }
}
