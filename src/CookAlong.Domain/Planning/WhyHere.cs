using System.Collections.Immutable;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning.Order;

namespace CookAlong.Domain.Planning;

/// <summary>Why a step stands where it stands: how late it may be for its table times to be kept, and what says so, as far as the table.</summary>
/// <param name="Start">The latest it may start, others re-timed in the same order.</param>
/// <param name="End">The latest it may end.</param>
/// <param name="Chain">
/// What holds the step, then what holds that, and so on: the last one holds by itself, a table time, a fixed time or the end of
/// somebody's hours. The shortest such chain; there may be others as tight.
/// </param>
public sealed record WhyHere(StepId Step, Minute Start, Minute End, ImmutableArray<Because> Chain)
{
    /// <param name="plan">One that has passed <see cref="PlanCheck"/>, before it runs.</param>
    public static WhyHere Of(Meal meal, Plan plan, StepId step) => new TightLinks(meal, plan).Why(step);
}

/// <summary>One reason why a step may be no later. The sentence is made at the edge.</summary>
/// <param name="At">The minute that holds: when what comes next begins at the latest, or what ends does.</param>
public abstract record Because(Minute At)
{
    /// <summary>The step that the chain goes on with; null where it ends, or goes on with something that is no step.</summary>
    public StepId? Next { get; init; }

    /// <summary>Holds by itself.</summary>
    public bool IsEnd => this is Served or Fixed or WindowCloses or Leaves;

    /// <summary>The dish is on the table then, after a rest of so many minutes (0 = none).</summary>
    public sealed record Served(CourseId Course, Minute At, int Rest) : Because(At);

    /// <summary>The step has a fixed start.</summary>
    public sealed record Fixed(Minute At) : Because(At);

    /// <summary>The step's own window closes.</summary>
    public sealed record WindowCloses(Minute At) : Because(At);

    /// <summary>Whoever does it goes then; null = the last grown-up who could stay nearby.</summary>
    public sealed record Leaves(HelperId? Helper, Minute At) : Because(At);

    /// <summary>The next step of the food waits for it, for at least so many minutes after its end.</summary>
    public sealed record Awaited(Minute At, int Gap) : Because(At);

    /// <summary>It must not wait longer than so many minutes after <see cref="Because.Next"/>, which may end no later itself.</summary>
    public sealed record SoonAfter(Minute At, int Most) : Because(At);

    /// <summary>The oven must be at another temperature by then, and needs minutes to get there.</summary>
    public sealed record OvenTurns(OvenId Oven, Minute At, CelsiusRange Celsius, int Minutes) : Because(At);

    /// <summary>What it stands on or under is needed for something else.</summary>
    public sealed record PlaceNeeded(PlaceKind Place, Minute At) : Because(At);

    /// <summary>Its hands have their next job then.</summary>
    public sealed record HandsNeeded(HelperId Helper, Minute At) : Because(At);

    /// <summary>A tend falls due in it then.</summary>
    public sealed record Tended(Minute At) : Because(At);

    /// <summary>The dish has to be in its warm oven then.</summary>
    public sealed record KeptWarm(DishId Dish, Minute At) : Because(At);
}

public enum PlaceKind { Shelf, Ring, Grill, Appliance }
