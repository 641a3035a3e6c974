using CookAlong.Domain;
using CookAlong.Domain.Meals;

namespace CookAlong.Planner.Quick;

/// <summary>
/// A meal laid out for the quick search: everything by number, in minutes of the clock. Whatever can be used up (a helper's
/// hands, rings, shelves, a grill, an appliance) is a row of <see cref="Taken"/>, one cell a minute.
/// </summary>
internal sealed class Work
{
    public required Meal Meal { get; init; }

    public required Clock Clock { get; init; }

    public required QuickStep[] Steps { get; init; }

    public required QuickDish[] Dishes { get; init; }

    /// <summary>The steps that are still to come, by number; all where none is: only these are worth changing.</summary>
    public required int[] ToCome { get; init; }

    public required QuickOven[] Ovens { get; init; }

    /// <summary>Per course, minutes of the clock.</summary>
    public required int[] Promised { get; init; }

    /// <summary>Where no course is late, the last table time, and the first minute whose work counts to its day.</summary>
    public int LastPromised => Promised.Max();

    public int FirstOfDay => LastPromised - Prices.KitchenMost;

    /// <summary>Of a step that moves from when people were told.</summary>
    public required MovePrice Moving { get; init; }

    /// <summary>Of its cushion each hold has its own part.</summary>
    public required Prices Prices { get; init; }

    public required QuickCrowd[] Crowds { get; init; }

    /// <summary>Per course: its steps of which some way takes hands.</summary>
    public required int[][] HandsOn { get; init; }

    /// <summary>Steps of which some way is in the oven; none where turns of its dial have no price.</summary>
    public required int[] InOven { get; init; }

    /// <summary>Its clock is turned round: <see cref="Quick.Mirror"/>.</summary>
    public bool IsMirror { get; init; }

    /// <summary>Minutes before the clock's first that a row has cells for: a meal that does not fit reaches into them, and is late by as much.</summary>
    public required int Margin { get; init; }

    /// <summary>Cells of a row.</summary>
    public required int Width { get; init; }

    /// <summary>What is in use before anything is placed, row after row.</summary>
    public required ushort[] Taken { get; init; }

    /// <summary>What a running meal has fixed; null before it runs.</summary>
    public Begun? Begun { get; init; }

    /// <summary>Per course: the table time of one that has been served; null = still to come.</summary>
    public required int?[] Served { get; init; }

    /// <summary>Where the search for a new plan of a running meal begins; null before it runs.</summary>
    public QuickMoved? Moved { get; init; }

    /// <summary>The plan that people were told; null where nobody was, and while a meal runs.</summary>
    public QuickMoved? Told { get; init; }

    /// <summary>The first rows: the helpers, then the hours without a grown-up.</summary>
    public int People => Meal.Helpers.Length + 1;

    /// <summary>Where a row has its cell of minute 0.</summary>
    public int Cell(int row) => (row * Width) + Margin;
}

/// <param name="Before">What it waits for.</param>
/// <param name="After">What waits for it.</param>
/// <param name="From">It starts no earlier, by a window or a fixed start.</param>
/// <param name="To">It ends no later, by a window.</param>
/// <param name="At">It starts then; null = free.</param>
/// <param name="IsLast">No other step of its dish waits for it.</param>
internal sealed record QuickStep(
    int Index,
    Step Step,
    int Dish,
    int Course,
    QuickWay[] Ways,
    List<QuickGap> Before,
    List<QuickGap> After,
    int From,
    int To,
    int? At,
    bool IsLast)
{
    /// <summary>When people were told it starts; null where nobody was told, and for what has begun.</summary>
    public int? Told { get; init; }

    /// <summary>Whom people were told.</summary>
    public int[] ToldTo { get; init; } = [];

    /// <summary>When it began and ended, or is expected to end; null = not begun.</summary>
    public (int Start, int End)? Begun { get; init; }

    /// <summary>It starts no earlier: now, or what has begun must be over first. Serving later always mends it.</summary>
    public int Floor { get; init; }

    /// <summary>Starts after these minutes are dear, and not impossible: what forces them has begun, or the time has passed.</summary>
    public int[] Overdue { get; init; } = [];
}

internal readonly record struct QuickGap(int Step, int Least, int Most);

/// <param name="Absent">The row that says when no grown-up is there; -1 where that does not matter.</param>
internal sealed record QuickWay(int Option, int Minutes, bool IsHandsOn, int People, QuickShare[] Shares, QuickSpot[] Spots, QuickTend[] Tends, int Absent);

/// <summary>So many of these helpers' rows.</summary>
internal sealed record QuickShare(int Count, int[] Able);

/// <summary>A place where a step can be done.</summary>
/// <param name="Oven">-1 = none.</param>
/// <param name="Range">Which of the oven's ranges.</param>
/// <param name="Earliest">The first minute its oven can be warm or cool enough.</param>
internal sealed record QuickSpot(int Oven, int Range, int Earliest, OvenId? OvenId, GrillId? Grill, QuickTake[] Takes);

/// <param name="Room">How much may be in use before it for it still to fit.</param>
internal readonly record struct QuickTake(int Row, ushort Amount, ushort Room);

/// <summary>One turn of a tend, as minutes after its step's start; done as near to <paramref name="Nominal"/> as somebody can.</summary>
internal sealed record QuickTend(int Tend, int Turn, int From, int Nominal, int To, int Minutes, int[] Able)
{
    /// <summary>Whom people were told.</summary>
    public int[] ToldTo { get; init; } = [];
}

internal sealed record QuickDish(Dish Dish, int Course, QuickHold[] Holds, int[] Steps, int LastSteps);

/// <param name="Spots">Where it can be kept warm; empty for the other kinds.</param>
internal sealed record QuickHold(int Index, Hold Hold, int Cushion, QuickSpot[] Spots)
{
    /// <summary>Of waiting so many minutes, whatever the limits say.</summary>
    public long PriceOf(int wait) =>
        Hold.CostOf(wait) + ((long)Math.Max(0, Cushion - wait) * Prices.CushionMinute);
}

/// <param name="Hands">Minutes of work in the last <paramref name="Minutes"/> before the course's table that cost nothing.</param>
internal readonly record struct QuickCrowd(int Course, int Minutes, int Hands, int Price);

/// <param name="Gap">Minutes between a stay in one range and the next in another; 0 where the ranges meet.</param>
internal sealed record QuickOven(int[,] Gap);
