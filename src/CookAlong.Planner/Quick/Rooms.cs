namespace CookAlong.Planner.Quick;

/// <summary>What is in use, minute by minute, while a meal is laid out; finds the latest place where something still fits.</summary>
internal sealed class Rooms
{
    /// <summary>There is no such place.</summary>
    public const int Nowhere = int.MinValue;

    private readonly Work work;
    private readonly ushort[] used;
    private readonly Busy[] people;
    private readonly List<Stay>[] stays;

    /// <summary>A stretch of a row; or, with its number, the last stay of an oven.</summary>
    private readonly List<(int Row, int Start, int Minutes, ushort Amount, int Oven)> marks = [];

    public Rooms(Work work)
    {
        this.work = work;
        used = [.. work.Taken];
        people = [.. Enumerable.Range(0, work.People).Select(row => new Busy(work.Taken.AsSpan(row * work.Width, work.Width)))];
        stays = [.. work.Ovens.Select((_, oven) => work.Begun?.Stays.Where(stay => stay.Oven == oven).Select(stay => new Stay(stay.Start, stay.End, stay.Range)).ToList() ?? [])];
    }

    private readonly record struct Stay(int Start, int End, int Range);

    /// <summary>How much has been marked: what <see cref="Back"/> goes back to.</summary>
    public int Marks => marks.Count;

    /// <summary>As it was when there were so many marks.</summary>
    public void Back(int to)
    {
        for (var at = marks.Count - 1; at >= to; at--)
        {
            var (row, start, minutes, amount, oven) = marks[at];
            if (oven >= 0)
            {
                stays[oven].RemoveAt(stays[oven].Count - 1);
            }
            else if (row < people.Length)
            {
                people[row].Turn(work.Margin + start, minutes);
            }
            else
            {
                foreach (ref var one in used.AsSpan(work.Cell(row) + start, minutes))
                {
                    one -= amount;
                }
            }
        }

        marks.RemoveRange(to, marks.Count - to);
    }

    public bool IsFree(int helper, int start, int minutes) => people[helper].IsFree(work.Margin + start, minutes);

    /// <summary>The latest end up to <paramref name="end"/> with the helper (or the hours without a grown-up) wholly free for so many minutes; <see cref="Nowhere"/> if none.</summary>
    public int LatestFree(int helper, int end, int minutes) => people[helper].LatestFree(work.Margin + end, minutes) is { } at ? at - work.Margin : Nowhere;

    /// <summary>The helper, who is free then, is so no more.</summary>
    public void Mark(int helper, int start, int minutes)
    {
        marks.Add((helper, start, minutes, 1, -1));
        people[helper].Turn(work.Margin + start, minutes);
    }

    /// <summary>The latest end up to <paramref name="end"/> at which everything the spot takes is free, its oven's temperature included.</summary>
    public int Latest(QuickSpot spot, int end, int minutes)
    {
        for (var moved = true; moved;)
        {
            moved = false;
            foreach (var take in spot.Takes)
            {
                var fits = Latest(take.Row, take.Room, end, minutes);
                if (fits == Nowhere)
                {
                    return Nowhere;
                }

                moved |= fits < end;
                end = fits;
            }

            var warm = spot.Oven < 0 ? end : LatestWarm(spot, end, minutes);
            moved |= warm < end;
            end = warm;
        }

        return end;
    }

    public void Take(QuickSpot spot, int start, int end)
    {
        foreach (var take in spot.Takes)
        {
            marks.Add((take.Row, start, end - start, take.Amount, -1));
            foreach (ref var one in used.AsSpan(work.Cell(take.Row) + start, end - start))
            {
                one += take.Amount;
            }
        }

        if (spot.Oven >= 0)
        {
            stays[spot.Oven].Add(new Stay(start, end, spot.Range));
            marks.Add((0, 0, 0, 0, spot.Oven));
        }
    }

    private int Latest(int row, ushort room, int end, int minutes)
    {
        var cells = used.AsSpan(row * work.Width, work.Width);
        while (true)
        {
            var start = end - minutes + work.Margin;
            if (start < 0)
            {
                return Nowhere;
            }

            var full = room == ushort.MaxValue ? -1 : cells.Slice(start, minutes).LastIndexOfAnyInRange((ushort)(room + 1), ushort.MaxValue);
            if (full < 0)
            {
                return end;
            }

            end = cells[..(start + full)].LastIndexOfAnyInRange((ushort)0, room) + 1 - work.Margin;
        }
    }

    private int LatestWarm(QuickSpot spot, int end, int minutes)
    {
        var gaps = work.Ovens[spot.Oven].Gap;
        for (var moved = true; moved;)
        {
            moved = false;
            foreach (var stay in stays[spot.Oven])
            {
                var (before, after) = (gaps[spot.Range, stay.Range], gaps[stay.Range, spot.Range]);
                if (before > 0 && stay.Start - end < before && end - minutes - stay.End < after)
                {
                    (end, moved) = (stay.Start - before, true);
                }
            }
        }

        return end;
    }
}
