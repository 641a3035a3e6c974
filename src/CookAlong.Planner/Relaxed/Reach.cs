using CookAlong.Planner.Quick;

namespace CookAlong.Planner.Relaxed;

/// <summary>The minutes of the clock in which each step may start and end where no course is late: its own rules, its dish's holds and the gaps to its neighbours alone.</summary>
internal sealed class Reach
{
    /// <summary>Narrower is quicker, and no more: what is left after so many rounds is wide enough.</summary>
    private const int Rounds = 20;

    private readonly Work work;

    private Reach(Work work)
    {
        this.work = work;
        (StartFrom, EndTo) = (Of(step => Math.Max(step.At ?? 0, Math.Max(0, step.From))), Of(OwnEnd));
        (StartTo, EndFrom) = (Of(step => Math.Min(step.At ?? int.MaxValue, OwnEnd(step) - Least(step))), Of(step => StartFrom[step.Index] + Least(step)));
    }

    public int[] StartFrom { get; }

    public int[] StartTo { get; }

    public int[] EndFrom { get; }

    public int[] EndTo { get; }

    /// <summary>Null where some step has no minute left.</summary>
    public static Reach? Of(Work work)
    {
        var reach = new Reach(work);
        for (var (round, goesOn) = (0, true); round < Rounds && goesOn; round++)
        {
            goesOn = reach.IsNarrowed();
        }

        return work.Steps.All(step => reach.StartFrom[step.Index] <= reach.StartTo[step.Index] && reach.EndFrom[step.Index] <= reach.EndTo[step.Index]) ? reach : null;
    }

    private static int Least(QuickStep step) => step.Ways.Min(way => way.Minutes);

    private static int Most(QuickStep step) => step.Ways.Max(way => way.Minutes);

    private int[] Of(Func<QuickStep, int> minute) => [.. work.Steps.Select(minute)];

    /// <summary>Every step of a dish ends before its hold begins.</summary>
    private int OwnEnd(QuickStep step) => Math.Min(step.To, work.Promised[step.Course] - work.Dishes[step.Dish].Holds.Min(hold => hold.Hold.Least));

    private bool IsNarrowed()
    {
        var isNarrowed = false;
        foreach (var step in work.Steps)
        {
            var (at, dish) = (step.Index, work.Dishes[step.Dish]);
            AtLeast(EndFrom, at, StartFrom[at] + Least(step));
            AtMost(EndTo, at, StartTo[at] + Most(step));

            // One that alone is the last ends no sooner than the longest hold allows.
            if (step.IsLast && dish.LastSteps == 1)
            {
                AtLeast(EndFrom, at, work.Promised[step.Course] - dish.Holds.Max(hold => hold.Hold.Limit));
            }

            foreach (var gap in step.Before)
            {
                AtLeast(StartFrom, at, EndFrom[gap.Step] + gap.Least);
                AtMost(EndTo, gap.Step, StartTo[at] - gap.Least);
                AtLeast(EndFrom, gap.Step, StartFrom[at] - gap.Most);
                AtMost(StartTo, at, EndTo[gap.Step] + gap.Most);
            }

            AtLeast(StartFrom, at, EndFrom[at] - Most(step));
            AtMost(StartTo, at, EndTo[at] - Least(step));
        }

        return isNarrowed;

        void AtLeast(int[] minutes, int at, int minute)
        {
            isNarrowed |= minute > minutes[at];
            minutes[at] = Math.Max(minutes[at], minute);
        }

        void AtMost(int[] minutes, int at, int minute)
        {
            isNarrowed |= minute < minutes[at];
            minutes[at] = Math.Min(minutes[at], minute);
        }
    }
}
