using System.Collections.Immutable;
using CookAlong.Domain.Planning;

namespace CookAlong.Domain.Confidence;

/// <summary>A plan cooked on many days, shared out in fixed parts so that it does not matter who cooks which.</summary>
sealed class ManyDays
{
    /// <summary>How late a course may come and still count as on time, in minutes.</summary>
    const double OnTimeWithin = 10;

    /// <summary>Days in a part: enough to be worth handing out, few enough that all cores finish together. Whole <see cref="Days.AtOnce"/>.</summary>
    const int PartDays = 256;

    const int MostDecisive = 6;

    /// <summary>What is earlier on a day is tried on the late ones only, and not on more of them than tell a gain to about a twentieth of those days.</summary>
    const int MostLateDays = 400;

    /// <summary>Food is not spoilt the minute its limit is over, and half of all limits are touched by a plan. In minutes (common practice, no source).</summary>
    const double Forgiven = 5;

    readonly SimulatedKitchen kitchen;
    readonly Luck luck;
    readonly int runs;
    readonly ParallelOptions cores;
    readonly Tally tally;
    readonly double[][] late;
    readonly List<int> lateDays = [];

    public ManyDays(SimulatedKitchen kitchen, Luck luck, int runs, ParallelOptions cores)
    {
        (this.kitchen, this.luck, this.runs, this.cores) = (kitchen, luck, runs, cores);
        late = [.. kitchen.Tables.Select(_ => new double[runs])];
        tally = new(kitchen.Entries.Length, kitchen.Waits.Length);
        var parts = new Tally[((runs - 1) / PartDays) + 1];
        Parallel.For(0, parts.Length, cores, () => new Days(kitchen, luck), (part, _, days) =>
        {
            parts[part] = Cook(days, part * PartDays, Math.Min(runs, (part + 1) * PartDays));
            return days;
        }, _ => { });
        foreach (var part in parts)
        {
            tally.Add(part);
        }

        for (var day = 0; day < runs; day++)
        {
            var latest = 0.0;
            foreach (var course in late)
            {
                latest = Math.Max(latest, course[day]);
            }

            LateMinutes += latest;
            if (latest > OnTimeWithin)
            {
                lateDays.Add(day);
            }
        }
    }

    public int OnTime => runs - lateDays.Count;

    /// <summary>Summed over all days.</summary>
    public double LateMinutes { get; }

    public int TooLongDays => tally.TooLongDays;

    /// <summary>The steps that the late days waited for, worst first, with what five spare minutes would buy there.</summary>
    public ImmutableArray<DecisiveStep> Decisive()
    {
        var worst = Enumerable.Range(0, kitchen.Entries.Length).Where(entry => tally.HeldUpDays[entry] > 0)
            .OrderByDescending(entry => tally.HeldUpMinutes[entry]).Take(MostDecisive).ToArray();
        var gains = new double[worst.Length];
        Parallel.For(0, worst.Length, cores, at => gains[at] = GainOf(worst[at]));
        return [.. worst.Zip(gains, (entry, gain) =>
            new DecisiveStep(kitchen.Entries[entry].Step!.Step, (double)tally.HeldUpDays[entry] / lateDays.Count, gain))];
    }

    /// <summary>Food that stands too long, most often first.</summary>
    public ImmutableArray<StandingFood> Standing() =>
    [
        .. kitchen.Waits.Zip(tally.TooLong).Where(one => one.Second > 0)
            .GroupBy(one => kitchen.Entries[one.First.After].Step!.Step, (step, waits) => new StandingFood(step, (double)waits.Max(one => one.Second) / runs))
            .OrderByDescending(food => food.Chance).Take(MostDecisive),
    ];

    /// <summary>Twenty days that stand for all: the lateness in the middle of each twentieth, best first.</summary>
    public ImmutableArray<double> TwentyDays(int table)
    {
        var sorted = late[table].AsSpan().ToArray();
        Array.Sort(sorted);
        return [.. Enumerable.Range(0, TableSpread.DayCount).Select(day => sorted[(int)((((2L * day) + 1) * runs) / (2 * TableSpread.DayCount))])];
    }

    Tally Cook(Days days, int from, int to)
    {
        var part = new Tally(kitchen.Entries.Length, kitchen.Waits.Length);
        Span<int> numbers = stackalloc int[Days.AtOnce];
        for (var first = from; first < to; first += Days.AtOnce)
        {
            var some = numbers[..Math.Min(Days.AtOnce, to - first)];
            for (var lane = 0; lane < some.Length; lane++)
            {
                some[lane] = first + lane;
            }

            days.Cook(some);
            for (var lane = 0; lane < some.Length; lane++)
            {
                Note(days, lane, some[lane], part);
            }

            NoteWaits(days, some.Length, part);
        }

        return part;
    }

    void Note(Days days, int lane, int day, Tally part)
    {
        var isLate = false;
        for (var table = 0; table < late.Length; table++)
        {
            late[table][day] = days.Late(table, lane);
            isLate |= late[table][day] > OnTimeWithin;
        }

        if (isLate)
        {
            days.WhatHeldUp(lane, part);
        }

    }

    void NoteWaits(Days days, int lanes, Tally part)
    {
        Span<double> over = stackalloc double[Days.AtOnce];
        Span<bool> isTooLong = stackalloc bool[Days.AtOnce];
        isTooLong.Clear();
        for (var wait = 0; wait < kitchen.Waits.Length; wait++)
        {
            if (!days.TooLong(kitchen.Waits[wait], Forgiven, over))
            {
                continue;
            }

            for (var lane = 0; lane < lanes; lane++)
            {
                part.TooLong[wait] += over[lane] >= Forgiven ? 1 : 0;
                isTooLong[lane] |= over[lane] >= Forgiven;
            }
        }

        part.TooLongDays += isTooLong[..lanes].Count(true);
    }

    /// <summary>By how much the chance of being on time rises when there are five spare minutes after a step; the good days stay good.</summary>
    double GainOf(int entry)
    {
        var days = new Days(kitchen, luck);
        var tried = lateDays[..Math.Min(MostLateDays, lateDays.Count)].ToArray();
        var saved = 0;
        for (var first = 0; first < tried.Length; first += Days.AtOnce)
        {
            var some = tried.AsSpan(first, Math.Min(Days.AtOnce, tried.Length - first));
            days.Cook(some, spared: entry, DecisiveStep.SpareMinutes);
            for (var lane = 0; lane < some.Length; lane++)
            {
                saved += days.LatestOf(lane).Late <= OnTimeWithin ? 1 : 0;
            }
        }

        return (double)saved / tried.Length * lateDays.Count / runs;
    }
}
