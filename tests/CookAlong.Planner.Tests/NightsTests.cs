using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Planner.Quick;
using static CookAlong.Planner.Tests.Cooking;
using static CookAlong.Planner.Tests.PropertyTests;

namespace CookAlong.Planner.Tests;

/// <summary>A joint is salted ten hours before it goes into the oven for a lunch at one; nobody gets up in the night for that.</summary>
public sealed class NightsTests
{
    static readonly Minute Bed = Table - (15 * 60);

    static Dish Joint(int most, Minute? at = null) => Dish(
        "joint", OnTheSide(15, 15), Hands("salt", 10) with { At = at }, Alone("roast", 120).Following(After("salt", least: 600, most: most)));

    static Meal Lunch(Dish dish, params Window[] hours) => Meal(30 * 60, Kitchen(), [Cook("cook", false, hours)], dish);

    static Plan Plan(Who who, Meal meal)
    {
        var request = new PlanRequest(meal, new PlanLimits(TimeSpan.FromSeconds(20), Workers: 1, Deterministic: 2));
        var plan = who == Who.Solver ? CpSatPlanner.PlanOnly(request) : new QuickPlanner().Plan(request, null, TestContext.Current.CancellationToken);
        Assert.Empty(PlanCheck.Check(meal, plan));
        return plan;
    }

    [Theory]
    [InlineData(Who.Solver)]
    [InlineData(Who.Quick)]
    public void Hands_for_a_day_ahead_are_planned_before_the_night(Who who)
    {
        var plan = Plan(who, Lunch(Joint(most: 900)));

        Assert.Equal(0, plan.Cost.LateMinutes);
        Assert.True(plan.Step(new("salt")).End <= Bed);
    }

    [Theory]
    [InlineData(Who.Solver)]
    [InlineData(Who.Quick)]
    public void What_only_the_night_would_do_for_makes_the_table_late(Who who) =>
        Assert.True(Plan(who, Lunch(Joint(most: 610))).Cost.LateMinutes > 0);

    [Theory]
    [InlineData(Who.Solver)]
    [InlineData(Who.Quick)]
    public void Whoever_has_hours_in_the_night_works_in_them(Who who) =>
        Assert.Equal(0, Plan(who, Lunch(Joint(most: 610), new Window(Table - (24 * 60), Table))).Cost.LateMinutes);

    [Theory]
    [InlineData(Who.Solver)]
    [InlineData(Who.Quick)]
    public void A_step_is_done_in_the_night_when_somebody_has_fixed_it_there(Who who)
    {
        var one = Table - (12 * 60) - 15;
        var plan = Plan(who, Lunch(Joint(most: 630, at: one)));

        Assert.Equal((0, one), (plan.Cost.LateMinutes, plan.Step(new("salt")).Start));
    }

    [Theory]
    [InlineData(Who.Solver)]
    [InlineData(Who.Quick)]
    public void A_kitchen_that_is_up_longer_works_in_those_hours(Who who)
    {
        var meal = Lunch(Joint(most: 610));
        var plan = Plan(who, meal with { Kitchen = meal.Kitchen with { Awake = new(new(10, 0), new(2, 0)) } });

        Assert.Equal(0, plan.Cost.LateMinutes);
    }

    [Theory]
    [InlineData(Who.Solver)]
    [InlineData(Who.Quick)]
    public void One_that_goes_to_bed_earlier_has_its_hands_before(Who who)
    {
        var meal = Lunch(Joint(most: 1200));
        var plan = Plan(who, meal with { Kitchen = meal.Kitchen with { Awake = new(new(7, 0), new(19, 0)) } });

        Assert.Equal(0, plan.Cost.LateMinutes);
        Assert.True(plan.Step(new("salt")).End <= Bed - 180);
    }

    [Fact]
    public void Where_the_night_makes_it_late_a_pair_of_hands_then_is_what_would_help()
    {
        var plan = new CpSatPlanner().Plan(new PlanRequest(Lunch(Joint(most: 610)), new PlanLimits(TimeSpan.FromSeconds(2), Workers: 1)), null, TestContext.Current.CancellationToken);

        var help = Assert.Single(plan.Conflicts.Select(conflict => conflict.Change).OfType<PlanChange.AddHelper>());
        Assert.True(Bed < help.From && help.To < Table - (8 * 60));
    }
}
