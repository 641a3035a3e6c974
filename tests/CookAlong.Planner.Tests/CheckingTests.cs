using CookAlong.Domain.Planning;
using static CookAlong.Planner.Tests.Cooking;

namespace CookAlong.Planner.Tests;

public sealed class CheckingTests
{
    [Fact]
    public void A_plan_that_breaks_a_rule_is_discarded()
    {
        var meal = Meal(60, Kitchen(), [Cook("cook")], Dish("soup", OnTheSide(60, 30), Hands("soup-cut", 10))) with { Name = DiscardedPlans.OnPurpose };
        var plan = Plan(meal);
        var cut = plan.Steps[0];
        var broken = plan with { Steps = [cut with { End = cut.End - 1 }] };

        Assert.Null(Checking.Finished(meal, broken, so: null, plan.NotBefore));
        Assert.NotNull(Checking.Finished(meal, plan, so: null, plan.NotBefore));
    }
}
