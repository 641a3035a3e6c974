using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CsCheck;
using static CookAlong.Domain.Tests.MealBuilder;

namespace CookAlong.Domain.Tests.Planning;

public sealed class WhyHereTests
{
    static MealBuilder Kitchen => new MealBuilder().Course("main", 100).Oven("oven", shelves: 1, heatUp: 10, coolDown: 5).Rings(1).Grill("grill").Appliance("mixer").Helper("sam");

    static string[] Why(Meal meal, PlanBuilder plan, string step) => [.. WhyHere.Of(meal, plan.Build(), new(step)).Chain.Select(Short)];

    static string Short(Because because) => because switch
    {
        Because.Served one => $"served {one.At - Zero} rest {one.Rest}",
        Because.Fixed one => $"fixed {one.At - Zero}",
        Because.WindowCloses one => $"window {one.At - Zero}",
        Because.Leaves one => $"{one.Helper?.Value ?? "grown-ups"} leave {one.At - Zero}",
        Because.Awaited one => $"{one.Next} {one.At - Zero} gap {one.Gap}",
        Because.SoonAfter one => $"within {one.Most} of {one.Next} {one.At - Zero}",
        Because.OvenTurns one => $"{one.Next} {one.At - Zero} oven {one.Celsius.Min} in {one.Minutes}",
        Because.PlaceNeeded one => $"{one.Next} {one.At - Zero} {one.Place}",
        Because.HandsNeeded one => $"{one.Next} {one.At - Zero} {one.Helper}",
        Because.Tended one => $"tend of {one.Next} {one.At - Zero}",
        Because.KeptWarm one => $"{one.Dish} warm {one.At - Zero}",
        _ => throw new ArgumentException($"{because}"),
    };

    [Fact]
    public void The_food_waits_for_it_and_the_table_for_the_food()
    {
        var meal = Kitchen.Dish("roast", "main", dish => dish.Hold(HoldPlace.Covered, 60, least: 20)
            .Step("season", 10).Step("cook", 50, step => step.After("season", least: 5).Unattended())).Build();

        Assert.Equal(["cook 30 gap 5", "served 100 rest 20"], Why(meal, new PlanBuilder(meal).Step("season", 15, "sam").Step("cook", 30), "season"));
    }

    [Fact]
    public void The_oven_has_to_turn_for_what_comes_next()
    {
        var meal = Kitchen
            .Dish("roast", "main", dish => dish.Hold(HoldPlace.Covered, 90).Step("roast-cook", 40, step => step.Unattended().Oven(1, 170, 190)))
            .Dish("potatoes", "main", dish => dish.Hold(HoldPlace.Table, 10).Step("potatoes-cook", 40, step => step.Unattended().Oven(1, 220, 240))).Build();
        var plan = new PlanBuilder(meal).Step("roast-cook", 17, oven: "oven").Step("potatoes-cook", 60, oven: "oven");

        // From 190 at the most to 220 at the least is 30 degrees, 10 a minute.
        Assert.Equal(["potatoes-cook 60 oven 220 in 3", "served 100 rest 0"], Why(meal, plan, "roast-cook"));
        Assert.Equal((At(17), At(57)), (WhyHere.Of(meal, plan.Build(), new("roast-cook")).Start, WhyHere.Of(meal, plan.Build(), new("roast-cook")).End));
    }

    [Theory]
    [InlineData("ring", PlaceKind.Ring)]
    [InlineData("shelf", PlaceKind.Shelf)]
    [InlineData("grill", PlaceKind.Grill)]
    [InlineData("mixer", PlaceKind.Appliance)]
    public void What_it_stands_on_is_needed_for_something_else(string what, PlaceKind place)
    {
        StepBuilder On(StepBuilder step) => what switch
        {
            "ring" => step.Unattended().Rings(1),
            "shelf" => step.Unattended().Oven(1, 170, 190),
            "grill" => step.Unattended().Grill(),
            _ => step.Unattended().Appliance("mixer"),
        };
        var meal = Kitchen
            .Dish("soup", "main", dish => dish.Hold(HoldPlace.Covered, 90).Step("soup-make", 20, On))
            .Dish("greens", "main", dish => dish.Hold(HoldPlace.Table, 10).Step("greens-make", 30, On)).Build();
        var (oven, grill) = (what == "shelf" ? "oven" : null, what == "grill" ? "grill" : null);
        var plan = new PlanBuilder(meal).Step("soup-make", 40, oven: oven, grill: grill).Step("greens-make", 70, oven: oven, grill: grill);

        Assert.Equal([$"greens-make 70 {place}", "served 100 rest 0"], Why(meal, plan, "soup-make"));
    }

