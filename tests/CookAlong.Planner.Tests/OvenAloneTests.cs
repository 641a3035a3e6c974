using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using static CookAlong.Planner.Tests.Cooking;

namespace CookAlong.Planner.Tests;

/// <summary>Two bakes in one oven, one cool and one hot: half an hour each and four minutes between them, whichever comes first.</summary>
public sealed class OvenAloneTests
{
    private const int BetweenThem = 4;

    /// <summary>One of them waits from before the other and the turn of the dial, five minutes of it for nothing; and the dial is turned once.</summary>
    private const int WaitAndTurn = 30 + BetweenThem - 5 + 10;

    [Fact]
    public void What_cannot_share_an_oven_waits_whatever_hands_there_are()
    {
        var meal = Meal(180, Kitchen(), [Cook("ann"), Cook("ben"), Cook("cem")], Bake("pie", 150, 160), Bake("tart", 200, 210), Soup());
        Assert.Equal(WaitAndTurn, Least(meal));
    }

    [Fact]
    public void What_is_ready_only_with_a_garnish_need_not_wait()
    {
        var garnished = Bake("tart", 200, 210);
        garnished = garnished with { Steps = [.. garnished.Steps, Hands("tart-leaves", 2).Following()] };
        var meal = Meal(180, Kitchen(), [Cook("ann")], Bake("pie", 150, 160), garnished);
        Assert.Equal(10, Least(meal));
    }

    [Fact]
    public void One_dish_has_the_oven_to_itself() => Assert.Null(OvenAlone.Of(Meal(180, Kitchen(), [Cook("ann")], Bake("pie", 150, 160), Soup())));

    /// <summary>By counted effort, of which the small model takes a part: without it less was proved of the whole than of the oven alone.</summary>
    [Fact]
    public void A_meal_s_bound_is_no_lower_than_its_oven_s()
    {
        var bakes = Enumerable.Range(0, 8).Select(number =>
        {
            var (id, heat) = ($"bake-{number}", 150 + (number % 4 * 20));
            return Dish(id, OnTheSide(240), Hands($"{id}-cut", 8 + number), Alone($"{id}-bake", 25 + (7 * number % 30), InOven(heat, heat + 10)), Hands($"{id}-plate", 4).Following(After($"{id}-bake", most: 10)));
        });
        var meal = Meal(1440, Kitchen(), [Cook("ann"), Cook("ben")], [.. bakes, Soup()]);
        var plan = CpSatPlanner.PlanOnly(new PlanRequest(meal, new PlanLimits(TimeSpan.FromMinutes(5), Workers: 1, Deterministic: 1)) { Cushion = 0 });
        Assert.InRange(plan.Cost.Objective * (1 - plan.Gap), Least(meal) * 0.999, plan.Cost.Objective);
    }

    private static long Least(Meal meal)
    {
        var part = new MealModel(OvenAlone.Of(meal)!, new Clock(meal.NotBefore!.Value, 0, MostLate: 0), null, null, PeopleBy.Counts, Prices.Of(cushion: 0, Leans.None));
        var search = new Search(new PlanLimits(TimeSpan.FromMinutes(5), Workers: 1, Deterministic: 5), null, TestContext.Current.CancellationToken);
        return search.LeastOf(part, TimeSpan.FromMinutes(5), share: 1);
    }

    private static Dish Bake(string id, int min, int max) => Dish(id, OnTheSide(120), Hands($"{id}-roll", 5), Alone($"{id}-bake", 30, InOven(min, max)));

    private static Dish Soup() => Dish("soup", OnTheSide(60), Hands("soup-cut", 10), Alone("soup-boil", 20, OnRings()));
}
