using System.Collections.Immutable;
using CookAlong.Domain.Doneness;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Runs;

/// <summary>What every screen shows of a run, at one moment. Pure data; words, colours and shapes are the edge's.</summary>
/// <param name="Sequence">The last event it knows of.</param>
/// <param name="BreathingRoom">Minutes the whole kitchen may pause now and still serve on time; 0 when there are none or table time has slipped.</param>
/// <param name="Taken">A new plan of the last ten minutes, with its changes to steps that have not begun since; null otherwise.</param>
/// <param name="Now">Running and due steps and due tends, most urgent first.</param>
/// <param name="Next">What starts next, in order of its expected time.</param>
/// <param name="Done">Finished steps, latest first.</param>
/// <param name="Calls">Every call of the run that is not past and acknowledged, in order of its time.</param>
public sealed partial record Board(
    long Sequence,
    DateTimeOffset At,
    bool IsOver,
    BoardPause? Pause,
    ImmutableArray<BoardCourse> Courses,
    int BreathingRoom,
    BoardSlip? Slip,
    PlanTaken? Taken,
    ImmutableArray<BoardCard> Now,
    ImmutableArray<BoardOven> Ovens,
    ImmutableArray<BoardPlace> Rings,
    ImmutableArray<BoardPlace> Grills,
    ImmutableArray<BoardCard> Next,
    ImmutableArray<BoardWaiting> Waiting,
    ImmutableArray<BoardCard> Done,
    ImmutableArray<BoardPerson> People,
    ImmutableArray<Call> Calls)
{
    /// <summary>Who was said to go, whether or not they have gone yet.</summary>
    public ImmutableHashSet<HelperId> Leaving { get; init; } = [];

    public ImmutableArray<BoardResting> Resting { get; init; } = [];

    public ImmutableArray<BoardStanding> Standing { get; init; } = [];

    /// <summary>Dishes that can be brought back.</summary>
    public ImmutableArray<Dish> LeftOut { get; init; } = [];

    /// <summary>A new plan was taken, and can be taken back.</summary>
    public bool HasPlanBefore { get; init; }

    /// <summary>See <see cref="Run.PlanRule"/>.</summary>
    public int? PlanRule { get; init; }
}

/// <param name="After">The pause point's step; null = the host held everything.</param>
public sealed record BoardPause(DateTimeOffset Since, StepId? After);

/// <param name="Expected">Table time as things stand now.</param>
public sealed record BoardCourse(CourseId Course, string Name, Minute Promised, Minute Expected);

/// <summary>Table time as it would be if nobody changed the plan.</summary>
/// <param name="Causes">The steps that are behind, worst first.</param>
public sealed record BoardSlip(int LateMinutes, ImmutableArray<StepId> Causes);

/// <summary>One job, as a card.</summary>
/// <param name="Starts">When it started, or is expected to.</param>
/// <param name="Ends">When it ended, or is expected to.</param>
/// <param name="Helpers">Whose it is; empty = free to take (or nobody's hands are needed).</param>
/// <param name="IsFree">A helper may claim it.</param>
/// <param name="Place">Where it happens, for the oven's and the rings' pictures.</param>
/// <param name="Tend">Set when the card is a tend of the step, not the step itself.</param>
/// <param name="Call">The call that is due for it and unacknowledged.</param>
public sealed record BoardCard(
    Step Step,
    Dish Dish,
    CardState State,
    DateTimeOffset Starts,
    DateTimeOffset Ends,
    Attention Attention,
    ImmutableArray<HelperId> Helpers,
    bool IsFree,
    CardPlace Place,
    CardTend? Tend,
    Call? Call)
{
    /// <summary>Until when a due step is its holders'; then, if it was taken or given or their phone is silent, it is free.</summary>
    public Minute? HeldUntil { get; init; }

    /// <summary>Somebody took it or was given it, and has it not by the plan alone.</summary>
    public bool IsClaimed { get; init; }

    /// <summary>Minutes added by hand that can be taken back.</summary>
    public int ExtraMinutes { get; init; }

    public ImmutableArray<TendNote> TendNotes { get; init; } = [];

    /// <summary>Null where no thermometer is asked.</summary>
    public CardCore? Core { get; init; }
}

public enum CardState
{
    /// <summary>Its time has not come, or it waits for another step.</summary>
    Waiting,

    /// <summary>Its time has come; nobody has started it.</summary>
    Due,

    Running,

    /// <summary>Running past its expected end.</summary>
    Over,

    Done,
}

public sealed record CardPlace(OvenId? Oven, int Shelves, int Rings, GrillId? Grill, ImmutableArray<ApplianceId> Appliances);

/// <param name="Step">The step that is not done before the thermometer says so: the card's own, or a later one of the same joint.</param>
/// <param name="Waits">Minutes from its end, as things stand, until its dish goes on or is served.</param>
public sealed record CardCore(StepId Step, CoreWanted Wanted, ImmutableArray<CoreReading> Readings, string? Vouched, int Waits)
{
    /// <summary>While it roasts.</summary>
    public FoilSpan? Foil { get; init; }
}

public sealed record CardTend(int Tend, int Turn, string Text, int Minutes);

/// <param name="Celsius">What the dial should stand at now; 0 = off.</param>
/// <param name="Next">The next turn of the dial.</param>
/// <param name="Shelves">One entry a shelf, top first; null = empty.</param>
public sealed record BoardOven(OvenId Oven, string Name, int Celsius, Planning.DialSetting? Next, ImmutableArray<BoardTray?> Shelves)
{
    /// <summary>The last that a thermometer in it showed; null = nobody read one.</summary>
    public OvenShown? Reading { get; init; }
}

/// <param name="Card">What is on the shelf now (<see cref="CardState.Running"/> or <see cref="CardState.Over"/>), goes in next (otherwise), or null for a dish kept warm.</param>
/// <param name="KeptWarm">A dish that waits here for the table.</param>
public sealed record BoardTray(BoardCard? Card, Dish? KeptWarm, DateTimeOffset Starts, DateTimeOffset Ends);

/// <summary>A ring or a grill. <paramref name="Card"/> null = free.</summary>
public sealed record BoardPlace(int Number, string Name, BoardCard? Card);

/// <summary>A finished dish on its way to the table.</summary>
public sealed record BoardWaiting(Dish Dish, HoldPlace Place, DateTimeOffset Since, Minute Table, Minute Limit);

/// <param name="Mark">0, 1, 2, ...: the shape and colour that stand for this person on every screen and on paper.</param>
/// <param name="Person">Null while nobody has joined as this helper.</param>
public sealed record BoardPerson(HelperId Helper, string Name, int Mark, bool IsChild, PersonId? Person, bool IsHereNow, Minute? HereFrom);
