using CookAlong.Benchmarks.Planners;
using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using static CookAlong.Planner.Tests.Cooking;

namespace CookAlong.Planner.Tests;

/// <summary>What is told to help does help, by as much as told and for no longer than told.</summary>
public sealed class WhyNotTests
{
    /// <summary>One cook, an hour, and 90 minutes of work: cabbage that keeps overnight once it is cut, and a pie that does not.</summary>
    static Meal TwoDishesTooMany => Meal(
        60, Kitchen(), [Cook("cook")],
        Dish("cabbage", OnTheSide(60, 60), Hands("cabbage-cut", 30), Hands("cabbage-warm", 10)),
        Dish("pie", OnTheSide(60, 60), Hands("pie-fill", 20), Hands("pie-close", 30).Following(After("pie-fill", most: 30))));

    /// <summary>Two bakes that no one temperature suits, and time for one of them.</summary>
    static Meal TwoBakesInOneOven => Meal(
        90, Kitchen(), [Cook("cook")],
        Dish("bread", OnTheSide(90, 90), Alone("bread-bake", 50, InOven(220, 240))),
        Dish("custard", OnTheSide(90, 90), Alone("custard-bake", 50, InOven(110, 130))));

    /// <summary>Three pots that want a ring each, and two rings.</summary>
    static Meal ThreePotsOnTwoRings => Meal(
        40, Kitchen(rings: 2), [Cook("cook")],
        Dish("soup", OnTheSide(40, 40), Alone("soup-boil", 30, OnRings())),
        Dish("beans", OnTheSide(40, 40), Alone("beans-boil", 30, OnRings())),
        Dish("rice", OnTheSide(40, 40), Alone("rice-boil", 30, OnRings())));

    /// <summary>One oven tray of shelf, two pies hot from it within a minute of the table.</summary>
    static Meal TwoPiesThatMayNotWait => Meal(
        200, Kitchen(shelves: 1), [Cook("cook")],
        Dish("pie", OnTheSide(1, 1), Alone("pie-bake", 30, InOven(190, 210))),
        Dish("tart", OnTheSide(1, 1), Alone("tart-bake", 30, InOven(190, 210))));

    public static TheoryData<string> Kitchens => ["work", "oven", "rings", "wait"];

    static Meal Late(string kitchen) => kitchen switch
    {
        "work" => TwoDishesTooMany,
        "oven" => TwoBakesInOneOven,
        "rings" => ThreePotsOnTwoRings,
        "wait" => TwoPiesThatMayNotWait,
        _ => throw new ArgumentException(kitchen),
    };

    [Theory]
    [MemberData(nameof(Kitchens))]
    public void Every_change_that_is_told_brings_what_it_promises_when_it_is_made(string kitchen)
    {
        var meal = Late(kitchen);
        var plan = Plan(meal);

        Assert.NotEmpty(plan.Conflicts);
        Assert.All(plan.Conflicts, conflict =>
        {
            // With the change exactly as told: its span and no more.
            var changed = CpSatPlanner.PlanOnly(new PlanRequest(ChangedMeal.Of(meal, conflict.Change), new PlanLimits(TimeSpan.FromSeconds(10))));
            Assert.NotEqual(PlanStatus.None, changed.Status);
            if (conflict is { GainMinutes: { } gain, Change: not PlanChange.ServeLater })
            {
                Assert.InRange(changed.Cost.LateMinutes, 0, plan.Cost.LateMinutes - gain);
            }
        });
    }

    [Fact]
    public void Hands_are_asked_for_as_long_as_their_work_takes()
    {
        var (helper, gain) = Found<PlanChange.AddHelper>(Plan(TwoDishesTooMany));

        Assert.Equal(30, gain);
        Assert.InRange(helper.To - helper.From, 30, 50);
    }

    [Fact]
    public void A_second_oven_is_borrowed_from_its_warming_up_to_its_last_tray()
    {
        var (oven, gain) = Found<PlanChange.AddOven>(Plan(TwoBakesInOneOven));

        Assert.True(gain > 0);
        var during = Assert.NotNull(oven.During);
        // 50 minutes of baking, and at the least 8 to reach 110 °C from 20 at 12 °C a minute.
        Assert.InRange(during.To - during.From, 58, 90);
    }

    [Fact]
    public void What_keeps_overnight_may_be_made_the_day_before()
    {
        var (ahead, gain) = Found<PlanChange.MakeAhead>(Plan(TwoDishesTooMany));

        Assert.Equal((new DishId("cabbage"), 30), (ahead.Dish, gain));
        var changed = CpSatPlanner.PlanOnly(new PlanRequest(ChangedMeal.Of(TwoDishesTooMany, ahead), new PlanLimits(TimeSpan.FromSeconds(10))));
        Assert.True(changed.Step(new("cabbage-cut")).Start >= ahead.From && changed.Step(new("cabbage-cut")).End <= ahead.To);
        Assert.All(new[] { "cabbage-warm", "pie-fill", "pie-close" }, step => Assert.True(changed.Step(new(step)).Start >= Table - 60));
    }

