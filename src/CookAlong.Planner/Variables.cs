using System.Collections.Immutable;
using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using Google.OrTools.Sat;

namespace CookAlong.Planner;

/// <summary>A step's unknowns. A step that has begun is fixed: its start and end are constants and it has one way.</summary>
internal sealed record StepVariables(Dish Dish, Step Step, LinearExpr Start, LinearExpr End, ImmutableArray<WayVariables> Ways, StepFact? Fact)
{
    public bool HasBegun => Fact is not null;
}

/// <param name="Taken">True when the step is done this way.</param>
/// <param name="Interval">From start to end, present when taken; null for a step that has begun.</param>
internal sealed record WayVariables(int Option, Way Way, int Minutes, ILiteral Taken, IntervalVar? Interval);

/// <summary>Something in an oven: a step done one way in one oven, or a dish kept warm in it.</summary>
/// <param name="Celsius">What it asks for within what this oven keeps.</param>
/// <param name="Fixed">Set, in minutes of the clock, when it has begun and cannot move.</param>
internal sealed record OvenStay(
    Oven Oven,
    Dish Dish,
    Step? Step,
    int Which,
    LinearExpr Start,
    LinearExpr End,
    ILiteral Here,
    IntervalVar? Interval,
    CelsiusRange Celsius,
    int Shelves,
    (int Start, int End)? Fixed);

/// <summary>A step done one way under one grill.</summary>
internal sealed record GrillStay(Grill Grill, Step Step, int Option, ILiteral Here, IntervalVar? Interval, (int Start, int End)? Fixed);

/// <summary>One turn of a tend, for a step done one way.</summary>
/// <param name="Done">It is past or cannot move any more: a constant.</param>
internal sealed record TendVariables(Step Step, int Tend, int Turn, int Minutes, LinearExpr Start, ILiteral Taken, IntervalVar? Interval, bool Done);

/// <summary>How a dish waits.</summary>
/// <param name="GoesIn">When it takes its place in a warm oven; null when no warm hold is possible.</param>
internal sealed record HoldVariables(Dish Dish, LinearExpr LastEnd, ImmutableArray<ILiteral?> Chosen, ImmutableArray<LinearExpr?> GoesIn)
{
    /// <summary>Null where it may be ready by itself.</summary>
    public FinishVariables? Finish { get; init; }
}

/// <summary>The last minutes of work on a dish, with a pair of hands at it.</summary>
internal sealed record FinishVariables(LinearExpr From, int Minutes);

/// <summary>Work that needs hands: <paramref name="Count"/> different helpers out of <paramref name="Able"/> (positions in the meal's list).</summary>
internal sealed record Job(
    Step Step,
    (int Tend, int Turn)? Tend,
    LinearExpr Start,
    int Minutes,
    ILiteral Taken,
    IntervalVar Interval,
    int Count,
    ImmutableArray<int> Able);
