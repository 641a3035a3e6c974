using System.Collections.Immutable;
using System.Globalization;
using System.Numerics;
using CookAlong.Domain;
using CookAlong.Domain.Planning;
using Google.OrTools.Sat;

namespace CookAlong.Planner;

/// <summary>Puts a name to every job of a draft whose times are settled: as few changes to what people were told as can be, then fair shares.</summary>
internal static class Naming
{
    /// <summary>Who does each job, in the draft's order; null when no naming exists at these times.</summary>
    /// <param name="stop">From then on the first naming will do: somebody waits.</param>
    public static ImmutableArray<ImmutableArray<HelperId>>? Of(MealModel model, Draft draft, PlanLimits limits, CancellationToken stop = default)
    {
        var cp = new CpModel();
        var helpers = model.Meal.Helpers;
        var does = draft.Jobs.Select(job => job.Job.Able
            .Where(helper => IsFree(model, helper, job))
            .ToDictionary(helper => helper, helper => cp.NewBoolVar($"{job.Job.Step.Id} by {helper}"))).ToList();
        for (var index = 0; index < draft.Jobs.Length; index++)
        {
            if (does[index].Count < draft.Jobs[index].Job.Count)
            {
                return null;
            }

            cp.Add(LinearExpr.Sum(does[index].Values) == draft.Jobs[index].Job.Count);
        }

        OneJobEach(cp, draft, does, helpers.Length);
        var fair = FairShares.Of(model.Meal, model.Clock, draft.Jobs.Select(job => (job.Start, job.End)));

        // In whole minutes, where everybody's weigh the same, an even share is proved even at once: in hundredths it took a second.
        var unit = fair.Aggregate(0L, (one, other) => (long)BigInteger.GreatestCommonDivisor(one, other));
        var most = draft.Jobs.Sum(job => (long)job.Job.Minutes) * fair.Select(weight => weight / unit).DefaultIfEmpty(1).Max();
        var (busiest, idlest) = (cp.NewIntVar(0, most, "busiest"), cp.NewIntVar(0, most, "idlest"));
        for (var helper = 0; helper < helpers.Length; helper++)
        {
            var shares = Enumerable.Range(0, does.Count).Where(index => does[index].ContainsKey(helper)).ToList();
            var load = LinearExpr.WeightedSum(
                shares.Select(index => does[index][helper]), shares.Select(index => draft.Jobs[index].Job.Minutes * (fair[helper] / unit)));
            cp.Add(busiest >= load);
            if (!helpers[helper].IsChild && shares.Count > 0)
            {
                cp.Add(idlest <= load);
            }
        }

        cp.Minimize((Changes(model, draft, does, most) * 3) + (busiest * 2) - idlest);
        var turns = InTurn(model, draft, does, fair);
        foreach (var (index, names) in turns?.Index() ?? [])
        {
            foreach (var (helper, name) in does[index])
            {
                cp.AddHint(name, names.Contains(helper));
            }
        }

        if (stop.IsCancellationRequested && turns is not null)
        {
            return InWords(turns);
        }

        using var solver = new CpSolver { StringParameters = Parameters(limits) };
        using (turns is null ? null : new Timer(_ => StopWhereAsked(), null, Search.Poll, Search.Poll))
        {
            return solver.Solve(cp) is CpSolverStatus.Optimal or CpSolverStatus.Feasible
                ? [.. does.Select(names => names.Where(name => solver.BooleanValue(name.Value)).Select(name => helpers[name.Key].Id).ToImmutableArray())]
                : turns is null ? null : InWords(turns);
        }

        void StopWhereAsked()
        {
            if (stop.IsCancellationRequested)
            {
                solver.StopSearch();
            }
        }

        ImmutableArray<ImmutableArray<HelperId>> InWords(int[][] names) => [.. names.Select(one => one.Select(helper => helpers[helper].Id).ToImmutableArray())];
    }

    /// <summary>A beginning, and the answer where the solver gets no further in its time.</summary>
    private static int[][]? InTurn(MealModel model, Draft draft, List<Dictionary<int, BoolVar>> does, long[] fair)
    {
        var helpers = model.Meal.Helpers;
        var dishes = model.Meal.Dishes.Index().SelectMany(dish => dish.Item.Steps, (dish, step) => (step.Id, dish.Index)).ToDictionary(one => one.Id, one => one.Index);
        int[] Told(Job job) => [.. (model.Told?.HelpersOf(job) ?? []).Select(id => helpers.ToList().FindIndex(helper => helper.Id == id)).Where(index => index >= 0)];
        return Turns.Of(
            [.. draft.Jobs.Select((job, index) => new Turn(dishes[job.Job.Step.Id], job.Start, job.Job.Minutes, job.Job.Count, does[index].Keys, Told(job.Job)))], fair);
    }

    private static void OneJobEach(CpModel cp, Draft draft, List<Dictionary<int, BoolVar>> does, int helpers)
    {
        // Jobs that share a minute share the minute at which the latest of them starts.
        foreach (var start in draft.Jobs.Select(job => job.Start).Distinct())
        {
            var running = Enumerable.Range(0, does.Count)
                .Where(index => draft.Jobs[index].Start <= start && start < draft.Jobs[index].End).ToList();
            for (var helper = 0; helper < helpers; helper++)
            {
                cp.AddAtMostOne(running.Where(index => does[index].ContainsKey(helper)).Select(index => does[index][helper]));
            }
        }
    }

    private static LinearExpr Changes(MealModel model, Draft draft, List<Dictionary<int, BoolVar>> does, long unevenness)
    {
        if (model.Told is not { } all)
        {
            return LinearExpr.Constant(0);
        }

        // A changed person outweighs any unevenness.
        var weight = (long)Prices.ChangedPerson * (1 + unevenness);
        var changed = new List<LinearExpr>();
        for (var index = 0; index < does.Count; index++)
        {
            var job = draft.Jobs[index].Job;
            var told = all.HelpersOf(job);
            changed.AddRange(does[index].Where(name => !told.Contains(model.Meal.Helpers[name.Key].Id)).Select(name => name.Value * weight));
        }

        return LinearExpr.Sum(changed);
    }

    private static bool IsFree(MealModel model, int helper, DraftJob job) =>
        model.Meal.Helpers[helper].IsHere(model.Clock.At(job.Start), model.Clock.At(job.End))
        && !Encodings.People.Busy(model, helper).Any(span => span.Start < job.End && job.Start < span.End);

    private static string Parameters(PlanLimits limits) => string.Create(
        CultureInfo.InvariantCulture,
        $"max_time_in_seconds:{(limits.Deterministic is null ? 1 : 60)} max_deterministic_time:0.5 num_workers:1 random_seed:{limits.Seed}");
}
