using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using static CookAlong.Planner.Tests.Cooking;

namespace CookAlong.Planner.Tests;

/// <summary>
/// A dinner every household that cooks one has managed with one oven and one cook (common practice, no source). The planner
/// must find it too.
/// </summary>
public sealed class CommonPracticeTests
{
    [Fact]
    public void A_roast_dinner_fits_one_oven_and_one_cook_in_four_hours()
    {
        var meal = RoastDinner();

        var plan = Plan(meal, effort: 8);

        Assert.NotEqual(PlanStatus.None, plan.Status);
        Assert.Equal(0, plan.Cost.LateMinutes);
        Assert.Empty(PlanCheck.Check(meal, plan));
    }

    /// <summary>
    /// The bird 90 min at 180 °C and then 30 at 200, basted every 10, rests up to 90 under foil; potatoes and beetroot 40 min
    /// at 200 on one tray; carrots and parsnips 20 and 10 more, the stuffing balls sharing those last 10; all these kept at 90-100 °C for
    /// 15 min; wrapped fruit under the grill and two vegetables on the rings in the last quarter of an hour; 20 min of hands
    /// before the bird goes in; an oven that warms 12 °C a minute and, its door ajar, cools 10.
    /// </summary>
    internal static Meal RoastDinner()
    {
        // Out of 200 °C they stand up to 10 min while the oven cools, then 15 min and no more than 25 inside.
        var warm = KeptWarm(90, 100, limit: 35, standFirst: 10, least: 25);
        return Meal(
            minutesBefore: 240,
            Kitchen(ovens: 1, shelves: 3, rings: 4, heatUp: 12, coolDown: 10),
            [Cook("cook")],
            Dish(
                "bird", new Hold(HoldPlace.Covered, Least: 20, BestWithin: 60, GoodFor: 90, Limit: 90, CostPerMinute: 1, null),
                Hands("bird-stuff", 20),
                Alone("bird-roast", 90, InOven(175, 185)) with { Tends = [Every(10)] },
                (Alone("bird-brown", 30, InOven(195, 205)) with { Tends = [Every(10)] }).Following(After("bird-roast", 0, 10))),
            Dish("potatoes-and-beetroot", warm, Hands("potatoes-peel", 25), Alone("potatoes-roast", 40, InOven(195, 205))),
            Dish(
                "roots", warm,
                Hands("roots-peel", 10),
                Alone("roots-roast", 20, InOven(195, 205)),
                Alone("roots-finish", 10, InOven(195, 205)).Following(After("roots-roast", 0, 0))),
            Dish("stuffing", warm, Hands("stuffing-roll", 10), Alone("stuffing-bake", 10, InOven(195, 205)).Following(After("stuffing-roll"), After("roots-roast", 0, 0))),
            Dish("fruit", OnTheSide(5), Hands("fruit-wrap", 10), Alone("fruit-grill", 10, UnderGrill())),
            Dish("greens", OnTheSide(5), Hands("greens-trim", 5), Alone("greens-boil", 8, OnRings())),
            Dish("peas", OnTheSide(5), Alone("peas-boil", 5, OnRings())));
    }
}