    [Fact]
    public void Its_hands_have_their_next_job()
    {
        var meal = Kitchen
            .Dish("salad", "main", dish => dish.Hold(HoldPlace.Side, 90).Step("wash", 10))
            .Dish("greens", "main", dish => dish.Hold(HoldPlace.Table, 10).Step("dress", 10)).Build();

        Assert.Equal(["dress 90 sam", "served 100 rest 0"], Why(meal, new PlanBuilder(meal).Step("wash", 70, "sam").Step("dress", 90, "sam"), "wash"));
    }

    [Fact]
    public void A_fixed_time_a_window_and_somebody_s_hours_hold_by_themselves()
    {
        var meal = Kitchen.Helper("ida", available: [(0, 50)])
            .Dish("a", "main", dish => dish.Hold(HoldPlace.Side, 90).Step("set", 10, step => step.StartsAt(30)))
            .Dish("b", "main", dish => dish.Hold(HoldPlace.Side, 90).Step("fetch", 10, step => step.Between(40, 60)))
            .Dish("c", "main", dish => dish.Hold(HoldPlace.Side, 90).Step("chop", 10)).Build();
        var plan = new PlanBuilder(meal).Step("set", 30, "sam").Step("fetch", 45, "sam").Step("chop", 20, "ida");

        Assert.Equal(["fixed 30"], Why(meal, plan, "set"));
        Assert.Equal(["window 60"], Why(meal, plan, "fetch"));
        Assert.Equal(["ida leave 50"], Why(meal, plan, "chop"));
    }

    [Fact]
    public void What_needs_somebody_nearby_ends_when_the_last_grown_up_goes()
    {
        var meal = new MealBuilder().Course("main", 100).Helper("ida", available: [(0, 50)])
            .Dish("stew", "main", dish => dish.Hold(HoldPlace.Covered, 90).Step("simmer", 20, step => step.Nearby())).Build();

        Assert.Equal(["grown-ups leave 50"], Why(meal, new PlanBuilder(meal).Step("simmer", 20), "simmer"));
    }

    [Fact]
    public void What_may_not_wait_is_held_by_what_comes_before_it()
    {
        var meal = Kitchen.Helper("ida", available: [(0, 50)])
            .Dish("fish", "main", dish => dish.Hold(HoldPlace.Covered, 90).Step("bone", 10).Step("fry", 10, step => step.After("bone", most: 15).Unattended())).Build();

        Assert.Equal(["within 15 of bone 50", "ida leave 50"], Why(meal, new PlanBuilder(meal).Step("bone", 20, "ida").Step("fry", 35), "fry"));
    }

    [Fact]
    public void A_dish_has_to_be_in_its_warm_oven()
    {
        var warm = new WarmOven(new(80, 90, 100), 1, StandFirst: 0);
        var meal = Kitchen
            .Dish("pie", "main", dish => dish.Hold(HoldPlace.WarmOven, 90, warm: warm).Step("bake", 20, step => step.Unattended()))
            .Dish("tart", "main", dish => dish.Hold(HoldPlace.Table, 10).Step("grate", 10)).Build();
        var plan = new PlanBuilder(meal).Step("bake", 50).Warm("pie", 0, 70, "oven").Step("grate", 90, "sam");

        Assert.Equal("served 100 rest 0", Why(meal, plan, "bake")[^1]);
    }

    [Fact]
    public void Of_every_plan_every_chain_ends_at_what_holds_by_itself() => Gen.Int[0, int.MaxValue - 1].Sample(
        seed =>
        {
            var one = new RandomPlan(seed);
            var slack = Slack.Of(one.Meal, one.Plan);
            foreach (var step in one.Plan.Steps)
            {
                var why = WhyHere.Of(one.Meal, one.Plan, step.Step);
                Assert.Equal(slack[step.Step], Math.Max(0, why.Start - step.Start));
                Assert.NotEmpty(why.Chain);
                Assert.True(why.Chain[^1].IsEnd, string.Join("; ", why.Chain.Select(Short)));
                Assert.All(why.Chain.SkipLast(1), because => Assert.False(because.IsEnd));
            }
        },
        iter: 300);
}
