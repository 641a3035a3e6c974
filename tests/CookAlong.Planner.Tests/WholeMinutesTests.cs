using CookAlong.Benchmarks.Planners;
using CookAlong.Domain.Planning;
using static CookAlong.Planner.Tests.Cooking;

namespace CookAlong.Planner.Tests;

/// <summary>A plan's price is in whole waiting minutes, and no proof is spent on less.</summary>
public sealed class WholeMinutesTests
{
    [Theory]
    [InlineData(0, 0)]
    [InlineData(1, 20)]
    [InlineData(20, 20)]
    [InlineData(21, 40)]
    public void A_part_of_a_minute_counts_as_one(long price, long whole) => Assert.Equal(whole, Prices.Whole(price));

    [Fact]
    public void The_solver_the_quick_search_and_the_finished_plan_count_alike()
    {
        // Ready five minutes before the table, begun 258 before it. Boiling is 78 minutes beyond three hours ahead and setting 68:
        // at three an hour seven waiting minutes and a bit.
        var meal = Meal(300, Kitchen(), [Cook("cook")], Dish("jelly", OnTheSide(300, 300, cost: 0), Hands("jelly-boil", 10), Alone("jelly-set", 243)));

        var plan = Plan(meal, effort: 1);

        Assert.Equal((PlanStatus.Optimal, (258 + 8) * Prices.OfOneWaitingMinute), (plan.Status, plan.Cost.Objective));
        Assert.Equal(plan.Cost.Objective, Prices.Usual.Sum(meal, plan));
        var quick = new Quick.QuickPlanner().Plan(new PlanRequest(meal, new PlanLimits(TimeSpan.FromMinutes(1), Deterministic: 1)), null, TestContext.Current.CancellationToken);
        Assert.Equal(plan.Cost.Objective, quick.Cost.Objective);
    }

    /// <summary>With twentieths of a minute this was half a hundredth short of proof until half as much again was spent.</summary>
    [Fact]
    public void A_feast_for_four_cooks_is_proved_with_little_effort() => Assert.Equal(0, Plan(Families.Full(1, helpers: 4), effort: 0.5).Gap);
}
