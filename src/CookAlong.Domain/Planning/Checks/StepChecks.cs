using CookAlong.Domain.Meals;
using static CookAlong.Domain.Planning.Checks.PlanInQuestion;

namespace CookAlong.Domain.Planning.Checks;

/// <summary>Each step by itself, and after the steps it waits for.</summary>
static class StepChecks
{
    public static IEnumerable<Breach> EveryStepOnce(PlanInQuestion question)
    {
        var times = Given(question.Plan.Steps).CountBy(step => step.Step).ToDictionary();
        foreach (var step in question.Meal.Steps)
        {
            var found = times.GetValueOrDefault(step.Id);
            if (found != 1)
            {
                yield return new(RuleId.EveryStepOnce, Step: step.Id, Found: found, Allowed: 1);
            }
        }

        foreach (var (unknown, found) in times.Where(one => question.Step(one.Key) is null))
        {
            yield return new(RuleId.EveryStepOnce, Step: unknown, Found: found, Allowed: 0);
        }
    }

    public static IEnumerable<Breach> StepLength(PlanInQuestion question)
    {
        foreach (var planned in Given(question.Plan.Steps))
        {
            if (question.Step(planned.Step) is not { } step)
            {
                continue;
            }

            if (planned.Option < -1 || planned.Option >= step.Options.Length)
            {
                yield return new(RuleId.StepLength, Step: step.Id, Thing: "option", At: planned.Start, Found: planned.Option, Allowed: step.Options.Length - 1);
            }
            else if (planned.Minutes != step.WayOf(planned.Option).Minutes.Likely)
            {
                yield return new(RuleId.StepLength, Step: step.Id, At: planned.Start, Found: planned.Minutes, Allowed: step.WayOf(planned.Option).Minutes.Likely);
            }
        }
    }

    public static IEnumerable<Breach> NotBefore(PlanInQuestion question)
    {
        var (meal, plan) = (question.Meal, question.Plan);
        var earliest = meal.NotBefore ?? meal.FirstTableTime - Meal.LongestLead;
        if (plan.NotBefore < earliest)
        {
            yield return new(RuleId.NotBefore, Thing: "plan", At: plan.NotBefore, Found: earliest - plan.NotBefore, Allowed: 0);
        }

        foreach (var planned in Given(plan.Steps).Where(step => step.Start < plan.NotBefore))
        {
            yield return new(RuleId.NotBefore, Step: planned.Step, At: planned.Start, Found: plan.NotBefore - planned.Start, Allowed: 0);
        }
    }

    public static IEnumerable<Breach> Gaps(PlanInQuestion question)
    {
        foreach (var work in question.Works)
        {
            foreach (var after in work.Step.After)
            {
                if (question.Planned(after.Step) is not { } before)
                {
                    continue;
                }

                var gap = work.Planned.Start - before.End;
                if (gap < after.Least)
                {
                    yield return new(RuleId.Gaps, Step: work.Step.Id, Other: after.Step, Thing: "least", At: work.Planned.Start, Found: gap, Allowed: after.Least);
                }
                else if (gap > after.Most)
                {
                    yield return new(RuleId.Gaps, Step: work.Step.Id, Other: after.Step, Thing: "most", At: work.Planned.Start, Found: gap, Allowed: after.Most);
                }
            }
        }
    }

    public static IEnumerable<Breach> FixedTimes(PlanInQuestion question)
    {
        foreach (var (planned, step, _) in question.Works)
        {
            if (step.At is { } at && planned.Start != at)
            {
                yield return new(RuleId.FixedTimes, Step: step.Id, Thing: "at", At: planned.Start, Found: planned.Start - at, Allowed: 0);
            }

            if (step.Window is { } window && !window.Holds(planned.Start, planned.End))
            {
                var outside = planned.Start < window.From ? planned.Start - window.From : planned.End - window.To;
                yield return new(RuleId.FixedTimes, Step: step.Id, Thing: "window", At: planned.Start, Found: outside, Allowed: 0);
            }
        }
    }

    public static IEnumerable<Breach> HostsChoice(PlanInQuestion question)
    {
        foreach (var (planned, step, way) in question.Works)
        {
            if (step.Choice is { } choice && planned.Option != choice)
            {
                yield return new(RuleId.HostsChoice, Step: step.Id, Thing: "option", At: planned.Start, Found: planned.Option, Allowed: choice);
            }

            // More names than the step takes people: any of them will do. Fewer: all of them, and others join.
            var wanted = Math.Min(step.By.Length, way.People);
            var kept = Given(planned.Helpers).Distinct().Count(step.By.Contains);
            if (way.Attention == Attention.HandsOn && kept < wanted)
            {
                yield return new(RuleId.HostsChoice, Step: step.Id, Helper: step.By.First(helper => !Given(planned.Helpers).Contains(helper)),
                    At: planned.Start, Found: kept, Allowed: wanted);
            }
        }
    }
}
