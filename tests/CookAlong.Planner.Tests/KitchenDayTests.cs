using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using static CookAlong.Planner.Tests.Cooking;

namespace CookAlong.Planner.Tests;

/// <summary>Nothing but work with hands, that waits for nothing: 120 minutes of it, in twelve pieces from five minutes to fifteen.</summary>
public sealed class KitchenDayTests
{
    private const int Work = 120;

    /// <summary>
    /// Half an hour before the table nobody needs to work, and a minute of work there costs what a longer day costs: whatever is
    /// chosen, the two together are no cheaper. By counted effort: without that said, a third of it was not proved by then with two cooks and three.
    /// </summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void A_calm_end_and_a_long_day_bound_each_other(int cooks)
    {
        int[] minutes = [5, 6, 7, 8, 9, 9, 10, 11, 12, 13, 15, 15];
        Assert.Equal(Work, minutes.Sum());
        var dishes = minutes.Select((most, index) => Dish($"d{index}", OnTheSide(240, bestWithin: 240, cost: 0), Hands($"d{index}-all", most)));
        var meal = Meal(240, Kitchen(), Enumerable.Range(0, cooks).Select(index => Cook($"cook-{index}")), [.. dishes]);
        var plan = CpSatPlanner.PlanOnly(new PlanRequest(meal, new PlanLimits(TimeSpan.FromMinutes(5), Workers: 1, Deterministic: 0.5)) { Cushion = 0 });
        var least = (Work / cooks) + Prices.RushMinutes;
        Assert.InRange(plan.Cost.Objective * (1 - plan.Gap), least * 0.999, least * 1.001);
    }

    /// <summary>What the day's bounds count on: a step that its dish's gaps and wait let be done the evening before takes no hands of the day.</summary>
    [Fact]
    public void What_may_be_done_the_evening_before_makes_no_day_longer()
    {
        Dish Salted(string id) => Dish(id, OnTheSide(60, bestWithin: 60, cost: 0), Hands($"{id}-salt", 90), Hands($"{id}-plate", 5).Following(After($"{id}-salt", least: 60)));
        var meal = Meal(1440, Kitchen(), [Cook("ann")], Salted("ham"), Salted("tongue"));
        var plan = CpSatPlanner.PlanOnly(new PlanRequest(meal, new PlanLimits(TimeSpan.FromMinutes(5), Workers: 1, Deterministic: 2)) { Cushion = 0 });
        Assert.Equal(PlanStatus.Optimal, plan.Status);
        Assert.InRange(new PlanMeasures(meal, plan).KitchenDay, 10, 30);
    }
}
