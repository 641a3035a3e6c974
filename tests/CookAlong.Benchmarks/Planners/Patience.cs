using System.Diagnostics;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Planner;

namespace CookAlong.Benchmarks.Planners;

/// <summary>How long somebody waits for the planner: to be let go, to be told why not, and for their turn beside another.</summary>
static class Patience
{
    const int Times = 10;

    public static IEnumerable<(string What, string Figure)> Measure() => Stopping().Concat(WhyNotYet()).Concat(SideBySide());

    static IEnumerable<(string, string)> Stopping()
    {
        // Once to its end: what is compiled on first use is compiled then.
        _ = new CpSatPlanner().Plan(new PlanRequest(Families.Large(Times), new PlanLimits(TimeSpan.FromSeconds(2))));
        var waits = Enumerable.Range(1, Times).Select(turn => UntilBack(Families.Large(turn % 3), TimeSpan.FromMilliseconds(turn * 200))).ToArray();
        yield return ($"large meal, from cancelling in mid-search to the plan (longest, median of {Times})", $"{waits.Max():F0} ms, {Median(waits):F0} ms");
    }

    /// <param name="after">How long after its first plan it is cancelled.</param>
    static double UntilBack(Meal meal, TimeSpan after)
    {
        using var stop = new CancellationTokenSource();
        var asked = 0L;
        using var cancel = new Timer(_ =>
        {
            asked = Stopwatch.GetTimestamp();
            stop.Cancel();
        });
        var begun = false;
        var first = new Heard(_ =>
        {
            if (!begun)
            {
                begun = cancel.Change(after, Timeout.InfiniteTimeSpan);
            }
        });
        var plan = new CpSatPlanner().Plan(new PlanRequest(meal, new PlanLimits(TimeSpan.FromMinutes(1))), first, stop.Token);
        return plan.Status == PlanStatus.None
            ? throw new InvalidOperationException("A plan was told of, and none came back.")
            : Stopwatch.GetElapsedTime(asked).TotalMilliseconds;
    }

    /// <summary>A full meal for one cook who has only half of the time it takes.</summary>
    static IEnumerable<(string, string)> WhyNotYet()
    {
        var (firsts, alls, found) = (new List<double>(), new List<double>(), 0);
        for (var seed = 0; seed < 5; seed++)
        {
            var meal = Families.Full(seed, helpers: 1);
            meal = meal with { NotBefore = meal.FirstTableTime - 240 };
            var request = new PlanRequest(meal, new PlanLimits(TimeSpan.FromSeconds(2)));
            var plan = CpSatPlanner.PlanOnly(request);
            var watch = Stopwatch.StartNew();
            double? first = null;
            foreach (var conflict in WhyNot.Each(request, plan, CancellationToken.None))
            {
                // That it could be served later is known with the plan.
                if (conflict.Change is not PlanChange.ServeLater)
                {
                    first ??= watch.Elapsed.TotalMilliseconds;
                    found++;
                }
            }

            alls.Add(watch.Elapsed.TotalMilliseconds);
            firsts.Add(first ?? double.PositiveInfinity);
        }

        yield return ("full meal, 1 cook, 4 h: first change that helps (median, longest of 5)", $"{Median(firsts):F0} ms, {firsts.Max():F0} ms");
        yield return ("full meal, 1 cook, 4 h: all changes that help (median, longest of 5; how many in all)", $"{Median(alls):F0} ms, {alls.Max():F0} ms; {found}");
    }

    static IEnumerable<(string, string)> SideBySide()
    {
        var (meal, time) = (Families.Full(0, helpers: 2), TimeSpan.FromSeconds(3));
        (double First, Plan Plan) Once()
        {
            double? first = null;
            var watch = Stopwatch.StartNew();
            var plan = new CpSatPlanner().Plan(new PlanRequest(meal, new PlanLimits(time)), new Heard(_ => first ??= watch.Elapsed.TotalMilliseconds));
            return (first ?? double.PositiveInfinity, plan);
        }

        var alone = Once();
        (double First, Plan Plan)[] both = new (double, Plan)[2];
        var threads = both.Select((_, which) => new Thread(() => both[which] = Once())).ToList();
        threads.ForEach(thread => thread.Start());
        threads.ForEach(thread => thread.Join());
        yield return ("full meal, 2 cooks, planned twice at once: first plan, each (alone)", $"{both[0].First:F0} ms, {both[1].First:F0} ms ({alone.First:F0} ms)");
        yield return (
            $"the same: cost after {time.TotalSeconds:F0} s to that of one alone, each",
            string.Join(", ", both.Select(one => $"{(double)one.Plan.Cost.Objective / alone.Plan.Cost.Objective:F2}")));
    }

    static double Median(IReadOnlyCollection<double> figures) => figures.Order().ElementAt(figures.Count / 2);
}