    [Fact]
    public void What_does_not_keep_is_not_said_to()
    {
        Assert.DoesNotContain(Plan(TwoDishesTooMany).Conflicts, conflict => conflict.Change is PlanChange.MakeAhead { Dish.Value: "pie" });
        Assert.Empty(DaysAhead.StepsOf(TwoDishesTooMany, TwoDishesTooMany.Dishes[1], Table - 900));
    }

    [Fact]
    public void A_dish_whose_hold_reaches_that_far_may_be_made_wholly()
    {
        var meal = Meal(60, Kitchen(), [Cook("cook")], Dish("jelly", OnTheSide(2000, 2000), Hands("jelly-boil", 30), Hands("jelly-turn", 10)));

        Assert.Equal(["jelly-boil", "jelly-turn"], DaysAhead.StepsOf(meal, meal.Dishes[0], Table - 900).Select(step => step.Value));
    }

    [Fact]
    public void Nobody_is_told_to_have_begun_yesterday()
    {
        var plan = new CpSatPlanner().Plan(new PlanRequest(TwoDishesTooMany, new PlanLimits(TimeSpan.FromSeconds(5)), Now: Table - 120), null, TestContext.Current.CancellationToken);

        Assert.DoesNotContain(plan.Conflicts, conflict => conflict.Change is PlanChange.MakeAhead);
    }

    [Fact]
    public void What_mends_it_with_least_trouble_comes_first()
    {
        var kinds = Plan(TwoDishesTooMany).Conflicts.Select(conflict => conflict.Change.GetType().Name).ToList();

        Assert.Equal(["StartEarlier", "MakeAhead", "AddHelper", "ServeLater"], kinds);
    }

    [Theory]
    [InlineData(3, false)]
    [InlineData(6, true)]
    public void Nobody_is_asked_to_borrow_a_ring_for_three_minutes_of_thirteen(int minutes, bool isTold)
    {
        var plan = Plan(Meal(
            20, Kitchen(rings: 1), [Cook("cook")],
            Dish("soup", OnTheSide(40, 40), Alone("soup-boil", 33 - minutes, OnRings())),
            Dish("rice", OnTheSide(40, 40), Alone("rice-boil", minutes, OnRings()))));

        Assert.Equal(13, plan.Cost.LateMinutes);
        Assert.Equal(isTold, plan.Conflicts.Any(conflict => conflict.Change is PlanChange.AddRings));
    }

    [Fact]
    public void What_wants_a_night_is_begun_as_much_earlier_as_it_needs_and_no_more()
    {
        // Salted, 12 hours in the cold, an hour in the oven before the table at one: and the cook begins at nine. Nobody salts after
        // ten in the evening, so 21:50 it is.
        var meal = Meal(
            240, Kitchen(), [Cook("cook")],
            Dish("roast", OnTheSide(0, 0), Hands("roast-salt", 10), Alone("roast-rest", 720), Alone("roast-roast", 60, InOven(170, 190))));
        var plan = Plan(meal);

        Assert.Equal(PlanStatus.None, plan.Status);
        var (earlier, gain) = Found<PlanChange.StartEarlier>(plan);
        Assert.Equal(((2 * 60) + 10 + (9 * 60), null), (earlier.Minutes, gain));
        Assert.NotEqual(PlanStatus.None, Plan(ChangedMeal.Of(meal, earlier)).Status);
    }

    [Fact]
    public void A_whole_feast_too_late_by_hours_is_mended_by_what_is_worth_the_trouble()
    {
        // One cook has four hours for what takes nearly seven.
        var meal = Families.Full(2, helpers: 1);
        var plan = Plan(meal with { NotBefore = meal.FirstTableTime - 240 }, effort: 1);

        Assert.All(plan.Conflicts, conflict => Assert.InRange(Assert.NotNull(conflict.GainMinutes), 5, plan.Cost.LateMinutes));
        var (earlier, gain) = Found<PlanChange.StartEarlier>(plan);
        Assert.Equal((plan.Cost.LateMinutes, plan.Cost.LateMinutes), (earlier.Minutes, gain));
        Assert.Contains(plan.Conflicts, conflict => conflict.Change is PlanChange.MakeAhead);
    }

    static (T Change, int? Gain) Found<T>(Plan plan)
        where T : PlanChange
    {
        var conflict = Assert.Single(plan.Conflicts, conflict => conflict.Change is T);
        return ((T)conflict.Change, conflict.GainMinutes);
    }
}
