using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Tests.Meals;

public sealed class HoldTests
{
    // The meal file's words: free up to bestWithin, from there to goodFor each minute costs, beyond it double.
    [Theory]
    [InlineData(0, 0)]
    [InlineData(5, 0)]
    [InlineData(6, 3)]
    [InlineData(10, 15)]
    [InlineData(11, 21)]
    [InlineData(15, 45)]
    public void Waiting_is_free_then_costs_then_costs_double(int minutes, long cost) =>
        Assert.Equal(cost, new Hold(HoldPlace.Side, Least: 0, BestWithin: 5, GoodFor: 10, Limit: 15, CostPerMinute: 3, Oven: null).CostOf(minutes));

    [Theory]
    [InlineData(10, 0)]
    [InlineData(11, 2)]
    public void Where_best_and_good_are_the_same_it_costs_double_at_once(int minutes, long cost) =>
        Assert.Equal(cost, new Hold(HoldPlace.Side, Least: 0, BestWithin: 10, GoodFor: 10, Limit: 15, CostPerMinute: 1, Oven: null).CostOf(minutes));
}
