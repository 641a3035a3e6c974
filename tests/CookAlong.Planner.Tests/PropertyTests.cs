using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Planner.Quick;
using CsCheck;

namespace CookAlong.Planner.Tests;

/// <summary>What any planner must keep to, each of the two held to it.</summary>
public sealed class PropertyTests
{
    private const Leans AllLeans = Leans.StartLater | Leans.CalmEnd | Leans.FewerDialTurns | Leans.WashUp;

    public enum Who { Solver, Quick }

    [Theory]
    [InlineData(Who.Solver, 6, 1)]
    [InlineData(Who.Solver, 9, 5)]
    [InlineData(Who.Solver, 6, 150)] // Over a night.
    [InlineData(Who.Quick, 6, 1)]
    [InlineData(Who.Quick, 9, 5)]
    [InlineData(Who.Quick, 6, 150)]
    public void Every_plan_of_a_random_meal_keeps_every_rule(Who who, int mostSteps, int scale)
    {
        var planned = 0;
        Gen.Int.Sample(
            seed =>
            {
                var meal = new RandomMeals(seed, mostSteps, scale).Next();
                var plan = Plan(who, meal);
                if (plan.Status == PlanStatus.None)
                {
                    return true;
                }

                planned++;
                return PlanCheck.Check(meal, plan) is [] && plan.Gap is >= 0 and <= 1;
            },
            iter: 200, threads: 1, print: seed => $"meal {seed}");

        Assert.True(planned > 20, $"only {planned} of the meals could be planned");
    }

    [Fact]
    public void The_quick_search_prices_a_plan_as_its_price_list_does() => Gen.Int.Sample(
        seed =>
        {
            var meal = new RandomMeals(seed, mostSteps: 9, scale: 5).Next();
            var clock = new Clock(meal.NotBefore ?? meal.FirstTableTime - 360, Earliest: 0, Clock.MostLateMinutes);
            var prices = Prices.Of(cushion: 10, (Leans)(seed & (int)AllLeans));
            var search = QuickSearch.Of(meal, clock, told: null, prices, seed: 1);
            search?.Run(first: 200, more: 200, () => false);
            return search?.Found is null || search.Cost == prices.Sum(meal, search.Plan());
        },
        iter: 200, threads: 1, print: seed => $"meal {seed}");

    [Fact]
    public void The_solver_prices_a_plan_as_the_price_list_does() => Gen.Int.Sample(
        seed =>
        {
            var meal = new RandomMeals(seed, mostSteps: 9, scale: 5).Next();
            var clock = new Clock(meal.NotBefore ?? meal.FirstTableTime - 360, Earliest: 0, MostLate: 30);
            var prices = Prices.Of(cushion: 10, (Leans)(seed & (int)AllLeans));
            var model = new MealModel(meal, clock, null, null, PeopleBy.Names, prices);
            var limits = new PlanLimits(TimeSpan.FromSeconds(10), Workers: 1);
            var answer = new Search(limits, null, TestContext.Current.CancellationToken).Solve(model, limits.Time, limits.Time, share: 1);
            if (answer.Found is not { } draft || answer.Objective > answer.Bound)
            {
                return true;
            }

            // Only what a proven plan costs is exact: on the way there the solver may overrate one.
            var doers = draft.Jobs.Zip(Naming.Of(model, draft, limits)!.Value)
                .SelectMany(one => one.Second, (one, helper) => (Job: (one.First.Job.Step.Id, one.First.Job.Tend), Helper: helper)).ToLookup(one => one.Job, one => one.Helper);
            return PlanWriting.Write(meal, clock, null, draft, doers, prices).Cost.Objective == answer.Objective;
        },
        iter: 150, threads: 1, print: seed => $"meal {seed}");

    [Fact]
    public void The_same_seed_gives_the_same_plan() => Gen.Int.Sample(
        seed =>
        {
            var meal = new RandomMeals(seed, mostSteps: 9, scale: 5).Next();
            return Steps(Plan(Who.Quick, meal)).SequenceEqual(Steps(Plan(Who.Quick, meal)));
        },
        iter: 20, threads: 1, print: seed => $"meal {seed}");

    [Fact]
    public void The_quick_search_plans_nearly_every_meal_that_the_solver_can()
    {
        var (both, missed) = (0, 0);
        for (var seed = 0; seed < 150; seed++)
        {
            var meal = new RandomMeals(seed, mostSteps: 9, scale: 5).Next();
            if (Plan(Who.Solver, meal) is { Status: not PlanStatus.None })
            {
                both += Plan(Who.Quick, meal).Status == PlanStatus.None ? 0 : 1;
                missed += Plan(Who.Quick, meal).Status == PlanStatus.None ? 1 : 0;
            }
        }

        Assert.True(missed * 20 <= both, $"{missed} missed, {both} found");
    }

    private static IEnumerable<object> Steps(Plan plan) => plan.Steps.Select(step => (step.Step, step.Start, step.Option, Helpers: string.Join(',', step.Helpers))).Cast<object>();

    private static Plan Plan(Who who, Meal meal) => who switch
    {
        Who.Solver => CpSatPlanner.PlanOnly(new PlanRequest(meal, new PlanLimits(TimeSpan.FromSeconds(3), Workers: 1, Deterministic: 2))),
        Who.Quick => new QuickPlanner().Plan(new PlanRequest(meal, new PlanLimits(TimeSpan.FromSeconds(3), Workers: 1, Deterministic: 1))),
        _ => throw new System.Diagnostics.UnreachableException(),
    };
}
