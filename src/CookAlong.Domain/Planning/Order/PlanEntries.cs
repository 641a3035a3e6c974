using System.Collections.Immutable;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Planning.Order;

/// <summary>Everything of a plan that has a time, in the plan's order.</summary>
static class PlanEntries
{
    public static ImmutableArray<Entry> Of(Meal meal, Plan plan, IReadOnlyList<StepFact> facts, Minute now)
    {
        var steps = meal.Steps.ToDictionary(step => step.Id);
        var begun = facts.ToDictionary(fact => fact.Step);
        var helpers = meal.Helpers.ToDictionary(helper => helper.Id, Presence.Of);
        var adults = Presence.OfAny(meal.Helpers.Where(helper => !helper.IsChild));
        var zero = plan.NotBefore;

        Entry OfStep(PlannedStep planned)
        {
            var step = steps[planned.Step];
            var way = step.WayOf(planned.Option);
            var entry = new Entry(EntryKind.Step, planned.Start - zero, planned.Minutes, Step: planned) { Way = way };
            if (begun.TryGetValue(step.Id, out var fact))
            {
                return entry with { Start = fact.Start - zero, Length = fact.End - fact.Start, IsBegun = true, IsFinished = fact.IsFinished };
            }

            var presence = planned.Helpers.Aggregate(Presence.Always, (here, helper) => here.And(Here(helper)));
            presence = way.Attention == Attention.Nearby ? presence.And(adults) : presence;
            presence = step.Window is { } window ? presence.And(Presence.During(window)) : presence;
            return entry with { FixedAt = step.At is { } at ? at - zero : null, Spans = presence.After(zero) };
        }

        // Hands that joined since the meal was planned are not in it; they are here while they hold a step.
        Presence Here(HelperId helper) => helpers.GetValueOrDefault(helper, Presence.Always);

        // Cooks baste and forget to say so. A tend whose time is over keeps nobody from the next job.
        bool IsOpen(PlannedTend tend) =>
            !begun.TryGetValue(tend.Step, out var fact)
            || (!fact.IsFinished && !fact.TendsDone.Contains((tend.Tend, tend.Turn)) && now <= LastMinuteOf(tend, fact));

        Minute LastMinuteOf(PlannedTend tend, StepFact fact)
        {
            var planned = plan.Steps.First(step => step.Step == tend.Step);
            var asked = steps[tend.Step].Tends[tend.Tend];
            return tend.At + asked.Give + (asked.At < 0 ? fact.End - planned.End : fact.Start - planned.Start);
        }

        return
        [
            .. plan.Courses.Select(course => new Entry(EntryKind.Table, course.TableTime - zero, 0, Course: course))
                .Concat(plan.Steps.Select(OfStep))
                .Concat(plan.Tends.Where(IsOpen).Select(tend =>
                    new Entry(EntryKind.Tend, tend.At - zero, tend.Minutes, Tend: tend) { Spans = Here(tend.Helper).After(zero) }))
                .Concat(plan.Holds.Where(hold => hold.Place == HoldPlace.WarmOven).Select(hold =>
                    new Entry(EntryKind.WarmHold, hold.From - zero, 0, Hold: hold)))
                .OrderBy(entry => entry.Rank),
        ];
    }
}
