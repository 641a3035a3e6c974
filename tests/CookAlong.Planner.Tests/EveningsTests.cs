using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using static CookAlong.Planner.Tests.Cooking;

namespace CookAlong.Planner.Tests;

/// <summary>What is done the evening before has the same price at whatever hour: food stands no longer than it must, and nobody is up late for nothing.</summary>
public sealed class EveningsTests
{
    private static readonly PlanLimits Limits = new(TimeSpan.FromMinutes(5), Workers: 1, Deterministic: 1);

    /// <summary>Twenty hours before lunch: the stock's first step has its hour.</summary>
    private static readonly Minute Five = Table - (20 * 60);

    private static Meal Lunch() => Meal(
        24 * 60, Kitchen(), [Cook("ann")],
        Dish(
            "stock", OnTheSide(60),
            Hands("chop", 10) with { At = Five },
            Alone("simmer", 60, OnRings()).Following(After("chop", most: 90)),
            Hands("strain", 5).Following(After("simmer", most: 90)),
            Hands("warm", 10).Following(After("strain", least: 600, most: 1380))),
        Dish(
            "jelly", OnTheSide(60),
            Hands("stir", 10),
            Hands("pour", 5).Following(After("stir", least: 30, most: 120)),
            Hands("turn-out", 3).Following(After("pour", least: 600, most: 1380))));

    [Fact]
    public void Steps_of_an_evening_follow_each_other_as_soon_as_they_may()
    {
        var plan = Planned(Lunch());

        Assert.Equal((Five + 10, Five + 70), (plan.Step(new("simmer")).Start, plan.Step(new("strain")).Start));
        Assert.Equal(30, plan.Step(new("pour")).Start - plan.Step(new("stir")).End);
    }

    [Fact]
    public void One_dish_s_work_lies_within_the_evening_that_another_needs()
    {
        var plan = Planned(Lunch());

        Assert.InRange(plan.Step(new("stir")).Start - Five, 0, 75);
        Assert.InRange(plan.Step(new("pour")).End - Five, 0, 75);
    }

    [Fact]
    public void It_costs_no_more_and_is_proved_as_far()
    {
        var (plan, plain) = (Planned(Lunch()), CpSatPlanner.PlanOnly(new PlanRequest(Lunch(), Limits)));

        Assert.Equal((plain.Cost.Objective, plain.Status, plain.Gap), (plan.Cost.Objective, plan.Status, plan.Gap));
    }

    /// <summary>No food stands between steps and no evening has work: there is nothing to make less.</summary>
    [Fact]
    public void Where_there_is_nothing_to_tidy_the_plan_stays()
    {
        var plan = Planned(Meal(
            24 * 60, Kitchen(), [Cook("ann")],
            Dish("beans", OnTheSide(1300), Alone("soak", 60) with { At = Five }),
            Dish("figs", OnTheSide(1300), Alone("steep", 60) with { At = Five })));

        Assert.Equal((Five, Five), (plan.Step(new("soak")).Start, plan.Step(new("steep")).Start));
    }

    /// <summary>Within the day it has no price, wherever it lies, and nobody's hands are needed before half past eleven.</summary>
    [Fact]
    public void What_needs_no_hands_begins_no_sooner_in_the_morning_than_it_must()
    {
        var plan = Planned(Meal(
            11 * 60, Kitchen(), [Cook("ann")],
            Dish("beans", OnTheSide(15), Alone("soak", 120), Hands("dress", 30).Following(After("soak")))));

        Assert.Equal(plan.Step(new("dress")).Start, plan.Step(new("soak")).End);
    }

    [Fact]
    public void What_people_were_told_stays_though_it_is_no_evening_a_cook_would_choose()
    {
        var meal = Lunch();
        var told = Planned(meal);
        told = told with { Steps = [.. told.Steps.Select(step => step.Step == new StepId("pour") ? step with { Start = step.Start + 60, End = step.End + 60 } : step)] };
        var again = new CpSatPlanner().Plan(new PlanRequest(meal, Limits) { Previous = told }, null, TestContext.Current.CancellationToken);

        Assert.Equal(told.Step(new("pour")).Start, again.Step(new("pour")).Start);
    }

    [Fact]
    public void The_goose_s_giblets_are_in_the_pan_within_half_an_hour()
    {
        var plan = Plan(SeedMealsTests.Meal("midwinter-lunch.json"), effort: 0.3);

        Assert.InRange(plan.Step(new("gravy-brown")).Start - plan.Step(new("goose-unpack")).End, 0, 30);
    }

    private static Plan Planned(Meal meal)
    {
        var plan = new CpSatPlanner().Plan(new PlanRequest(meal, Limits), null, TestContext.Current.CancellationToken);
        Assert.Empty(PlanCheck.Check(meal, plan));
        return plan;
    }
}
