using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Planner;

/// <summary>Plans by constraint solving: a plan on time if there is one, the least late one otherwise, none where there is none.</summary>
public sealed class CpSatPlanner : IMealPlanner
{
    public Plan Plan(PlanRequest request, IProgress<PlanProgress>? progress = null, CancellationToken stop = default)
    {
        var search = new Search(request.Limits, progress, stop) { Prices = Prices.Of(request) };
        var plan = Best(request, search);
        if (request.So is null && !stop.IsCancellationRequested)
        {
            plan = plan.Status == PlanStatus.None
                ? plan
                : new Attempt(Nights.Observed(request.Meal), new Clock(plan.NotBefore, 0, plan.Cost.LateMinutes), null, Told.Of(request), search).Tidied(plan);
            plan = plan.Status == PlanStatus.None || plan.Cost.LateMinutes > 0 ? plan with { Conflicts = WhyNot.Find(request, plan, stop) } : plan;
        }

        return plan with { SolveMilliseconds = (int)search.Elapsed.TotalMilliseconds };
    }

    /// <summary>The plan without the reasons why it is no better.</summary>
    internal static Plan PlanOnly(PlanRequest request) => Best(request, new Search(request.Limits, null, CancellationToken.None) { Prices = Prices.Of(request) });

    internal static Plan Best(PlanRequest request, Search search)
    {
        var (meal, told) = (request.So is null ? Nights.Observed(request.Meal) : request.Meal, Told.Of(request));
        if (request.So is { } so)
        {
            var clock = Clock.Of(so, request.Now);
            var last = new Attempt(meal, clock, so, told, search).Run(share: 1, giveUp: 1).Plan;

            // What was offered on the way is not taken back for something dearer, when the time was up or names failed.
            return search.Whole is { } whole && (last is null || whole.Cost.Objective < last.Cost.Objective) ? whole : last ?? NoPlan.Of(meal, clock.Origin);
        }

        var origins = Clock.Origins(meal, request.Now).ToList();
        var provenLate = true;

        // With one first minute to begin at, how late it must be answers whether it can be on time too.
        var asksApart = origins.Count > 1 || told is not null;
        for (var index = 0; asksApart && index < origins.Count && !search.IsStopped; index++)
        {
            var tried = new Attempt(meal, new Clock(origins[index], 0, MostLate: 0), null, told, search).Run(0.6, giveUp: origins.Count == 1 ? 0.25 : 0.1);
            if (tried.Plan is { } onTime)
            {
                return onTime;
            }

            provenLate &= tried.IsImpossible;
        }

        if (search.IsStopped)
        {
            return NoPlan.Of(meal, origins[^1]);
        }

        var late = new Attempt(meal, new Clock(origins[^1], 0, Clock.MostLateMinutes), null, told, search).Run(asksApart ? 0.4 : 1, giveUp: 1);
        return late.Plan is not { } plan ? NoPlan.Of(meal, origins[^1]) : provenLate ? plan : NotProvenLate(plan);
    }

    /// <summary>A late plan is the best only when none on time exists; how far it is from one nobody knows.</summary>
    internal static Plan NotProvenLate(Plan plan) => plan.Cost.LateMinutes > 0 ? plan with { Status = PlanStatus.Feasible, Gap = 1 } : plan;
}
