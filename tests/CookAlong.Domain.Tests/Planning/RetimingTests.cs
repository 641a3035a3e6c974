using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using static CookAlong.Domain.Tests.MealBuilder;

namespace CookAlong.Domain.Tests.Planning;

/// <summary>A roast at 180, a tart at 220 after it, greens at the last minute, one pair of hands, one oven, one ring.</summary>
public sealed class RetimingTests
{
    static readonly Meal Lunch = new MealBuilder()
        .Course("main", 180).Oven("oven", shelves: 2, heatUp: 10, coolDown: 5).Rings(1)
        .Helper("sam").Helper("ida", available: [(60, 150), (170, 400)])
        .Dish("roast", "main", dish => dish
            .Hold(HoldPlace.Covered, limit: 120, least: 20)
            .Step("roast-cook", 90, step => step.Unattended().Oven(2, 170, 190).Every(45)))
        .Dish("tart", "main", dish => dish
            .Hold(HoldPlace.Side, limit: 60)
            .Step("tart-roll", 15)
            .Step("tart-bake", 30, step => step.After("tart-roll", most: 60).Unattended().Oven(1, 215, 225)))
        .Dish("soup", "main", dish => dish
            .Hold(HoldPlace.Covered, limit: 90)
            .Step("soup-boil", 20, step => step.Unattended().Rings(1)))
        .Dish("greens", "main", dish => dish
            .Hold(HoldPlace.Table, limit: 10)
            .Step("green-boil", 10, step => step.Unattended().Rings(1))
            .Step("green-dress", 5))
        .Build();

    static readonly Plan Planned = new PlanBuilder(Lunch)
        .Step("roast-cook", 20, oven: "oven", tendedBy: "sam")
        .Step("tart-roll", 80, "sam")
        .Step("tart-bake", 120, oven: "oven")
        .Step("soup-boil", 130)
        .Step("green-boil", 160)
        .Step("green-dress", 172, "sam")
        .Programme("oven", (0, 20), (20, 180), (110, 180), (120, 220))
        .Build();

    [Fact]
    public void The_plan_itself_holds() => Assert.All(PlanCheck.Check(Lunch, Planned), breach => Assert.Fail(breach.ToString()));

    [Fact]
    public void The_next_tray_waits_for_the_late_one_and_for_the_oven_to_heat()
    {
        // Out at 125 instead of 110; from 190 at the most to 215 at the least is 25 degrees, 10 a minute: 3 minutes.
        var retimed = Retiming.MoveRight(Lunch, Planned, [Running("roast-cook", 20, 125)], At(100));

        Assert.Equal(At(128), retimed.Steps[new("tart-bake")].Start);
        Assert.Equal(At(180), retimed.TableTimes[new("main")]);
    }

    [Theory]
    [InlineData(100, 100)] // Ada was to go at 50, and stays on until 110 to fill the pie.
    [InlineData(101, 200)] // Later than that it waits until she is back.
    public void Whoever_was_to_go_stays_on_an_hour_for_work_that_is_late(int rolled, int filling)
    {
        var meal = new MealBuilder().Helper("ada", available: [(0, 50), (200, 400)]).Course("main", 400)
            .Dish("pie", "main", dish => dish.Hold(HoldPlace.Side, 400).Step("roll", 40).Step("fill", 10)).Build();
        var plan = new PlanBuilder(meal).Step("roll", 0, "ada").Step("fill", 40, "ada").Build();

        var retimed = Retiming.MoveRight(meal, plan, [new(new("roll"), Zero, At(rolled), IsFinished: true, [])], Zero);

        Assert.Equal(At(filling), retimed.Steps[new("fill")].Start);
    }

    [Fact]
    public void A_step_over_its_time_ends_now_at_the_earliest() =>
        Assert.Equal(At(117), Retiming.MoveRight(Lunch, Planned, [Running("roast-cook", 20, 110)], At(117)).Steps[new("roast-cook")].End);

    [Fact]
    public void One_ring_is_passed_on_in_the_order_of_the_plan() =>
        Assert.Equal(At(175), Retiming.MoveRight(Lunch, Planned, [Running("soup-boil", 130, 175)], At(140)).Steps[new("green-boil")].Start);

    [Fact]
    public void What_should_not_wait_is_held_back_when_the_table_is_late()
    {
        // The roast must rest 20 minutes: table at 230. The greens keep 10 at the table.
        var retimed = Retiming.MoveRight(Lunch, Planned, [Running("roast-cook", 20, 210)], At(100));

        // The tart waits for the oven until 213 and is done at 243.
        Assert.Equal(At(243), retimed.TableTimes[new("main")]);
        Assert.Equal(At(243 - 10), retimed.Steps[new("green-dress")].End);
        // Nobody asked the first pan to wait: only what must stay near what comes after it does.
        Assert.Equal(At(160), retimed.Steps[new("green-boil")].Start);
        Assert.Equal(At(213 - 60), retimed.Steps[new("tart-roll")].End);
    }

    [Fact]
    public void What_has_begun_cannot_be_held_back_and_the_times_are_told_all_the_same()
    {
        var retimed = Retiming.MoveRight(Lunch, Planned,
            [Running("roast-cook", 20, 210), Finished("green-boil", 100, 110), Finished("green-dress", 110, 115)], At(120));

        Assert.Equal(At(243), retimed.TableTimes[new("main")]);
        Assert.Equal((At(110), At(115)), retimed.Steps[new("green-dress")]);
    }

    [Fact]
    public void A_late_table_leaves_no_slack_and_no_breathing_room()
    {
        var retimed = Retiming.MoveRight(Lunch, Planned, [Running("roast-cook", 20, 210)], At(100));

        Assert.Equal(0, retimed.BreathingRoom);
        Assert.Equal(0, retimed.Slack[new("roast-cook")]);
        Assert.Equal(0, retimed.Slack[new("tart-bake")]);
    }

