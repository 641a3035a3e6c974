using System.Collections.Immutable;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Domain.Runs;

namespace CookAlong.Domain.Debrief;

/// <summary>A run looked at afterwards: what was planned first against what happened. Pure data; the words are the edge's.</summary>
/// <param name="Meal">As it began, dishes that were left out since among it.</param>
/// <param name="Plan">The first one.</param>
/// <param name="Steps">In the order of the first plan.</param>
/// <param name="Slips">What ended later than it was told to, the dearest first.</param>
/// <param name="ByNewPlans">Minutes of lateness that no slip explains: what a change of plan cost.</param>
/// <param name="Calls">Late or missed, in order of their time.</param>
public sealed record RunDebrief(
    Meal Meal,
    Plan Plan,
    ImmutableArray<StepLine> Steps,
    ImmutableArray<CourseLine> Courses,
    ImmutableArray<Slip> Slips,
    int ByNewPlans,
    ImmutableArray<DishWait> Waits,
    ImmutableArray<CallNote> Calls,
    ImmutableArray<Share> Shares)
{
    /// <summary>Of dishes that came to the table and of which it matters.</summary>
    public ImmutableArray<DishStanding> Standing { get; init; } = [];

    /// <summary>From all events of a run, in order.</summary>
    public static RunDebrief Of(IEnumerable<Logged> events)
    {
        var story = new RunStory(events);
        var replay = new Replay(story);
        var waits = DishWait.Of(story, replay.Courses);
        return new(
            story.Meal,
            story.Plan,
            [.. story.Plan.Steps.OrderBy(planned => planned.Start).ThenBy(planned => planned.Step.Value, StringComparer.Ordinal).Select(story.LineOf)],
            replay.Courses,
            Slip.Of(story, replay),
            replay.ByNewPlans,
            waits,
            story.Calls,
            Share.Of(story))
        {
            Standing = DishStanding.Of(story, waits),
        };
    }
}

/// <summary>One step on the timeline.</summary>
/// <param name="Started">Null where it never began. Where only its end was tapped, when it must have begun.</param>
/// <param name="Finished">Null where it was not finished.</param>
/// <param name="WasStartSaid">Somebody tapped that it began.</param>
/// <param name="Helpers">Who had it in the end; empty where it took no hands.</param>
public sealed record StepLine(
    StepId Step,
    DishId Dish,
    Minute PlannedStart,
    Minute PlannedEnd,
    DateTimeOffset? Started,
    DateTimeOffset? Finished,
    bool WasStartSaid,
    bool WasLeftOut,
    ImmutableArray<HelperId> Helpers);

/// <param name="Promised">As the meal began.</param>
/// <param name="MovedTo">The last time it was moved to; null where it stayed.</param>
/// <param name="Ready">When its last dish was done and had rested; null where something was not finished.</param>
public sealed record CourseLine(CourseId Course, string Name, Minute Promised, Minute? MovedTo, Minute? Ready)
{
    /// <summary>Behind the first promise; 0 = kept, null where it was never ready.</summary>
    public int? LateMinutes => Ready is { } ready ? Math.Max(0, ready - Promised) : null;
}
