using System.Text.Json.Nodes;
using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Intake.MealFiles;
using static CookAlong.Intake.Tests.SmallMeal;

namespace CookAlong.Intake.Tests.MealFiles;

/// <summary>What a meal file means where it says nothing.</summary>
public sealed class DefaultsTests
{
    static Step StepOf(string id, Action<JsonNode>? change = null) => SmallMeal.Read(change ?? (_ => { })).Meal!.Step(new(id));

    [Fact]
    public void The_steps_of_a_dish_follow_each_other_in_order()
    {
        Assert.Empty(StepOf("chop").After);
        Assert.Equal(new After(new("chop"), 0, null), Assert.Single(StepOf("simmer").After));
        Assert.Empty(StepOf("bake").After);
    }

    [Fact]
    public void An_empty_after_waits_for_nothing() =>
        Assert.Empty(StepOf("simmer", root => Step(root, 0, 1)["after"] = new JsonArray()).After);

    [Fact]
    public void A_step_is_hands_on_for_one_and_takes_what_its_number_says()
    {
        var chop = StepOf("chop");
        Assert.Equal(new Way(Durations.Exactly(10), Attention.HandsOn, 1, Uses.Nothing), chop.Way);
        Assert.Null(chop.Choice);
        Assert.False(chop.ChildSafe || chop.PauseAfter);
    }

    [Fact]
    public void Least_and_most_minutes_not_given_are_the_likely_ones() =>
        Assert.Equal(Durations.Exactly(12), StepOf("chop", root => Step(root, 0, 0)["minutes"] = new JsonObject { ["likely"] = 12 }).Way.Minutes);

    [Fact]
    public void A_tend_takes_a_minute_and_gives_three() =>
        Assert.Equal(new Tend("Stir", 1, Every: 10, At: null, Give: 3, ChildSafe: false), Assert.Single(StepOf("simmer").Tends));

    [Fact]
    public void An_oven_use_takes_one_shelf_of_any_oven_at_the_middle_of_its_range() =>
        Assert.Equal(new OvenUse(null, 1, new CelsiusRange(200, 210, 221)), StepOf("bake").Way.Uses.Oven);

    [Fact]
    public void An_option_takes_over_what_it_does_not_say()
    {
        var simmer = StepOf("simmer", root => Step(root, 0, 1)["options"] = JsonNode.Parse("""[{ "minutes": 12 }, { "uses": [], "attention": "unattended" }]"""));
        Assert.Equal(simmer.Way with { Minutes = Durations.Exactly(12) }, simmer.Options[0]);
        Assert.Equal(new Way(Durations.Exactly(30), Attention.Unattended, 1, Uses.Nothing with { Appliances = simmer.Options[1].Uses.Appliances }), simmer.Options[1]);
    }

    [Fact]
    public void A_dish_without_a_hold_waits_on_the_table_best_within_5_good_for_10_at_most_15()
    {
        var soup = SmallMeal.Meal.Dishes[0];
        Assert.Equal(new Hold(HoldPlace.Table, 0, 5, 10, 15, 1, null), Assert.Single(soup.Holds));
        Assert.Equal(1, soup.Serves);
        Assert.Equal("soup", soup.Name);
    }

    [Fact]
    public void A_hold_that_says_only_its_limit_waits_free_and_a_warm_oven_lets_it_stand_twenty_minutes_first()
    {
        var hold = SmallMeal.Read(root => root["dishes"]![0]!["holds"] = JsonNode.Parse("""[{ "place": "warmOven", "limit": 45, "celsius": { "min": 60, "max": 80 } }]""")).Meal!.Dishes[0].Holds[0];
        Assert.Equal(new Hold(HoldPlace.WarmOven, 0, 45, 45, 45, 1, new WarmOven(new CelsiusRange(60, 70, 80), 1, 20)), hold);
        Assert.Equal(0, hold.CostOf(45));
    }

    [Fact]
    public void An_oven_starts_at_20_degrees() => Assert.Equal(20, SmallMeal.Meal.Kitchen.Ovens[0].StartsAt);

    [Fact]
    public void Without_helpers_one_host_cook_does_everything()
    {
        var read = SmallMeal.Read(root => root.AsObject().Remove("helpers"));
        var cook = Assert.Single(read.Meal!.Helpers);
        Assert.True(cook is { IsChild: false, Can: null, Available.IsEmpty: true });
    }

    [Fact]
    public void Nothing_said_of_the_beginning_leaves_it_to_the_planner() => Assert.Null(SmallMeal.Meal.NotBefore);

    [Fact]
    public void A_dish_serves_all_portions_of_the_guests() =>
        Assert.Equal(2.6m, SmallMeal.Read(root => root["guests"] = JsonNode.Parse("""[{ "name": "A" }, { "name": "B", "portion": 1.6 }]""")).Meal!.Dishes[0].Serves);

    [Fact]
    public void Null_says_nothing() => Assert.Empty(SmallMeal.Read(root => root["notBefore"] = null).Errors);

    [Fact]
    public void Unknown_fields_do_no_harm() => Assert.Empty(SmallMeal.Read(root => root["mood"] = JsonNode.Parse("""{ "music": ["slow"] }""")).Errors);
}
