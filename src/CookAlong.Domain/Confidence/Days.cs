using System.Numerics;

namespace CookAlong.Domain.Confidence;

/// <summary>
/// Room for cooking a few days of one plan side by side: every number is kept once for each of them, next to each other, so that
/// one instruction of the processor counts for several days. Used over and over; cooking takes no memory.
/// </summary>
sealed class Days
{
    /// <summary>Days cooked at once: whole vectors on every machine (2, 4 or 8 numbers), and all of it within the nearest memory.</summary>
    public const int AtOnce = 8;

    readonly SimulatedKitchen kitchen;
    readonly Luck luck;
    readonly int count;

    // Every start and, behind them, every end, so that a link reads one number whichever it waits for.
    readonly double[] times;
    readonly double[] lengths;
    readonly double[] fractions = new double[AtOnce];

    public Days(SimulatedKitchen kitchen, Luck luck)
    {
        (this.kitchen, this.luck, count) = (kitchen, luck, kitchen.Entries.Length);
        times = new double[2 * count * AtOnce];
        lengths = [.. kitchen.Entries.SelectMany(entry => Enumerable.Repeat((double)entry.Length, AtOnce))];
    }

    /// <param name="days">Up to <see cref="AtOnce"/> of them, by number.</param>
    /// <param name="spared">An uncertain entry that takes <paramref name="minutes"/> less than it would.</param>
    public void Cook(ReadOnlySpan<int> days, int? spared = null, double minutes = 0)
    {
        foreach (ref readonly var one in kitchen.Uncertain.AsSpan())
        {
            Draw(days, one);
        }

        if (spared is { } entry)
        {
            foreach (ref var length in lengths.AsSpan(entry * AtOnce, AtOnce))
            {
                length = Math.Max(0, length - minutes);
            }
        }

        for (var at = 0; at < count; at++)
        {
            Begin(at);
        }
    }

    /// <summary>Minutes that a course comes after its promise; 0 when it is served by then.</summary>
    public double Late(int table, int lane) => times[(kitchen.Tables[table].Entry * AtOnce) + lane] - kitchen.Tables[table].Promised;

    /// <summary>By how many minutes food stands longer than it may, for each of the days; below 0 when it does not.</summary>
    /// <returns>False, and nothing told, when it is less than <paramref name="worthTelling"/> on all of them.</returns>
    public bool TooLong(in Wait wait, double worthTelling, Span<double> minutes)
    {
        var isWorth = false;
        for (var lane = 0; lane < AtOnce; lane += Vector<double>.Count)
        {
            var ready = new Vector<double>(times, ((count + wait.Food[0]) * AtOnce) + lane);
            for (var food = 1; food < wait.Food.Length; food++)
            {
                ready = Vector.Max(ready, new Vector<double>(times, ((count + wait.Food[food]) * AtOnce) + lane));
            }

            var over = new Vector<double>(times, (wait.To * AtOnce) + lane) - ready - new Vector<double>(wait.Most);
            over.CopyTo(minutes[lane..]);
            isWorth |= Vector.GreaterThanOrEqualAny(over, new Vector<double>(worthTelling));
        }

        return isWorth;
    }

    /// <summary>The course that is latest after its promise, and by how many minutes.</summary>
    public (int Table, double Late) LatestOf(int lane)
    {
        var latest = (Table: 0, Late: Late(0, lane));
        for (var table = 1; table < kitchen.Tables.Length; table++)
        {
            latest = Late(table, lane) > latest.Late ? (table, Late(table, lane)) : latest;
        }

        return latest;
    }

    /// <summary>Follows back what the latest course waited for, and tells of each step on the way that took longer than likely.</summary>
    public void WhatHeldUp(int lane, Tally tally)
    {
        var at = kitchen.Tables[LatestOf(lane).Table].Entry;
        while (LastLink(at, lane) is { } link)
        {
            var source = kitchen.Source[link];
            at = source % count;
            var over = lengths[(at * AtOnce) + lane] - kitchen.Entries[at].Length;
            if (source >= count && over > 0)
            {
                tally.HeldUp(at, over);
            }
        }
    }

