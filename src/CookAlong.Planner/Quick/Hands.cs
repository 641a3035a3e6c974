namespace CookAlong.Planner.Quick;

/// <summary>Finds the people for a step: its hands, one for each of its tends, and a grown-up nearby.</summary>
internal sealed class Hands(Work work)
{
    private readonly List<QuickJob> jobs = [];

    /// <summary>The latest end up to <paramref name="end"/> at which everybody it takes is free.</summary>
    public int Latest(QuickStep step, QuickWay way, int end, int turn, Rooms rooms)
    {
        while (true)
        {
            end = LatestOfHands(way, end, rooms);
            if (end == Rooms.Nowhere || end - way.Minutes < -work.Margin)
            {
                return Rooms.Nowhere;
            }

            if (way.Tends.Length == 0)
            {
                return end;
            }

            var before = rooms.Marks;
            var found = Mark(step, way, end - way.Minutes, turn, rooms);
            rooms.Back(before);

            if (found)
            {
                return end;
            }

            end--;
        }
    }

    /// <summary>Takes them, at a start that <see cref="Latest"/> found.</summary>
    public void Take(QuickStep step, QuickWay way, int start, int turn, Rooms rooms, List<QuickJob> taken)
    {
        Mark(step, way, start, turn, rooms);
        taken.AddRange(jobs);
    }

    private static int LatestOfHands(QuickWay way, int end, Rooms rooms)
    {
        for (var moved = true; moved;)
        {
            moved = false;
            if (way.Absent >= 0)
            {
                var there = rooms.LatestFree(way.Absent, end, way.Minutes);
                moved |= there < end;
                end = there;
            }

            foreach (var share in way.Shares)
            {
                if (end == Rooms.Nowhere)
                {
                    return end;
                }

                if (AreFree(share, end - way.Minutes, way.Minutes, rooms))
                {
                    continue;
                }

                // Going back, nobody gets free before the next who does.
                var next = Rooms.Nowhere;
                foreach (var helper in share.Able)
                {
                    var at = rooms.LatestFree(helper, end, way.Minutes);
                    next = at < end ? Math.Max(next, at) : next;
                }

                (end, moved) = (next, true);
            }

            if (end == Rooms.Nowhere)
            {
                return end;
            }
        }

        return end;
    }

    private static bool AreFree(QuickShare share, int start, int minutes, Rooms rooms)
    {
        var wanted = share.Count;
        for (var at = 0; at < share.Able.Length && wanted > 0; at++)
        {
            wanted -= rooms.IsFree(share.Able[at], start, minutes) ? 1 : 0;
        }

        return wanted <= 0;
    }

    private bool Mark(QuickStep step, QuickWay way, int start, int turn, Rooms rooms)
    {
        jobs.Clear();
        foreach (var share in way.Shares)
        {
            var wanted = share.Count;
            for (var at = 0; at < share.Able.Length && wanted > 0; at++)
            {
                var helper = share.Able[(at + turn) % share.Able.Length];
                if (rooms.IsFree(helper, start, way.Minutes))
                {
                    Add(new QuickJob(step.Index, null, start, way.Minutes, helper), rooms);
                    wanted--;
                }
            }
        }

        foreach (var tend in way.Tends)
        {
            if (!Mark(step, tend, start, turn, rooms))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>As near its time as somebody can.</summary>
    private bool Mark(QuickStep step, QuickTend tend, int start, int turn, Rooms rooms)
    {
        var nominal = Math.Clamp(tend.Nominal, tend.From, tend.To);
        for (var off = 0; off <= tend.To - tend.From; off++)
        {
            if (nominal + off <= tend.To && Mark(step, tend, start + nominal + off, rooms, turn)
                || off > 0 && nominal - off >= tend.From && Mark(step, tend, start + nominal - off, rooms, turn))
            {
                return true;
            }
        }

        return false;
    }

    private bool Mark(QuickStep step, QuickTend tend, int at, Rooms rooms, int turn)
    {
        for (var index = 0; index < tend.Able.Length; index++)
        {
            var helper = tend.Able[(index + turn) % tend.Able.Length];
            if (rooms.IsFree(helper, at, tend.Minutes))
            {
                Add(new QuickJob(step.Index, tend, at, tend.Minutes, helper), rooms);
                return true;
            }
        }

        return false;
    }

    private void Add(QuickJob job, Rooms rooms)
    {
        rooms.Mark(job.Helper, job.Start, job.Minutes);
        jobs.Add(job);
    }
}
