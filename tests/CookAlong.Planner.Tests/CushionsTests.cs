using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using static CookAlong.Planner.Tests.Cooking;

namespace CookAlong.Planner.Tests;

/// <summary>
/// Against a closed form. The stew takes 30 to 60 minutes, most likely 30: with c minutes before the table it is served within ten
/// minutes when it takes no more than 40 + c, which has the chance 1 - (1 - (10 + c) / 30)^2: 75 % for 5, 89 % for 10, 97 % for 15.
/// </summary>
public sealed class CushionsTests
{
    [Theory]
    [InlineData(0.7, 5)]
    [InlineData(0.85, 10)]
    [InlineData(0.9, 15)]
    public void The_smallest_cushion_is_taken_that_reaches_the_wish(double wish, int cushion)
    {
        var buffered = Reach(Stew(keeps: 60), wish);

        Assert.Equal(cushion, buffered.Plan.Cost.Cushion);
        Assert.Equal(1 - Math.Pow(1 - ((10 + cushion) / 30.0), 2), buffered.Plan.Confidence!.OnTimeWithin10, tolerance: 0.015);
        Assert.Equal(cushion > 5, buffered.IsSurer);
        Assert.Equal((cushion - 5, cushion - 5), (buffered.WaitingMinutes, buffered.KitchenMinutes));
        Assert.Empty(PlanCheck.Check(buffered.Meal, buffered.Plan));
    }

    [Fact]
    public void Food_that_does_not_keep_gets_no_buffer()
    {
        var buffered = Reach(Stew(keeps: 2), 0.9);

        Assert.True(buffered.Plan.Confidence!.OnTimeWithin10 < 0.9);
        Assert.InRange(buffered.WaitingMinutes, 0, 1);
    }

    private static Buffered Reach(Meal meal, double wish)
    {
        var (planner, request) = (new CpSatPlanner(), new PlanRequest(meal, new PlanLimits(TimeSpan.FromSeconds(20))));
        var stop = TestContext.Current.CancellationToken;
        return Cushions.Reach(planner, request, planner.Plan(request, null, stop), wish, stop: stop);
    }

    private static Meal Stew(int keeps)
    {
        var stew = Alone("stew", 30).Following(After("chop", most: 0));
        return Meal(180, Kitchen(), [Cook("sam")], Dish("stew", OnTheSide(keeps, bestWithin: Math.Min(keeps, 10)), Hands("chop", 5), stew with { Way = stew.Way with { Minutes = new Durations(30, 30, 60) } }));
    }
}
