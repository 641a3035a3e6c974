using CookAlong.Domain.Planning;
using CsCheck;

namespace CookAlong.Planner.Tests;

public sealed class PropertyTests
{
    [Theory]
    [InlineData(6, 1)]
    [InlineData(9, 5)]
    public void Every_plan_of_a_random_meal_keeps_every_rule(int mostSteps, int scale)
    {
        var planned = 0;
        Gen.Int.Sample(
            seed =>
            {
                var meal = new RandomMeals(seed, mostSteps, scale).Next();
                var plan = Plan(meal);
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

    private static Plan Plan(Domain.Meals.Meal meal) =>
        CpSatPlanner.PlanOnly(new PlanRequest(meal, new PlanLimits(TimeSpan.FromSeconds(3), Workers: 1, Deterministic: 2)));
}
