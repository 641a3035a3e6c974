using System.Diagnostics;
using CookAlong.Domain;
using CookAlong.Domain.Planning;

namespace CookAlong.Planner.Quick;

/// <summary>
/// Plans without the solver, where its native part does not run, before a meal and while it runs. Good plans soon, with a bound
/// where hands are short, seldom proven ones.
/// </summary>
public sealed class QuickPlanner : IMealPlanner
{
    /// <summary>Layouts tried for a plan on time before the next span of the clock.</summary>
    private const int First = 3000;

    /// <summary>Layouts of one annealing; while there is time, another follows.</summary>
    private const int Round = 4000;

    /// <summary>Layouts that stand for one unit of a deterministic limit.</summary>
    private const int PerUnit = 5000;

    public Plan Plan(PlanRequest request, IProgress<PlanProgress>? progress = null, CancellationToken stop = default)
    {
        var watch = Stopwatch.StartNew();
        var origins = Clock.Origins(request.Meal, request.Now).ToList();
        var plan = request.So is null
            ? Best(request, origins, watch, progress, stop)
            : Again(request, request.So, watch, progress, stop);
        return (plan ?? NoPlan.Of(request.Meal, request.So?.Current.NotBefore ?? origins[^1])) with { SolveMilliseconds = (int)watch.Elapsed.TotalMilliseconds };
    }

    private static Plan? Again(PlanRequest request, SoFar so, Stopwatch watch, IProgress<PlanProgress>? progress, CancellationToken stop) =>
        Within(request, Clock.Of(so, request.Now), watch, progress, stop);

    private static Plan? Best(PlanRequest request, List<Minute> origins, Stopwatch watch, IProgress<PlanProgress>? progress, CancellationToken stop)
    {
        foreach (var mostLate in new[] { 0, Clock.MostLateMinutes })
        {
            foreach (var origin in mostLate == 0 ? origins : [origins[^1]])
            {
                var clock = new Clock(origin, Earliest: 0, mostLate);
                if (Within(request, clock, watch, progress, stop) is { } plan)
                {
                    return plan;
                }
            }
        }

        return null;
    }

    private static Plan? Within(PlanRequest request, Clock clock, Stopwatch watch, IProgress<PlanProgress>? progress, CancellationToken stop)
    {
        var (meal, limits) = (request.So is null ? Nights.Observed(request.Meal) : request.Meal, request.Limits);
        if (QuickSearch.Of(meal, clock, Told.Of(request), Prices.Of(request), limits.Seed, request.So, limits.Workers) is not { } search)
        {
            return null;
        }

        bool IsOver() => stop.IsCancellationRequested
            || (limits.Deterministic is null && watch.Elapsed > (search.Found is null && limits.WithoutPlan > limits.Time ? limits.WithoutPlan : limits.Time));
        double Gap() => request.So is null ? Answer.GapOf(search.Cost, search.Bound) : 1;
        Plan? first = null;
        void Tell() => progress?.Report(new PlanProgress(watch.Elapsed, search.Cost, Gap(), search.Late) { Plan = request.So is null && first is null ? first = Whole() : null });

        search.Run(First, Round, IsOver, Tell);
        if (search.Found is not null)
        {
            search.Relax(QuickSearch.RelaxedRounds, IsOver, Tell);
        }

        var rounds = limits.Deterministic is { } effort ? (int)(effort * PerUnit / Round) : int.MaxValue;
        for (var round = 1; search.Found is not null && round < rounds && !IsOver(); round++)
        {
            search.Run(First, Round, IsOver, Tell);
        }

        return search.Found is null ? null : Whole();

        Plan? Whole()
        {
            var plan = search.Plan(request.So);
            plan = request.So is null
                ? plan with { Gap = Gap(), Status = Gap() == 0 ? PlanStatus.Optimal : plan.Status }
                : plan with { Cost = plan.Cost with { Objective = search.Cost } };
            return Checking.Finished(meal, plan, request.So, clock.At(clock.Earliest));
        }
    }
}
