using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Planner.Quick;
using static CookAlong.Planner.Tests.Cooking;

namespace CookAlong.Planner.Tests;

public sealed class CpSatPlannerTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public void The_same_seed_one_worker_and_a_deterministic_limit_give_the_same_plan()
    {
        var request = new PlanRequest(BigDinner(), new PlanLimits(TimeSpan.FromMinutes(2), Workers: 1, Seed: 7, Deterministic: 0.4));

        var one = new CpSatPlanner().Plan(request, null, Stop);
        var other = new CpSatPlanner().Plan(request, null, Stop);

        Assert.NotEqual(PlanStatus.None, one.Status);
        Assert.Equal(one.Steps.Select(step => (step.Step, step.Start, step.Option, string.Join(',', step.Helpers))), other.Steps.Select(step => (step.Step, step.Start, step.Option, string.Join(',', step.Helpers))));
        Assert.Equal(one.Cost, other.Cost);
    }

    [Fact]
    public void Stopping_returns_the_best_so_far()
    {
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(Stop);
        var seen = new Seen(_ => stop.Cancel());
        var meal = BigDinner();

        var plan = new CpSatPlanner().Plan(new PlanRequest(meal, new PlanLimits(TimeSpan.FromMinutes(5))), seen, stop.Token);

        Assert.NotEqual(PlanStatus.None, plan.Status);
        Assert.Empty(PlanCheck.Check(meal, plan));
    }

    [Fact]
    public void Stopped_before_it_began_there_is_no_plan()
    {
        var plan = new CpSatPlanner().Plan(new PlanRequest(CommonPracticeTests.RoastDinner(), new PlanLimits(TimeSpan.FromMinutes(5))), null, new CancellationToken(canceled: true));

        Assert.Equal(PlanStatus.None, plan.Status);
    }

    [Fact]
    public void A_search_too_short_for_any_plan_goes_on_to_its_first()
    {
        var meal = SeedMealsTests.Meal("midwinter-lunch.json");

        var plan = new CpSatPlanner().Plan(new PlanRequest(meal, new PlanLimits(TimeSpan.FromMilliseconds(1))), null, Stop);

        Assert.NotEqual(PlanStatus.None, plan.Status);
        Assert.Empty(PlanCheck.Check(meal, plan));
    }

    [Fact]
    public void Each_better_plan_is_told_as_it_is_found()
    {
        var told = new List<PlanProgress>();

        var plan = new CpSatPlanner().Plan(
            new PlanRequest(CommonPracticeTests.RoastDinner(), new PlanLimits(TimeSpan.FromSeconds(20))), new Seen(told.Add), Stop);

        Assert.NotEmpty(told);
        Assert.Equal(told.Select(one => one.Objective).OrderDescending(), told.Select(one => one.Objective));
        Assert.True(told[^1].Objective >= plan.Cost.Objective);
    }

    /// <summary>Somebody waits: a plan to look at is there with the first answer, whole and checked, while a better one is looked for.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void The_first_plan_is_told_whole(bool isQuick)
    {
        var told = new List<PlanProgress>();
        var meal = SeedMealsTests.Meal("midwinter-lunch.json");
        IMealPlanner planner = isQuick ? new QuickPlanner() : new CpSatPlanner();

        var last = planner.Plan(new PlanRequest(meal, new PlanLimits(TimeSpan.FromSeconds(1))), new Seen(told.Add), Stop);

        var first = told.First(one => one.Plan is not null).Plan!;
        Assert.InRange(told.FindIndex(one => one.Plan is not null), 0, 1);
        Assert.Empty(PlanCheck.Check(Nights.Observed(meal), first));
        Assert.Equal(0, first.Cost.LateMinutes);
        Assert.True(last.Cost.Objective <= first.Cost.Objective);
    }

    [Fact]
    public void What_a_listener_throws_comes_out_of_the_planner()
    {
        var listener = new Seen(_ => throw new InvalidTimeZoneException("the listener"));

        var thrown = Assert.Throws<InvalidTimeZoneException>(() => new CpSatPlanner().Plan(
            new PlanRequest(CommonPracticeTests.RoastDinner(), new PlanLimits(TimeSpan.FromSeconds(20))), listener, Stop));

        Assert.Equal("the listener", thrown.Message);
    }

    [Fact]
    public void Without_a_first_minute_three_hours_are_tried_and_then_more()
    {
        var braise = Dish("braise", OnTheSide(15), Hands("braise-brown", 20), Alone("braise-cook", 200, OnRings()));

        var shortOne = Plan(Meal(null, Kitchen(), [Cook("cook")], Dish("soup", OnTheSide(15), Hands("soup-boil", 20))));
        var longOne = Plan(Meal(null, Kitchen(), [Cook("cook")], braise));

        Assert.Equal(Table - 180, shortOne.NotBefore);
        Assert.Equal(Table - 360, longOne.NotBefore);
        Assert.Equal(0, longOne.Cost.LateMinutes);
    }

    [Fact]
    public void Nothing_starts_before_now()
    {
        var meal = Meal(240, Kitchen(), [Cook("cook")], Dish("soup", OnTheSide(15), Hands("soup-boil", 50)));

        var plan = new CpSatPlanner().Plan(new PlanRequest(meal, new PlanLimits(TimeSpan.FromSeconds(5)), Now: Table - 30), null, Stop);

        Assert.Equal(Table - 30, plan.Steps[0].Start);
        Assert.Equal(20, plan.Cost.LateMinutes);
    }

    [Fact]
    public void A_day_too_full_for_one_cook_is_served_late_and_says_what_would_help()
    {
        var meal = Meal(60, Kitchen(), [Cook("cook")], Dish("pie", OnTheSide(60, 60), Hands("pie-make", 50)), Dish("stew", OnTheSide(60, 60), Hands("stew-make", 40)));

        var plan = Plan(meal);

        Assert.Equal((PlanStatus.Optimal, 30), (plan.Status, plan.Cost.LateMinutes));
        Assert.Contains(new Conflict(new PlanChange.ServeLater(Main, 30), 30), plan.Conflicts);
        Assert.Contains(new Conflict(new PlanChange.StartEarlier(30), 30), plan.Conflicts);
        Assert.Contains(plan.Conflicts, conflict => conflict is { Change: PlanChange.AddHelper, GainMinutes: 30 });
        Assert.DoesNotContain(plan.Conflicts, conflict => conflict.Change is PlanChange.AddOven or PlanChange.AddRings);
    }

    [Fact]
    public void Two_hot_dishes_that_only_one_oven_cannot_serve_together_ask_for_another()
    {
        var meal = Meal(
            120, Kitchen(ovens: 1, shelves: 1), [Cook("cook")],
            Dish("pie", OnTheSide(5), Alone("pie-bake", 30, InOven(190, 210))),
            Dish("tart", OnTheSide(5), Alone("tart-bake", 30, InOven(140, 160))));

        var plan = Plan(meal);

        Assert.Equal(PlanStatus.None, plan.Status);
        Assert.Contains(plan.Conflicts, conflict => conflict is { Change: PlanChange.AddOven, GainMinutes: null });
        Assert.Contains(plan.Conflicts, conflict => conflict is { Change: PlanChange.WaitLonger, GainMinutes: null } || conflict.Change is PlanChange.AddOven);
    }

    [Fact]
    public void What_a_kitchen_can_never_do_has_no_plan_and_is_no_failure()
    {
        var tooHot = Meal(120, Kitchen(), [Cook("cook")], Dish("pizza", OnTheSide(5), Alone("pizza-bake", 5, InOven(400, 450))));
        var nobodyCan = Meal(120, Kitchen(), [Cook("cook") with { Can = ["hot"] }], Dish("salad", OnTheSide(5), Hands("salad-cut", 5) with { Needs = ["knife"] }));
        var noSuchThing = Meal(120, Kitchen(), [Cook("cook")], Dish("shake", OnTheSide(5), Alone("shake-mix", 5, With("blender"))));
        var nobodyAtAll = Meal(120, Kitchen(), [], Dish("egg", OnTheSide(5), Nearby("egg-boil", 5, OnRings())));

        Assert.All([tooHot, nobodyCan, noSuchThing, nobodyAtAll], meal => Assert.Equal(PlanStatus.None, Plan(meal, effort: 2).Status));
    }

    [Fact]
    public void Another_pair_of_hands_never_makes_the_proven_best_worse()
    {
        var alone = CommonPracticeTests.RoastDinner();
        var together = alone with { Helpers = alone.Helpers.Add(Cook("friend")) };

        var (one, two) = (Plan(alone), Plan(together));

        Assert.Equal((PlanStatus.Optimal, PlanStatus.Optimal), (one.Status, two.Status));
        Assert.True(two.Cost.Objective <= one.Cost.Objective);
    }

    [Fact]
    public void Late_without_proof_that_it_must_be_nobody_knows_how_far_it_is_from_the_best()
    {
        var late = Plan(Meal(60, Kitchen(), [Cook("cook")], Dish("pie", OnTheSide(60, 60), Hands("pie-make", 90))));

        var told = CpSatPlanner.NotProvenLate(late);

        Assert.Equal((PlanStatus.Feasible, 1.0, 30), (told.Status, told.Gap, told.Cost.LateMinutes));
        Assert.Equal(late.Steps, told.Steps);
    }

    /// <summary>Four roast dinners' worth of dishes for three pairs of hands: too much to prove in a moment.</summary>
    private static Meal BigDinner()
    {
        var dishes = Enumerable.Range(1, 12).Select(number => Dish(
            $"dish-{number}", OnTheSide(30, bestWithin: number % 4),
            Hands($"peel-{number}", 5 + number),
            Hands($"cut-{number}", 4 + (number % 5)),
            Alone($"cook-{number}", 20 + (number * 3 % 17), number % 3 == 0 ? OnRings() : InOven(150 + (number % 4 * 10), 170 + (number % 4 * 10))),
            Hands($"dress-{number}", 3)));
        return Meal(300, Kitchen(ovens: 1, shelves: 3, rings: 2), [Cook("a"), Cook("b"), Cook("c")], [.. dishes]);
    }

    private sealed class Seen(Action<PlanProgress> see) : IProgress<PlanProgress>
    {
        public void Report(PlanProgress value) => see(value);
    }
}
