using System.Collections.Immutable;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Runs;

namespace CookAlong.Domain.Debrief.Learning;

/// <summary>How long somebody's hands took for one step of one meal.</summary>
/// <param name="Run">The meal it was in.</param>
/// <param name="Step">The same in every meal that has this step of this dish.</param>
/// <param name="Kind">What is done: "peel".</param>
/// <param name="Person">Who did it; null where several did, or nobody said.</param>
/// <param name="Minutes">More than 0.</param>
public sealed record Timing(RunId Run, StepKey Step, string Kind, string? Person, WrittenTime Written, double Minutes)
{
    /// <summary>Beyond this times what is written somebody forgot to tap, or tapped something else. Own estimate.</summary>
    const double Beyond = 5;

    /// <summary>What a run's log says about hands, leaving out whatever it contradicts itself about.</summary>
    /// <param name="events">All of a run that was cooked, in order.</param>
    /// <param name="dishOf">What a dish is known by in other meals.</param>
    /// <param name="writtenOf">What the recipe said, where the run was planned with something learned; null = what the run's meal says.</param>
    public static ImmutableArray<Timing> Of(RunId run, IReadOnlyList<Logged> events, Func<Dish, string> dishOf, Func<(StepId Step, int Option), WrittenTime?> writtenOf)
    {
        var story = new RunStory(events);
        var troubles = Troubles(events).ToArray();
        return
        [
            .. from dish in story.Meal.Dishes
               from step in dish.Steps
               let line = story.LineOf(story.Plan.Step(step.Id))
               let option = story.ToldOf(step.Id).Option
               let way = step.WayOf(option)
               // What the oven takes says nothing about hands.
               where way.Attention == Attention.HandsOn && line is { WasStartSaid: true, WasLeftOut: false, Finished: not null }
               let written = writtenOf((step.Id, option)) ?? WrittenTime.Of(way.Minutes)
               let minutes = (line.Finished!.Value - line.Started!.Value).TotalMinutes
               where minutes > written.Least / Beyond && minutes < written.Most * Beyond
               where !troubles.Any(trouble => trouble.To >= line.Started && trouble.From <= line.Finished)
               select new Timing(run, StepKey.Of(dishOf(dish), step.Text), StepKey.KindOf(step.Text), PersonOf(story, line), written, minutes),
        ];
    }

    static string? PersonOf(RunStory story, StepLine line) =>
        line.Helpers is [var only] ? story.Run.Helpers.FirstOrDefault(helper => helper.Id == only)?.Name : null;

    /// <summary>When the log cannot be believed or nobody worked: its clock went back, or everything was held.</summary>
    static IEnumerable<(DateTimeOffset From, DateTimeOffset To)> Troubles(IReadOnlyList<Logged> events)
    {
        DateTimeOffset? heldSince = null;
        for (var at = 0; at < events.Count; at++)
        {
            if (at > 0 && events[at].At < events[at - 1].At)
            {
                yield return (events[at].At, events[at - 1].At);
            }

            if (events[at].Event is RunEvent.KitchenPaused)
            {
                heldSince = events[at].At;
            }
            else if (heldSince is { } since && events[at].Event is RunEvent.KitchenWentOn)
            {
                yield return (since, events[at].At);
                heldSince = null;
            }
        }

        if (heldSince is { } stillHeld)
        {
            yield return (stillHeld, DateTimeOffset.MaxValue);
        }
    }
}
