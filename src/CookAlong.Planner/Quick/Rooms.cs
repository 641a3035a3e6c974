namespace CookAlong.Planner.Quick;

/// <summary>What is in use, minute by minute, while a meal is laid out; finds the latest place where something still fits.</summary>
internal sealed class Rooms
{
    /// <summary>There is no such place.</summary>
    public const int Nowhere = int.MinValue;

    private readonly Work work;
    private readonly ushort[] used;
    private readonly List<Stay>[] stays;
    private readonly List<(int Cell, int Minutes, ushort Amount, int Oven)> marks = [];

    public Rooms(Work work)
    {
        this.work = work;
        used = [.. work.Taken];
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
            var (cell, minutes, amount, oven) = marks[at];
            if (oven >= 0)
            {
                stays[oven].RemoveAt(stays[oven].Count - 1);
                continue;
            }

            foreach (ref var one in used.AsSpan(cell, minutes))
            {
                one -= amount;
            }
        }

        marks.RemoveRange(to, marks.Count - to);
    }

    public bool IsFree(int row, int start, int minutes) =>
        start >= -work.Margin && !used.AsSpan(work.Cell(row) + start, minutes).ContainsAnyExcept((ushort)0);

    /// <summary>The latest end up to <paramref name="end"/> with the row wholly free for so many minutes; <see cref="Nowhere"/> if none.</summary>
    public int LatestFree(int row, int end, int minutes) => Latest(row, 0, end, minutes);

    public void Mark(int row, int start, int minutes, ushort amount = 1)
    {
        var cell = work.Cell(row) + start;
        marks.Add((cell, minutes, amount, -1));
        foreach (ref var one in used.AsSpan(cell, minutes))
        {
            one += amount;
        }
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
            Mark(take.Row, start, end - start, take.Amount);
        }

        if (spot.Oven >= 0)
        {
            stays[spot.Oven].Add(new Stay(start, end, spot.Range));
            marks.Add((0, 0, 0, spot.Oven));
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
