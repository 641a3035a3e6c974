using CookAlong.Domain.Planning;
using CookAlong.Planner.Tests.Naive;
using CsCheck;

namespace CookAlong.Planner.Tests;

public sealed class BruteForceTests
{
    private const int MostLateTried = 3;

    [Theory]
    [InlineData(5, 1, 100)]
    [InlineData(2, 8, 40)]
    public void Up_to_five_steps_cost_what_trying_everything_costs(int mostSteps, int scale, int meals)
    {
        var (onTime, late) = (0, 0);
        Gen.Int.Sample(
            seed =>
            {
                var meal = new RandomMeals(seed, mostSteps, scale).Next();
                var plan = CpSatPlanner.PlanOnly(new PlanRequest(meal, new PlanLimits(TimeSpan.FromMinutes(5), Workers: 1, Deterministic: 20)));
                if (new BruteForce(meal).Best(mostLate: 0) is { } best)
                {
                    onTime++;
                    Assert.Equal((PlanStatus.Optimal, 0, best), (plan.Status, plan.Cost.LateMinutes, plan.Cost.Objective));
                }
                else if (new BruteForce(meal).Best(MostLateTried) is { } bestLate)
                {
                    late++;
                    Assert.Equal((PlanStatus.Optimal, bestLate), (plan.Status, plan.Cost.Objective));
                }
                else
                {
                    Assert.True(plan.Status == PlanStatus.None || plan.Cost.LateMinutes > 0);
                }
            },
            iter: meals, threads: 1, print: seed => $"meal {seed}");

        Assert.True(onTime > meals / 10, $"only {onTime} of {meals} on time: too few to say anything ({late} late)");
    }
}
