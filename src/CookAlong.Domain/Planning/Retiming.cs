using System.Collections.Immutable;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning.Order;

namespace CookAlong.Domain.Planning;

/// <summary>The same plan moved right: nobody's order, place or person changes, only the clock.</summary>
public static class Retiming
{
    /// <summary>
    /// The plan as it will go from <paramref name="now"/> on if nobody changes it: finished and running steps as they are,
    /// every other step no earlier than planned, than now, and than what it waits for (steps, oven temperature, shelves, rings, people).
    /// A step that can still wait is held back where its food would otherwise stand too long; where nothing can keep a limit,
    /// the times are given all the same, for they are what will happen.
    /// </summary>
    public static Retimed MoveRight(Meal meal, Plan plan, IReadOnlyList<StepFact> facts, Minute now)
    {
        var order = OrderOfWork.Of(meal, plan, facts, now);
        var earliest = new EarliestTimes(order, now - order.Zero);
        var latest = new LatestTimes(order, earliest, course => course.Promised);

        var steps = ImmutableDictionary.CreateBuilder<StepId, (Minute, Minute)>();
        var tends = ImmutableDictionary.CreateBuilder<(StepId, int, int), Minute>();
        var tables = ImmutableDictionary.CreateBuilder<CourseId, Minute>();
        foreach (var (at, entry) in order.Entries.Index())
        {
            var start = order.Zero + earliest.Starts[at];
            if (entry.Step is { } step)
            {
                steps[step.Step] = (start, order.Zero + earliest.Ends[at]);
            }
            else if (entry.Tend is { } tend)
            {
                tends[(tend.Step, tend.Tend, tend.Turn)] = start;
            }
            else if (entry.Course is { } course)
            {
                tables[course.Course] = start;
            }
        }

        return new(steps.ToImmutable(), tables.ToImmutable(), Slack.Between(order, earliest, latest), BreathingRoom(order, earliest, now))
        {
            Tends = tends.ToImmutable(),
        };
    }

    static int BreathingRoom(OrderOfWork order, EarliestTimes earliest, Minute now)
    {
        var latest = new LatestTimes(order, earliest, course => course.Promised, handsStandStill: true);
        var room = int.MaxValue;
        foreach (var (at, entry) in order.Entries.Index())
        {
            if (entry.Course is { } course && order.Zero + earliest.Starts[at] > course.Promised)
            {
                return 0;
            }

            // While everybody stands still, food in the oven cooks on, and work in somebody's hands takes longer by the pause.
            var left = entry switch
            {
                { Course: { } served } => served.Promised >= now ? served.Promised - now : int.MaxValue, // else it has been
                { IsFinished: true } or { Kind: EntryKind.WarmHold } => int.MaxValue,
                { IsBegun: false } => latest.Starts[at] - (now - order.Zero),
                { IsInHands: true } => latest.Ends[at] - earliest.Ends[at],
                _ => int.MaxValue,
            };
            room = Math.Min(room, left);
        }

        return room == int.MaxValue ? 0 : Math.Max(0, room);
    }
}

/// <param name="Slack">Per unfinished step: minutes it may still slip (start later, or for a running one end later) before a promised table time does; 0 when that is late already.</param>
/// <param name="BreathingRoom">Minutes the whole kitchen may pause now and still serve on time; 0 when late already.</param>
public sealed record Retimed(
    ImmutableDictionary<StepId, (Minute Start, Minute End)> Steps,
    ImmutableDictionary<CourseId, Minute> TableTimes,
    ImmutableDictionary<StepId, int> Slack,
    int BreathingRoom)
{
    /// <summary>When each tend still to come is done, by its place in the step's tends and its turn; one that was missed does not come any more.</summary>
    public ImmutableDictionary<(StepId Step, int Tend, int Turn), Minute> Tends { get; init; } = ImmutableDictionary<(StepId, int, int), Minute>.Empty;
}
