using System.Collections.Immutable;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Planning;

/// <summary>The same plan moved right: nobody's order, place or person changes, only the clock.</summary>
public static class Retiming
{
    /// <summary>
    /// The plan as it will go from <paramref name="now"/> on if nobody changes it: finished and running steps as they are,
    /// every other step no earlier than planned, than now, and than what it waits for (steps, oven temperature, shelves, rings, people).
    /// </summary>
    public static Retimed MoveRight(Meal meal, Plan plan, IReadOnlyList<StepFact> facts, Minute now) => throw new NotImplementedException();
}

/// <param name="Slack">Per unfinished step: minutes it may still slip before a promised table time does.</param>
/// <param name="BreathingRoom">Minutes the whole kitchen may pause now and still serve on time; 0 when late already.</param>
public sealed record Retimed(
    ImmutableDictionary<StepId, (Minute Start, Minute End)> Steps,
    ImmutableDictionary<CourseId, Minute> TableTimes,
    ImmutableDictionary<StepId, int> Slack,
    int BreathingRoom);
