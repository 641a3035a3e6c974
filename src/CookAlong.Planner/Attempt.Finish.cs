using System.Collections.Immutable;
using CookAlong.Domain;
using CookAlong.Domain.Planning;
using CookAlong.Planner.Quick;

namespace CookAlong.Planner;

/// <content>From settled times to a plan: names for the counted hands, then the plan itself, checked.</content>
internal sealed partial class Attempt
{
    /// <summary>How far a start may move to mend a clash of names.</summary>
    private const int MendMinutes = 15;

    /// <summary>How long is looked for a plan of the best so far once the time is over or the search was stopped; where there is one, it is bettered for <see cref="MendTime"/>.</summary>
    private static readonly TimeSpan Grace = TimeSpan.FromSeconds(1);

    private Tried Named(Draft draft, long bound, double share, double giveUp)
    {
        var near = new Near(draft.Steps.ToDictionary(step => step.Key, step => step.Value.Start), MendMinutes);
        var mending = new MealModel(meal, clock, so, told, PeopleBy.Names, search.Prices, near);
        Hints.FromDraft(mending, draft);
        var mended = Solve(mending, 0.3, share, heedStop: false);
        if (mended.Found is not null && (mended.Objective <= bound || search.IsStopped))
        {
            return new Tried(Finish(mending, mended, bound), false);
        }

        var free = new MealModel(meal, clock, so, told, PeopleBy.Names, search.Prices);
        Hints.FromDraft(free, mended.Found ?? draft);
        if (mended.Found is null)
        {
            search.Forget();
        }

        var freed = Solve(free, mended.Found is null ? giveUp : 1, share, heedStop: mended.Found is not null);
        if (freed.Found is not null && (mended.Found is null || freed.Objective <= mended.Objective))
        {
            return new Tried(Finish(free, freed, Math.Max(bound, freed.Bound)), false);
        }

        return mended.Found is not null
            ? new Tried(Finish(mending, mended, Math.Max(bound, freed.Bound)), false)
            : new Tried(null, freed.IsImpossible);
    }

    /// <param name="part">Of the time left.</param>
    private Answer Solve(MealModel model, double part, double share, bool heedStop)
    {
        var left = search.Left * part;
        var isOver = !heedStop && (left <= Grace || search.IsStopped);
        var (time, giveUp) = isOver ? (left > MendTime ? left : MendTime, Grace) : (left, left);
        return search.Solve(model, time < search.Limits.Time ? time : search.Limits.Time, giveUp, share, heedStop);
    }

    private Plan? Finish(MealModel model, Answer answer, long bound) =>
        Naming.Of(model, answer.Found!, search.Limits, search.Stop) is { } names ? Finish(model, answer.Found!, names, answer.Objective, bound) : null;

    private Plan? Finish(MealModel model, Draft draft, ImmutableArray<ImmutableArray<HelperId>> names, long objective, long bound)
    {
        var doers = draft.Jobs.Zip(names)
            .SelectMany(one => one.Second, (one, helper) => (Job: (one.First.Job.Step.Id, one.First.Job.Tend), Helper: helper))
            .ToLookup(one => one.Job, one => one.Helper);
        return Finish(PlanWriting.Write(meal, clock, so, draft, doers, search.Prices), objective, bound);
    }

    private Plan? Finish(QuickSearch quick, long bound) => Finish(quick.Plan(so), quick.Cost, bound);

    private Plan? Finish(Plan plan, long objective, long bound)
    {
        // What has begun may cost what no plan can say; then the solver's own sum stands.
        var cost = so is null ? plan.Cost.Objective : objective;
        var gap = Answer.GapOf(so is null ? cost + (told?.PriceOf(plan) ?? 0) : objective, bound);
        plan = plan with
        {
            Gap = gap,
            Status = gap == 0 ? PlanStatus.Optimal : PlanStatus.Feasible,
            Cost = plan.Cost with { Objective = cost },
        };
        return Checking.Finished(meal, plan, so, clock.At(clock.Earliest));
    }
}
