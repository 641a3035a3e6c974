using System.Collections.Immutable;

namespace CookAlong.Domain.Planning;

/// <summary>What a new plan means to people: whose next job is another, or at another time.</summary>
public static class PlanDifference
{
    /// <param name="isAhead">True for steps that have not begun.</param>
    /// <returns>Each job that was, or becomes, somebody's next and that moves or changes hands, in order of its new time.</returns>
    public static ImmutableArray<StepChange> Of(Plan old, Plan made, Func<StepId, bool> isAhead)
    {
        var next = NextOf(old, isAhead).Concat(NextOf(made, isAhead)).ToHashSet();
        return
        [
            .. from step in next
               let was = old.Step(step)
               let becomes = made.Step(step)
               where was.Start != becomes.Start || !was.Helpers.ToHashSet().SetEquals(becomes.Helpers)
               orderby becomes.Start, step.Value
               select new StepChange(step, was.Start, becomes.Start, was.Helpers, becomes.Helpers),
        ];
    }

    static IEnumerable<StepId> NextOf(Plan plan, Func<StepId, bool> isAhead) =>
        from planned in plan.Steps
        where isAhead(planned.Step)
        from helper in planned.Helpers
        group planned by helper into jobs
        select jobs.MinBy(job => job.Start)!.Step;
}

/// <param name="Was">Its start in the plan people were told.</param>
/// <param name="WasBy">Whose it was.</param>
public sealed record StepChange(StepId Step, Minute Was, Minute Becomes, ImmutableArray<HelperId> WasBy, ImmutableArray<HelperId> BecomesBy);
