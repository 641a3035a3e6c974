using CookAlong.Domain.Planning;
using CookAlong.Planner.Tests.Naive;
using CsCheck;

namespace CookAlong.Planner.Tests;

public sealed class BruteForceTests
{
    private const int MostLateTried = 3;

    /// <summary>A child of this meal may watch the oven and do nothing with hands: it once counted among those there for the crowds' price.</summary>
    private const int OnlyWatches = 58056338;

    [Theory]
    [InlineData(5, 1, 100)]
    [InlineData(2, 8, 40)]
    public void Up_to_five_steps_cost_what_trying_everything_costs(int mostSteps, int scale, int meals)
    {
        var (onTime, late, tooLarge) = (0, 0, 0);
        Gen.Int.Sample(
            seed =>
            {
                var meal = new RandomMeals(seed, mostSteps, scale).Next();
                var tried = new BruteForce(meal);
                var best = tried.Best(mostLate: 0);
                var bestLate = best ?? tried.Best(MostLateTried);
                if (tried.IsTooLarge)
                {
                    tooLarge++;
                    return;
                }

                var plan = CpSatPlanner.PlanOnly(new PlanRequest(meal, new PlanLimits(TimeSpan.FromMinutes(5), Workers: 1, Deterministic: 20)));
                if (best is not null)
                {
                    onTime++;
                    Assert.Equal((PlanStatus.Optimal, 0, best), (plan.Status, plan.Cost.LateMinutes, plan.Cost.Objective));
                }
                else if (bestLate is not null)
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
        Assert.True(tooLarge <= meals / 10, $"{tooLarge} of {meals} too large to try everything");
    }

    [Fact]
    public void Who_may_only_watch_is_no_pair_of_hands_where_work_is_crowded()
    {
        var meal = new RandomMeals(OnlyWatches, mostSteps: 5, scale: 1).Next();
        var plan = CpSatPlanner.PlanOnly(new PlanRequest(meal, new PlanLimits(TimeSpan.FromMinutes(5), Workers: 1, Deterministic: 20)));
        Assert.Equal((PlanStatus.Optimal, new BruteForce(meal).Best(MostLateTried)), (plan.Status, plan.Cost.Objective));
    }
}
