namespace CookAlong.Planner.Quick;

/// <summary>
/// A meal with its clock turned round, so that what lays everything out back from the table pushes it to the first minute
/// instead. Only the order that comes of it is of use: how long dishes wait, and windows, are left out.
/// </summary>
internal static class Mirror
{
    /// <summary>What ends at a minute starts, in the mirror, as long before the end of the clock.</summary>
    /// <param name="asTold">Nothing starts before people were told.</param>
    public static Work Of(Work work, bool asTold = false)
    {
        var (end, margin) = (work.Width - work.Margin - 1, work.Margin + 1);
        var width = work.Width + work.Margin;
        var rows = work.Taken.Length / work.Width;
        var taken = new ushort[rows * width];
        for (var row = 0; row < rows; row++)
        {
            var turned = taken.AsSpan(row * width, work.Width + work.Margin)[work.Margin..];
            work.Taken.AsSpan(row * work.Width, work.Width).CopyTo(turned);
            turned.Reverse();
        }

        return new Work
        {
            Meal = work.Meal,
            Clock = work.Clock,
            Steps = [.. work.Steps.Select(step => Turned(step, end, asTold ? step.Told : null))],
            ToCome = work.ToCome,
            Dishes = [.. work.Dishes.Select((dish, index) => dish with { Course = 0, Holds = [.. dish.Holds.Select(Turned)], LastSteps = work.Steps.Count(step => step.Dish == index && step.Before.Count == 0) })],
            Ovens = [.. work.Ovens.Select(oven => new QuickOven(Turned(oven.Gap)))],
            Promised = [end],
            Moving = default,
            Prices = work.Prices,
            Crowds = [],
            HandsOn = [[]],
            InOven = [],
            Margin = margin,
            Width = width,
            Taken = taken,
            Served = [null],
            Begun = work.Begun is { } begun ? Turned(begun, end) : null,
            IsMirror = true,
        };
    }

    private static QuickStep Turned(QuickStep step, int end, int? told) => step with
    {
        Course = 0,
        Ways = [.. step.Ways.Select(way => way with { Tends = [.. way.Tends.Select(tend => Turned(tend, way.Minutes))] })],
        Before = step.After,
        After = step.Before,
        From = int.MinValue / 2,
        To = end - Math.Max(told ?? int.MinValue, Math.Max(step.Floor, step.From)),
        At = null,
        IsLast = step.Before.Count == 0,
        Floor = int.MinValue / 2,
        Overdue = [],
        Begun = step.Begun is { } span ? (end - span.End, end - span.Start) : null,
    };

    /// <summary>What has begun is in the way; how its dishes wait is of no more use than of the others.</summary>
    private static Begun Turned(Begun begun, int end) => new(
        [.. begun.Steps.Select(step => Turned(step, end, told: null))],
        [.. begun.Stays.Select(stay => stay with { Start = end - stay.End, End = end - stay.Start })],
        [], [], [], Sunk: 0);

    private static QuickTend Turned(QuickTend tend, int minutes) => tend with
    {
        From = minutes - tend.To - tend.Minutes,
        Nominal = minutes - tend.Nominal - tend.Minutes,
        To = minutes - tend.From - tend.Minutes,
    };

    /// <summary>Nothing waits for the first minute.</summary>
    private static QuickHold Turned(QuickHold hold) => hold with { Hold = hold.Hold with { Least = 0, Limit = int.MaxValue, Oven = null }, Spots = [] };

    private static int[,] Turned(int[,] gap)
    {
        var turned = new int[gap.GetLength(0), gap.GetLength(1)];
        for (var from = 0; from < gap.GetLength(0); from++)
        {
            for (var to = 0; to < gap.GetLength(1); to++)
            {
                turned[from, to] = gap[to, from];
            }
        }

        return turned;
    }
}
