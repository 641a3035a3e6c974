using System.Collections.Immutable;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Planning;

/// <summary>Every step with a start, an end, a place and a person, up to table time.</summary>
/// <param name="NotBefore">Where the clock of this plan begins: ovens stand at their starting temperature here.</param>
/// <param name="Gap">0 to 1: how far the cost may lie above the proven bound. 0 = proven.</param>
public sealed record Plan(
    PlanStatus Status,
    double Gap,
    int SolveMilliseconds,
    Minute NotBefore,
    ImmutableArray<PlannedCourse> Courses,
    ImmutableArray<PlannedStep> Steps,
    ImmutableArray<PlannedTend> Tends,
    ImmutableArray<PlannedHold> Holds,
    ImmutableArray<OvenProgramme> Ovens,
    PlanCost Cost,
    Confidence? Confidence,
    ImmutableArray<Conflict> Conflicts)
{
    public PlannedStep Step(StepId id) => Steps.Single(step => step.Step == id);

    public Minute TableTime(CourseId course) => Courses.Single(one => one.Course == course).TableTime;
}

public enum PlanStatus { Optimal, Feasible, None }

/// <param name="TableTime">Never before the promised one.</param>
public sealed record PlannedCourse(CourseId Course, Minute TableTime, Minute Promised)
{
    public int LateMinutes => TableTime - Promised;
}

/// <param name="Option">-1 = the step as written.</param>
/// <param name="Helpers">Who does it; empty unless hands-on.</param>
/// <param name="Slack">Minutes it may slip before a table time does, others re-timed in the same order.</param>
public sealed record PlannedStep(
    StepId Step,
    Minute Start,
    Minute End,
    int Option,
    ImmutableArray<HelperId> Helpers,
    OvenId? Oven,
    GrillId? Grill,
    ImmutableArray<ApplianceId> Appliances,
    int Slack)
{
    public int Minutes => End - Start;
}

/// <param name="Tend">Which of the step's tends (index in <see cref="Step.Tends"/>).</param>
/// <param name="Turn">Which of its times (index in <see cref="Tend.Times"/>).</param>
public sealed record PlannedTend(StepId Step, int Tend, int Turn, Minute At, int Minutes, HelperId Helper)
{
    public Minute End => At + Minutes;
}

/// <param name="Hold">Which of the dish's holds (index in <see cref="Dish.Holds"/>).</param>
/// <param name="From">
/// When the dish takes its place: its last step's end, or for a warm oven the minute it goes in (it may stand out first).
/// </param>
public sealed record PlannedHold(DishId Dish, int Hold, HoldPlace Place, Minute From, Minute To, OvenId? Oven);

/// <summary>An oven's temperature over time, linear between points, from <see cref="Plan.NotBefore"/> on.</summary>
public sealed record OvenProgramme(OvenId Oven, ImmutableArray<OvenPoint> Points, ImmutableArray<DialSetting> Dial);

public readonly record struct OvenPoint(Minute At, int Celsius);

/// <summary>What the cook turns: set the dial to this at that time; 0 = off.</summary>
public readonly record struct DialSetting(Minute At, int Celsius);

/// <param name="LateMinutes">The largest over the courses.</param>
/// <param name="Waiting">The sum of what the holds cost.</param>
/// <param name="KitchenMinutes">First hands-on start to the last table time.</param>
/// <param name="OvenChanges">How often a dial is turned while something depends on it.</param>
/// <param name="Objective">What the planner minimised, in minutes of waiting; comparable only between plans of the same meal, cushion and leans.</param>
public sealed record PlanCost(int LateMinutes, long Waiting, int KitchenMinutes, int OvenChanges, long Objective)
{
    /// <summary>The <see cref="PlanRequest.Cushion"/> it was planned with.</summary>
    public int Cushion { get; init; } = PlanRequest.UsualCushion;

    /// <summary>The <see cref="PlanRequest.Leans"/> it was planned with.</summary>
    public Leans Leans { get; init; }
}

/// <summary>Why there is no plan, or only a late one, and the change that would mend it.</summary>
/// <param name="GainMinutes">How much earlier the latest course would be served; null when the change makes a plan possible at all.</param>
public sealed record Conflict(PlanChange Change, int? GainMinutes);

/// <summary>A change to the meal that the planner found to help. The sentence is made at the edge.</summary>
public abstract record PlanChange
{
    public sealed record ServeLater(CourseId Course, int Minutes) : PlanChange;

    public sealed record StartEarlier(int Minutes) : PlanChange;

    /// <param name="During">When it is needed, warming up included; null = not known.</param>
    public sealed record AddOven(Window? During = null) : PlanChange;

    public sealed record AddRings(int Rings) : PlanChange;

    public sealed record AddHelper(Minute From, Minute To) : PlanChange;

    public sealed record WaitLonger(DishId Dish, int Minutes) : PlanChange;

    /// <summary>Whatever of the dish keeps until the day is done the day before, between these two.</summary>
    public sealed record MakeAhead(DishId Dish, Minute From, Minute To) : PlanChange;

    public sealed record LeaveOut(DishId Dish) : PlanChange;
}
