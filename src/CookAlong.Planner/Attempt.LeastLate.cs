using CookAlong.Domain.Planning;
using CookAlong.Planner.Quick;

namespace CookAlong.Planner;

/// <content>Why not: how late a changed meal must be, and only then what else it costs.</content>
internal sealed partial class Attempt
{
    /// <summary>For each unit of a deterministic limit: layouts from what the solver found less late, and then for a cheaper plan.</summary>
    private const int LayoutsLessLate = 8000;

    /// <summary>Ends when the search's time is over, plan or not: who waits for one change waits for several.</summary>
    /// <param name="most">Minutes. Later than this is not worth more time.</param>
    /// <returns>Null where nothing as soon as that was found.</returns>
    public Plan? LeastLate(int most)
    {
        if (QuickSearch.Of(meal, clock, told, search.Prices, search.Limits.Seed, so, search.Limits.Workers) is not { } quick)
        {
            return null;
        }

        var (time, layouts) = (search.Limits.Time, (int)((search.Limits.Deterministic ?? 1) * LayoutsLessLate));
        quick.Run(QuickLayouts, QuickFew, () => IsOver(time * QuickPart));
        pace = quick.Layouts / search.Elapsed.TotalSeconds;
        if (quick.Found is null || quick.Late > 0)
        {
            var soonest = Soonest(quick.Found is null ? null : quick.Draft(), share: 1, giveUp: 1);
            if (search.IsStopped || soonest.IsImpossible || soonest.Bound > (long)most * Prices.LateMinute)
            {
                return null;
            }

            if (soonest.Found is { } sooner && (quick.Found is null || LateOf(sooner) < LateOf(quick.Draft())))
            {
                Breed(quick, (goes, isOver, better) => quick.GoOnFrom(sooner, goes, isOver, better), layouts, time);
            }

            if (quick.Found is null)
            {
                return Solve(null, soonest, share: 1, giveUp: 1).Plan is { } plan && plan.Cost.LateMinutes <= most ? plan : null;
            }
        }

        if (LateOf(quick.Draft()) > most)
        {
            return null;
        }

        Breed(quick, quick.GoOn, layouts, time);
        return Finish(quick, bound: 0);
    }
}