    [Fact]
    public void Slack_counts_rest_oven_ring_and_hands()
    {
        var slack = Slack.Of(Lunch, Planned);

        // The tart may come out at 180; the roast must leave the oven 3 minutes before it goes in at 150, and rest 20.
        Assert.Equal(30, slack[new("tart-bake")]);
        Assert.Equal(147 - 110, slack[new("roast-cook")]);
        // Greens: on the ring by 165 to be dressed by 180; the soup must be off it by then.
        Assert.Equal(5, slack[new("green-boil")]);
        Assert.Equal(165 - 150, slack[new("soup-boil")]);
        Assert.Equal(3, slack[new("green-dress")]);
    }

    [Fact]
    public void Slack_of_a_late_plan_is_measured_to_its_own_table_time()
    {
        var late = new PlanBuilder(Lunch).Table("main", 190)
            .Step("roast-cook", 20, oven: "oven", tendedBy: "sam").Step("tart-roll", 80, "sam").Step("tart-bake", 120, oven: "oven")
            .Step("soup-boil", 130).Step("green-boil", 160).Step("green-dress", 180, "sam").Build();

        Assert.Equal(5, Slack.Of(Lunch, late)[new("green-dress")]);
        Assert.Equal(0, Retiming.MoveRight(Lunch, late, [], Zero).Slack[new("green-dress")]);
    }

    [Theory]
    [InlineData(135, 135)]
    [InlineData(195, 195)] // an hour over: done at 210
    [InlineData(196, 300)]
    public void A_late_job_keeps_its_helper_for_an_hour_and_then_waits_until_she_is_back(int now, int start)
    {
        var meal = Lunch with { Helpers = [Lunch.Helpers[0], Lunch.Helpers[1] with { Available = [new(At(60), At(150)), new(At(300), At(400))] }] };
        var plan = Planned with { Steps = [.. Planned.Steps.Select(step => step.Step.Value == "tart-roll" ? step with { Helpers = [new("ida")] } : step)] };

        Assert.Equal(At(start), Retiming.MoveRight(meal, plan, [Finished("roast-cook", 20, 110)], At(now)).Steps[new("tart-roll")].Start);
    }

    [Fact]
    public void Slack_ends_where_its_helper_goes_home()
    {
        var meal = Lunch with { Helpers = [Lunch.Helpers[0], Lunch.Helpers[1] with { Available = [new(At(60), At(100)), new(At(105), At(400))] }] };
        var plan = Planned with { Steps = [.. Planned.Steps.Select(step => step.Step.Value == "tart-roll" ? step with { Helpers = [new("ida")] } : step)] };

        Assert.Equal(100 - 95, Slack.Of(meal, plan)[new("tart-roll")]);
    }

    [Fact]
    public void A_tend_goes_with_its_step_and_is_gone_when_done()
    {
        var late = Running("roast-cook", 30, 120);

        Assert.Equal(At(30 + 45 - 3), Retiming.MoveRight(Lunch, Planned, [late], At(40)).Tends[(new("roast-cook"), 0, 0)]);
        Assert.Empty(Retiming.MoveRight(Lunch, Planned, [late with { TendsDone = [(0, 0)] }], At(80)).Tends);
    }

    [Fact]
    public void A_tend_nobody_ticked_off_keeps_nobody_from_the_next_job()
    {
        // Due at 65, give 3: at 80 it is over, and the tart begins on time.
        var retimed = Retiming.MoveRight(Lunch, Planned, [Running("roast-cook", 20, 110)], At(80));

        Assert.Equal(At(80), retimed.Steps[new("tart-roll")].Start);
        Assert.Empty(retimed.Tends);
    }

    [Fact]
    public void A_dish_goes_into_the_warm_oven_when_that_has_cooled()
    {
        var meal = new MealBuilder().Course("main", 180).Oven("oven", heatUp: 10, coolDown: 5).Helper("sam")
            .Dish("roast", "main", dish => dish.Hold(HoldPlace.Side, limit: 180).Step("roast-cook", 60, step => step.Unattended().Oven(1, 180, 200)))
            .Dish("rice", "main", dish => dish
                .Hold(HoldPlace.WarmOven, limit: 120, warm: new(new(70, 80, 90), 1, StandFirst: 60))
                .Step("rice-boil", 20, step => step.Unattended().Rings(1)))
            .Build();
        var plan = new PlanBuilder(meal).Step("roast-cook", 20, oven: "oven").Step("rice-boil", 70).Warm("rice", 0, 100, "oven").Build();

        // From 180 at the least to 90 at the most is 18 minutes: the roast may stay until 162, and the rice then goes in as the table is laid.
        Assert.Equal(162 - 80, Slack.Of(meal, plan)[new("roast-cook")]);
        Assert.Equal(At(183), Retiming.MoveRight(meal, plan, [Running("roast-cook", 20, 165)], At(100)).TableTimes[new("main")]);
    }

    [Fact]
    public void Hands_that_joined_after_the_meal_was_planned_are_no_trouble()
    {
        var plan = Planned with { Steps = [.. Planned.Steps.Select(step => step.Step.Value == "tart-roll" ? step with { Helpers = [new("neighbour")] } : step)] };

        Assert.Equal(At(80), Retiming.MoveRight(Lunch, plan, [], Zero).Steps[new("tart-roll")].Start);
    }

    static StepFact Running(string step, int start, int end) => new(new(step), At(start), At(end), IsFinished: false, []);

    static StepFact Finished(string step, int start, int end) => new(new(step), At(start), At(end), IsFinished: true, []);
}