    void Draw(ReadOnlySpan<int> days, in Uncertain one)
    {
        for (var lane = 0; lane < days.Length; lane++)
        {
            fractions[lane] = luck.Fraction(days[lane], one.Draw);
        }

        for (var lane = 0; lane < AtOnce; lane += Vector<double>.Count)
        {
            one.Minutes.At(new Vector<double>(fractions, lane)).CopyTo(lengths, (one.Entry * AtOnce) + lane);
        }
    }

    void Begin(int at)
    {
        var (links, limits, looks) = (kitchen.FirstLink[at + 1], kitchen.FirstLimit[at + 1], kitchen.FirstLook[at + 1]);
        for (var lane = 0; lane < AtOnce; lane += Vector<double>.Count)
        {
            var start = new Vector<double>(kitchen.Floor[at]);
            for (var limit = kitchen.FirstLimit[at]; limit < limits; limit++)
            {
                start = Vector.Min(start, new Vector<double>(times, (kitchen.Ready[limit] * AtOnce) + lane) + new Vector<double>(kitchen.Most[limit]));
            }

            for (var link = kitchen.FirstLink[at]; link < links; link++)
            {
                start = Vector.Max(start, new Vector<double>(times, (kitchen.Source[link] * AtOnce) + lane) + new Vector<double>(kitchen.Least[link]));
            }

            for (var look = kitchen.FirstLook[at]; look < looks; look++)
            {
                start = HeldBack(start, kitchen.Seen[look], lane, kitchen.Ahead[look]);
            }

            start.CopyTo(times, (at * AtOnce) + lane);
            (start + new Vector<double>(lengths, (at * AtOnce) + lane)).CopyTo(times, ((count + at) * AtOnce) + lane);
        }

        if (kitchen.Spans[at] is { } here)
        {
            ComeBackFor(at, here);
        }
    }

    /// <summary>
    /// Only what has begun by then is seen. Where the start is wanted after its end, the cook waits until it ends; where before,
    /// it is taken to end when it likely does, and as soon as it has ended there is nothing to hold back for.
    /// </summary>
    Vector<double> HeldBack(Vector<double> start, int seen, int lane, double ahead)
    {
        var (began, ended) = (new Vector<double>(times, (seen * AtOnce) + lane), new Vector<double>(times, ((count + seen) * AtOnce) + lane));
        var wanted = ahead >= 0
            ? ended + new Vector<double>(ahead)
            : Vector.Min(began + new Vector<double>(kitchen.Entries[seen].Length + ahead), ended);
        return Vector.ConditionalSelect(Vector.LessThanOrEqual(began, start), Vector.Max(start, wanted), start);
    }

    /// <summary>Whoever is not here does it when they are. Nearly always somebody is, and then all days are done with at a glance.</summary>
    void ComeBackFor(int at, (int From, int To)[] here)
    {
        if (kitchen.Home[at] is var (from, to) && IsWithin(at, from, to))
        {
            return;
        }

        for (var lane = 0; lane < AtOnce; lane++)
        {
            ref var start = ref times[(at * AtOnce) + lane];
            var length = lengths[(at * AtOnce) + lane];
            start = Planning.Order.Spans.Earliest(here, start, length);
            times[((count + at) * AtOnce) + lane] = start + length;
        }
    }

    bool IsWithin(int at, double from, double to)
    {
        for (var lane = 0; lane < AtOnce; lane += Vector<double>.Count)
        {
            if (Vector.LessThanAny(new Vector<double>(times, (at * AtOnce) + lane), new Vector<double>(from))
                || Vector.GreaterThanAny(new Vector<double>(times, ((count + at) * AtOnce) + lane), new Vector<double>(to)))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The link an entry waited for longest; null when it began by the clock.</summary>
    int? LastLink(int entry, int lane)
    {
        int? last = null;
        var start = kitchen.Floor[entry];
        for (var limit = kitchen.FirstLimit[entry]; limit < kitchen.FirstLimit[entry + 1]; limit++)
        {
            start = Math.Min(start, times[(kitchen.Ready[limit] * AtOnce) + lane] + kitchen.Most[limit]);
        }

        for (var link = kitchen.FirstLink[entry]; link < kitchen.FirstLink[entry + 1]; link++)
        {
            var ready = times[(kitchen.Source[link] * AtOnce) + lane] + kitchen.Least[link];
            if (ready > start)
            {
                (start, last) = (ready, link);
            }
        }

        return last;
    }
}
