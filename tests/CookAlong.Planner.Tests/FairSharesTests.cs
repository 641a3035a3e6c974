using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Planner.Quick;
using static CookAlong.Planner.Tests.Cooking;

namespace CookAlong.Planner.Tests;

public sealed class FairSharesTests
{
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Work_is_shared_by_how_long_people_are_here(bool isQuick)
    {
        // Twelve jobs one after the other, an hour's work in all; one of the two is here for the second half only.
        var jobs = Enumerable.Range(1, 12).Select(number => Hands($"cut-{number}", 5)).ToArray();
        var meal = Meal(120, Kitchen(), [Cook("all"), Cook("half", isChild: false, new Window(Table - 35, Table + 60))], Dish("salad", OnTheSide(60), jobs));

        var shares = Shares(meal, isQuick);

        Assert.Equal(60, shares.Sum());
        Assert.InRange(shares[1], 15, 25);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_child_does_half_of_what_a_grown_up_does(bool isQuick)
    {
        var jobs = Enumerable.Range(1, 12).Select(number => Hands($"shell-{number}", 5, childSafe: true)).ToArray();
        var meal = Meal(120, Kitchen(), [Cook("grown"), Cook("child", isChild: true)], Dish("peas", OnTheSide(60), jobs));

        var shares = Shares(meal, isQuick);

        // Whoever did the last job of a dish may go on with it: that is worth a little unevenness.
        Assert.InRange(shares[1], 15, 25);
    }

    private static int[] Shares(Meal meal, bool isQuick)
    {
        // To start later is worth more than to keep the last half hour free, else both are as good and the times are anybody's guess.
        var request = new PlanRequest(meal, new PlanLimits(TimeSpan.FromSeconds(10), Workers: 1, Deterministic: 1)) { Leans = Leans.StartLater };
        var plan = isQuick ? new QuickPlanner().Plan(request, null, TestContext.Current.CancellationToken) : CpSatPlanner.PlanOnly(request);
        Assert.Empty(PlanCheck.Check(meal, plan));
        return [.. new PlanMeasures(meal, plan).Shares.Select(share => share.Minutes)];
    }
}
