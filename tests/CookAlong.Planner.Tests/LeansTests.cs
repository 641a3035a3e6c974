using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using static CookAlong.Planner.Tests.Cooking;

namespace CookAlong.Planner.Tests;

/// <summary>
/// A lean raises the price of one measure. Between two proven plans the one with the dearer price never has more of it, whatever
/// the meal: so each is held to its own measure, and once to a meal where it must bring something.
/// </summary>
public sealed class LeansTests
{
    [Fact]
    public void Starting_later_makes_the_kitchen_day_shorter()
    {
        var (plain, leant) = Both(Leans.StartLater, Keeping());

        Assert.True(leant.KitchenDay < plain.KitchenDay, $"{leant.KitchenDay}, {plain.KitchenDay} without");
    }

    [Fact]
    public void A_calmer_end_takes_work_out_of_the_last_half_hour()
    {
        var (plain, leant) = Both(Leans.CalmEnd, Supper());

        Assert.True(leant.HandsOn(Main, 30) < plain.HandsOn(Main, 30), $"{leant.HandsOn(Main, 30)}, {plain.HandsOn(Main, 30)} without");
    }

    [Fact]
    public void Washing_up_as_we_go_leaves_hands_free_before_the_table()
    {
        var (plain, leant) = Both(Leans.WashUp, Keeping());

        Assert.True(leant.HandsOn(Main, 60) < plain.HandsOn(Main, 60), $"{leant.HandsOn(Main, 60)}, {plain.HandsOn(Main, 60)} without");
    }

    [Fact]
    public void Fewer_dial_changes_bake_together_what_was_baked_fresh()
    {
        var (plain, leant) = Both(Leans.FewerDialTurns, Bakes());

        Assert.Equal((2, 2), (plain.DialChanges, plain.DialTurns));
        Assert.Equal((1, 1), (leant.DialChanges, leant.DialTurns));
    }

    /// <summary>Never fewer; more only where an oven that is still heating up, or at the limit of its rates, must creep.</summary>
    [Fact]
    public void An_ovens_programme_has_the_changes_that_were_priced()
    {
        var turned = new List<(int Turns, int Changes)>();
        for (var seed = 0; seed < 400; seed++)
        {
            var meal = new RandomMeals(seed, mostSteps: 14, scale: 5).Next();
            if (meal.Kitchen.Ovens.Length == 1 && Quickly(meal) is { Status: not PlanStatus.None } plan)
            {
                var measures = new PlanMeasures(meal, plan);
                Assert.True(measures.DialTurns >= measures.DialChanges, $"meal {seed}");
                turned.AddRange(measures.DialTurns > 0 ? [(measures.DialTurns, measures.DialChanges)] : []);
            }
        }

        Assert.True(turned.Count > 5, $"only {turned.Count} meals turned a dial");
        Assert.InRange(turned.Count(one => one.Turns > one.Changes), 0, 2);
    }

    [Theory]
    [InlineData(Leans.StartLater)]
    [InlineData(Leans.CalmEnd)]
    [InlineData(Leans.FewerDialTurns)]
    [InlineData(Leans.WashUp)]
    public void No_lean_makes_its_own_measure_worse(Leans lean)
    {
        for (var seed = 0; seed < 60; seed++)
        {
            var meal = new RandomMeals(seed, mostSteps: 9, scale: 5).Next();
            var (plain, leant) = (Planned(meal, Leans.None), Planned(meal, lean));
            if (plain.Status == PlanStatus.Optimal && leant.Status == PlanStatus.Optimal)
            {
                Assert.True(Measure(lean, meal, leant) <= Measure(lean, meal, plain), $"meal {seed}");
            }
        }
    }

    [Fact]
    public void No_lean_makes_a_meal_late()
    {
        var meal = Supper();

        Assert.Equal(0, Planned(meal, Leans.StartLater | Leans.CalmEnd | Leans.FewerDialTurns | Leans.WashUp).Cost.LateMinutes);
    }

    /// <summary>What the lean's price is charged on: what the price list asks more for with it.</summary>
    private static long Measure(Leans lean, Meal meal, Plan plan) =>
        Prices.Of(PlanRequest.UsualCushion, lean).Sum(meal, plan) - Prices.Usual.Sum(meal, plan);

    private static (PlanMeasures Plain, PlanMeasures Leant) Both(Leans lean, Meal meal) =>
        (new(meal, Planned(meal, Leans.None)), new(meal, Planned(meal, lean)));

    private static Plan Planned(Meal meal, Leans leans) =>
        CpSatPlanner.PlanOnly(new PlanRequest(meal, new PlanLimits(TimeSpan.FromSeconds(20), Workers: 1, Deterministic: 5)) { Leans = leans });

    private static Plan Quickly(Meal meal) => new Quick.QuickPlanner().Plan(new PlanRequest(meal, new PlanLimits(TimeSpan.FromSeconds(20), Workers: 1, Deterministic: 0.5)));

    /// <summary>Three dishes by one pair of hands, each best at once: waiting is what a lean is paid with.</summary>
    private static Meal Supper() => Meal(
        300,
        Kitchen(),
        [Cook("cook")],
        Dish("salad", OnTheSide(120, bestWithin: 5, cost: 3), Hands("salad-cut", 15)),
        Dish("sauce", OnTheSide(120, bestWithin: 5, cost: 2), Hands("sauce-stir", 15)),
        Dish("fritters", OnTheSide(120, bestWithin: 5, cost: 5), Hands("fritters-fry", 15, OnRings())));

    /// <summary>A roast that follows a pie, and rolls that want the pie's heat: fresh rolls cost two changes, rolls baked with the pie but one.</summary>
    private static Meal Bakes() => Meal(
        300,
        Kitchen(),
        [Cook("cook")],
        Dish("pie", OnTheSide(240, bestWithin: 240), Alone("pie-bake", 40, InOven(150, 160))),
        Dish("roast", OnTheSide(90, bestWithin: 60), Alone("roast-roast", 25, InOven(200, 210)).Following(After("pie-bake"))),
        Dish("rolls", OnTheSide(240, bestWithin: 5, cost: 1), Alone("rolls-bake", 20, InOven(150, 160))));

    /// <summary>
    /// Food that stands well for hours, but for the last of it: an early start costs nothing but the cook's day. Were it all so,
    /// a minute of the day would buy one out of the last half hour, and plans would differ that cost the same.
    /// </summary>
    private static Meal Keeping()
    {
        var meal = Supper();
        return meal with { Dishes = [.. meal.Dishes.Select(dish => dish with { Holds = [OnTheSide(180, bestWithin: dish.Id.Value == "fritters" ? 15 : 180)] })] };
    }
}
