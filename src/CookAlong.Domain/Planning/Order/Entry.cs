using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Planning.Order;

enum EntryKind { Table, Step, Tend, WarmHold }

/// <summary>
/// Something of the plan that has a time: a step, a tend, a dish going into a warm oven, a course being served.
/// Times are minutes after the plan's first.
/// </summary>
/// <param name="Start">Planned, or for a begun step when it did.</param>
/// <param name="Step">The step itself, or the one a tend belongs to.</param>
sealed record Entry(EntryKind Kind, int Start, int Length, PlannedStep? Step = null, PlannedTend? Tend = null, PlannedHold? Hold = null, PlannedCourse? Course = null)
{
    public Way? Way { get; init; }

    /// <summary>Begun steps stand where they stand.</summary>
    public bool IsBegun { get; init; }

    public bool IsFinished { get; init; }

    /// <summary>Somebody is at it now.</summary>
    public bool IsInHands => IsBegun && !IsFinished && Way!.Attention == Attention.HandsOn;

    /// <summary>Fixed start; null = free.</summary>
    public int? FixedAt { get; init; }

    /// <summary>Spans it must lie in one of, in order and apart; null = anywhere.</summary>
    public (int From, int To)[]? Spans { get; init; }

    public int End => Start + Length;

    /// <summary>What the order of the plan sorts by: begun steps first, then the planned time; at one minute the table first.</summary>
    public (bool, int, EntryKind) Rank => (!IsBegun, Start, Kind);
}

/// <summary><paramref name="To"/> starts no sooner than <paramref name="Least"/> minutes after the end (or the start) of <paramref name="From"/>. Both are positions in the order.</summary>
readonly record struct Link(int From, bool FromEnd, int To, int Least);

/// <summary><paramref name="To"/> starts no later than <paramref name="Most"/> minutes after the end of <paramref name="From"/>.</summary>
readonly record struct Limit(int From, int To, int Most);
