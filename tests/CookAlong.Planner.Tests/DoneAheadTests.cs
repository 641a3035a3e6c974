using CookAlong.Benchmarks.Planners;
using CookAlong.Domain.Planning;
using static CookAlong.Planner.Tests.Cooking;

namespace CookAlong.Planner.Tests;

/// <summary>A step done before the day of the meal has a price; within the day it may lie where it likes.</summary>
public sealed class DoneAheadTests
{
    /// <summary>
    /// Ready three minutes before the table, half of what it waits for nothing: the day begins with boiling, or both are done the
    /// evening before.
    /// </summary>
    [Theory]
    [InlineData(240, 3 + 240 + 10)]
    [InlineData(1190, 2 * Prices.Ahead)]
    public void The_solver_the_quick_search_and_the_finished_plan_count_alike(int setting, int price)
    {
        var meal = Meal(1440, Kitchen(), [Cook("cook")], Dish("jelly", OnTheSide(6, bestWithin: 6, cost: 1), Hands("jelly-boil", 10), Alone("jelly-set", setting).Following(After("jelly-boil", most: 0))));

        var plan = Plan(meal, effort: 1);

        Assert.Equal((PlanStatus.Optimal, price), (plan.Status, plan.Cost.Objective));
        Assert.Equal(plan.Cost.Objective, Prices.Usual.Sum(meal, plan));
        var quick = new Quick.QuickPlanner().Plan(new PlanRequest(meal, new PlanLimits(TimeSpan.FromMinutes(1), Deterministic: 1)), null, TestContext.Current.CancellationToken);
        Assert.Equal(plan.Cost.Objective, quick.Cost.Objective);
    }

    /// <summary>With a price for each minute ahead this was half a hundredth short of proof until half as much again was spent.</summary>
    [Fact]
    public void A_feast_for_four_cooks_is_proved_with_little_effort() => Assert.Equal(0, Plan(Families.Full(1, helpers: 4), effort: 0.5).Gap);
}
