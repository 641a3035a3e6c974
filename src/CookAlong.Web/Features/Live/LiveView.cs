using System.Collections.Immutable;
using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Runs;

namespace CookAlong.Web.Features.Live;

/// <summary>What a live page shows: a run's board, and who is looking at it.</summary>
/// <param name="Meal">For the names of things and the kitchen's time zone.</param>
/// <param name="Me">The helper whose phone this is; null for a host who does not cook and for a watcher.</param>
public sealed record LiveView(RunId Run, Meal Meal, Board Board, PersonId Person, Role Role, HelperId? Me, OfferedPlan? Offer)
{
    public Words Words { get; } = new(Meal, Board.People);

    public WallClock Clock { get; } = new(Meal.TimeZone);

    public bool IsHost => Role == Role.Host;

    public bool MayTap => Role != Role.Watcher && !Board.IsOver;
}

/// <summary>The re-planner's answer to a slip, until somebody takes it or the run moves on.</summary>
/// <param name="LateMinutes">How late the latest course would be with it.</param>
public sealed record OfferedPlan(Guid Id, int LateMinutes, ImmutableArray<OfferedChange> Changes);

/// <summary>A step that would be at another time or somebody else's.</summary>
public sealed record OfferedChange(StepId Step, Minute Was, Minute Becomes, ImmutableArray<HelperId> WasBy, ImmutableArray<HelperId> BecomesBy);
