using System.Diagnostics;
using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Planner;

namespace CookAlong.Benchmarks.Planners;

/// <summary>The demo meal planned anew from moments of its day at which something took longer: how soon an offer stands, and how soon a good one.</summary>
static class Replanning
{
    /// <summary>Of each plan that is run.</summary>
    const int Moments = 20;

    // One plan's moments say more about that plan than about the search.
    static readonly Leans[] Plans = [Leans.None, Leans.StartLater, Leans.CalmEnd];

    static readonly TimeSpan Long = TimeSpan.FromSeconds(10);

    /// <summary>About a tenth of a second of an idle core; unlike that the same on a busy one.</summary>
    const double Units = 0.1;

    public static IEnumerable<(string What, string Figure)> Measure(Meal meal)
    {
        var planner = new CpSatPlanner();
        var requests = Plans.SelectMany(leans =>
        {
            var told = planner.Plan(new PlanRequest(meal, new PlanLimits(TimeSpan.FromSeconds(60), Workers: 1, Deterministic: 3)) { Leans = leans });
            return Enumerable.Range(0, Moments).Select(seed => At(meal, told, seed));
        }).ToArray();
        Once(planner, requests[0] with { Limits = new PlanLimits(TimeSpan.FromSeconds(1), Workers: 1) });
        var moved = requests.Select(MovedRight).Order().ToArray();
        var asked = requests.Select(request => Once(planner, request)).ToArray();
        if (Environment.GetEnvironmentVariable("REPLAN_MOMENTS") is not null)
        {
            foreach (var one in asked)
            {
                Console.Error.WriteLine($"moved {one.MovedLate} offer {one.Offer:F0} ms cost {one.OfferCost} late {one.OfferLate}; good {one.Good:F0} ms; end {one.Cost} late {one.Late}");
            }
        }

        yield return ($"plan moved right, {requests.Length} moments of {Plans.Length} plans (median / p90)", $"{Of(moved, 0.5)} / {Of(moved, 0.9)}");
        yield return ("first better plan, whole and checked (median / p90)", $"{Of(asked.Select(one => one.Offer), 0.5)} / {Of(asked.Select(one => one.Offer), 0.9)}");
        yield return ("a plan within 5 % of what 10 s of search find (median / p90)", $"{Of(asked.Select(one => one.Good), 0.5)} / {Of(asked.Select(one => one.Good), 0.9)}");
        yield return ($"cost after {Units} units of effort to that of {Long.TotalSeconds:F0} s (median / p90)", Shares(asked, requests.Select(request => AfterUnits(planner, request))));
        yield return ("cost of the first to that of 10 s (median / p90)", Shares(asked, asked.Select(one => one.OfferCost)));
    }

    /// <summary>All has gone by the plan; what runs takes 5 to 30 minutes longer.</summary>
    static PlanRequest At(Meal meal, Plan told, int seed)
    {
        var random = new Random(seed);
        var first = told.Steps.Min(step => step.Start);
        var table = told.Courses.Max(course => course.TableTime);
        var day = Minute.Later(first, table - 300);
        var now = day + random.Next(table - day - 20);
        var running = told.Steps.Where(step => step.Start <= now && now < step.End).ToArray();
        var slips = running.Length == 0 ? (StepId?)null : running[random.Next(running.Length)].Step;
        var by = random.Next(5, 31);
        StepFact[] facts =
        [
            .. told.Steps.Where(step => step.Start <= now).Select(step =>
            {
                var end = step.End + (step.Step == slips ? by : 0);
                var done = told.Tends.Where(tend => tend.Step == step.Step && tend.End <= now).Select(tend => (tend.Tend, tend.Turn)).ToArray();
                return new StepFact(step.Step, step.Start, end, end <= now, done);
            }),
        ];
        var ovens = told.Ovens.ToDictionary(oven => oven.Oven, oven => oven.Points.Last(point => point.At <= now || point == oven.Points[0]).Celsius);
        return new PlanRequest(meal, new PlanLimits(Long, Workers: 2), now, new SoFar(told, facts, ovens));
    }

    static double MovedRight(PlanRequest request)
    {
        var watch = Stopwatch.StartNew();
        Retiming.MoveRight(request.Meal, request.So!.Current, request.So.Facts, request.Now!.Value);
        return watch.Elapsed.TotalMilliseconds;
    }

    static Asked Once(CpSatPlanner planner, PlanRequest request)
    {
        var told = new List<PlanProgress>();
        var plan = planner.Plan(request, new Heard(told.Add));
        var offer = told.FirstOrDefault(one => one.Plan is not null);
        var good = told.Where(one => one.Plan is not null && one.Objective <= plan.Cost.Objective * 1.05).Select(one => one.After).Append(request.Limits.Time).Min();
        var moved = Retiming.MoveRight(request.Meal, request.So!.Current, request.So.Facts, request.Now!.Value);
        return new Asked(
            offer.Plan is null ? double.PositiveInfinity : offer.After.TotalMilliseconds, offer.Objective, offer.LateMinutes, good.TotalMilliseconds, plan.Cost.Objective, plan.Cost.LateMinutes,
            request.Meal.Courses.Max(course => moved.TableTimes[course.Id] - course.TableTime));
    }

    static long AfterUnits(CpSatPlanner planner, PlanRequest request) => planner.Plan(request with { Limits = new PlanLimits(Long, Workers: 1, Deterministic: Units) }).Cost.Objective;

    static string Shares(IEnumerable<Asked> asked, IEnumerable<long> costs)
    {
        var shares = asked.Zip(costs, (one, cost) => (double)cost / one.Cost).ToArray();
        return $"{At(shares, 0.5):F2} / {At(shares, 0.9):F2}";
    }

    static string Of(IEnumerable<double> figures, double part) => $"{At(figures, part):F1} ms";

    static double At(IEnumerable<double> figures, double part)
    {
        var all = figures.Order().ToArray();
        return all[(int)(part * (all.Length - 1))];
    }

    sealed record Asked(double Offer, long OfferCost, int OfferLate, double Good, long Cost, int Late, int MovedLate);
}
