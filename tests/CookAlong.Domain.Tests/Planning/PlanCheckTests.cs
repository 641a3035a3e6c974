using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using static CookAlong.Domain.Tests.MealBuilder;

namespace CookAlong.Domain.Tests.Planning;

/// <summary>One plan that keeps every rule, and for each rule the smallest changes that break it and no other.</summary>
public sealed partial class PlanCheckTests
{
    static readonly Meal Lunch = new MealBuilder()
        .Course("main", 180).Course("pudding", 240)
        .Oven("oven", shelves: 3, min: 50, max: 250, heatUp: 10, coolDown: 5).Oven("small", shelves: 1)
        .Grill("grill", insideOven: "small").Rings(2).Appliance("mixer").Appliance("scale")
        .Helper("sam").Helper("ida", available: (60, 260)).Helper("kit", child: true, can: ["whisk"])
        .Dish("roast", "main", dish => dish
            .Hold(HoldPlace.Covered, limit: 60, least: 10)
            .Step("roast-prepare", 20, step => step.Needs("hot").By("sam"))
            .Step("roast-cook", 90, step => step.Unattended().Oven(2, 170, 190).Every(30)))
        .Dish("potatoes", "main", dish => dish
            .Hold(HoldPlace.Table, limit: 10)
            .Hold(HoldPlace.WarmOven, limit: 60, warm: new(new(70, 85, 100), 1, StandFirst: 20))
            .Step("potato-wash", 20, step => step.ChildSafe().Option(15))
            .Step("potato-boil", 15, step => step.After("potato-wash", least: 5, most: 30).Nearby().Rings(1))
            .Step("potato-roast", 40, step => step.After("potato-boil", most: 10).Unattended().Oven(1, 170, 200, "oven")))
        .Dish("greens", "main", dish => dish
            .Step("green-trim", 10, step => step.Between(100, 160))
            .Step("green-boil", 10, step => step.Nearby().Rings(2)))
        .Dish("toast", "main", dish => dish
            .Step("toast-grill", 5, step => step.Grill()))
        .Dish("cream", "pudding", dish => dish
            .Hold(HoldPlace.Fridge, limit: 60)
            .Step("cream-whip", 10, step => step.StartsAt(200).People(2).ChildSafe().Needs("whisk").Appliance("mixer"))
            .Step("cream-chill", 20, step => step.Unattended().Choice(0).Option(20, Attention.Unattended)))
        .Build();

    static readonly Plan Kept = new PlanBuilder(Lunch)
        .Step("roast-prepare", 0, "sam")
        .Step("roast-cook", 30, oven: "oven", tendedBy: "sam")
        .Step("potato-wash", 40, "kit")
        .Step("potato-boil", 70)
        .Step("potato-roast", 90, oven: "oven")
        .Step("green-trim", 140, "ida")
        .Step("green-boil", 160)
        .Step("toast-grill", 170, "sam", grill: "grill")
        .Step("cream-whip", 200, "ida,kit")
        .Step("cream-chill", 215, option: 0)
        .Warm("potatoes", 1, 150, "oven")
        .Programme("oven", (14, 20), (30, 180), (130, 180), (150, 80))
        .Build();

    public static TheoryData<RuleId, string> Every => [.. Changes.Select(change => (change.Broken, change.What))];

    [Fact]
    public void A_plan_that_keeps_every_rule_has_no_breach() => Assert.Empty(PlanCheck.Check(Lunch, Kept));

    [Theory]
    [MemberData(nameof(Every))]
    public void The_smallest_change_breaks_its_rule_and_no_other(RuleId broken, string what)
    {
        var (meal, plan) = Changes.Single(change => change.Broken == broken && change.What == what).Make(Lunch, Kept);

        var rules = PlanCheck.Check(meal, plan).Select(breach => breach.Rule).Distinct();

        Assert.Equal([broken], rules);
    }

    [Fact]
    public void Every_rule_is_broken_by_some_change() =>
        Assert.Equal(Enum.GetValues<RuleId>(), Changes.Select(change => change.Broken).Distinct().Order());

    [Fact]
    public void Every_rule_has_one_check_and_one_sentence()
    {
        Assert.Equal(Enum.GetValues<RuleId>(), PlanRules.All.Select(rule => rule.Id).Order());
        Assert.Equal(Enum.GetValues<RuleId>(), PlanCheck.Checked.Order());
        Assert.All(PlanRules.All, rule => Assert.EndsWith(".", rule.Sentence, StringComparison.Ordinal));
        Assert.Distinct(PlanRules.All.Select(rule => rule.Sentence));
    }

    [Fact]
    public void A_plan_of_nothing_at_all_is_breaches_and_no_exception()
    {
        var nothing = new Plan(PlanStatus.None, 1, 0, Zero, default, default, default, default, default, new(0, 0, 0, 0, 0), null, default);

        Assert.Contains(PlanCheck.Check(Lunch, nothing), breach => breach.Rule == RuleId.EveryStepOnce);
    }

    [Fact]
    public void Adults_may_hand_over_while_a_step_wants_somebody_nearby()
    {
        var (meal, plan) = Both(
            Helper("sam", helper => helper with { Available = [new(At(0), At(165)), new(At(170), At(300))] }),
            Helper("ida", helper => helper with { Available = [new(At(60), At(260))] }))(Lunch, Kept);

        Assert.Empty(PlanCheck.Check(meal, plan));
    }

    [Fact]
    public void What_goes_in_to_be_kept_warm_just_as_it_is_served_has_never_kept_a_grill_from_its_oven()
    {
        var grillInOven = Kitchen(kitchen => kitchen with { Grills = [new(new("grill"), new("oven"))] });
        (Meal, Plan) InFrom(int minute) => Both(grillInOven, Hold("potatoes", hold => hold with { From = At(minute), To = At(172) }))(Lunch, Kept);
        bool Clashes((Meal Meal, Plan Plan) changed) => PlanCheck.Check(changed.Meal, changed.Plan).Any(breach => breach.Rule == RuleId.Grills);

        Assert.True(Clashes(InFrom(171)));
        Assert.False(Clashes(InFrom(172)));
    }

    [Fact]
    public void A_breach_says_where_when_and_how_far_off()
    {
        var (meal, plan) = Programme((14, 20), (30, 180), (130, 180), (150, 101))(Lunch, Kept);

        var breach = Assert.Single(PlanCheck.Check(meal, plan));

        Assert.Equal(new Breach(RuleId.OvenTemperature, Dish: new("potatoes"), Oven: new("oven"), At: At(150), Found: 101, Allowed: 100), breach);
    }
}
