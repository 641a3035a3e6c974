using CookAlong.Domain.Planning;
using static CookAlong.Planner.Tests.Cooking;

namespace CookAlong.Planner.Tests;

public sealed class NeighbourhoodsTests
{
    [Fact]
    public void A_meal_of_few_steps_has_neighbourhoods_too()
    {
        var meal = Meal(60, Kitchen(), [Cook("cook")], Dish("soup", OnTheSide(60, 30), Hands("soup-cut", 10), Hands("soup-lift", 5)));
        var clock = new Clock(Table - 60, Earliest: 0, MostLate: 0);
        var search = new Search(new PlanLimits(TimeSpan.FromSeconds(10), Workers: 1, Deterministic: 1), null, TestContext.Current.CancellationToken);
        MealModel Model(Near? near) => new(meal, clock, null, null, PeopleBy.Counts, Prices.Usual, near);
        var (whole, limits) = (Model(null), search.Limits);
        var answer = search.Solve(whole, limits.Time, limits.Time, share: 1);

        // As if nothing had been proved: then a few steps move at a time.
        var improved = new Neighbourhoods(search, Model).Improve(whole, answer with { Bound = 0 }, share: 1);

        Assert.Equal(answer.Objective, improved.Objective);
    }
}
