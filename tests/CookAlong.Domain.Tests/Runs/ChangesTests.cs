using CookAlong.Domain.Planning;
using CookAlong.Domain.Runs;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Domain.Tests.Runs;

/// <summary>What upsets a plan while it is cooked.</summary>
public sealed class ChangesTests
{
    static readonly DishId Beans = new("beans");
    static readonly PlanLimits Limits = new(TimeSpan.FromSeconds(1));

    static KitchenStory Begun => KitchenStory.Begun();

    [Fact]
    public void Only_the_host_says_who_goes() =>
        Begun.When(IvoPhone, new RunCommand.HelperLeaves(Ivo, 0)).Refused(new Refusal.NotYourRole(Role.Host));

    [Fact]
    public void Whoever_goes_is_there_until_then()
    {
        var kitchen = Begun.At(14).When(Host, new RunCommand.HelperLeaves(Ivo, 25)).Then(new RunEvent.HelperLeft(Ivo, At(14, 25)));
        var ivo = kitchen.Run.Helpers.Single(helper => helper.Id == Ivo);
        Assert.True(ivo.IsHere(At(14, 10), At(14, 25)));
        Assert.False(ivo.IsHere(At(14, 25), At(14, 26)));
        Assert.Equal(ivo, kitchen.Run.Replan(Limits, Clock(14)).Meal.Helpers.Single(helper => helper.Id == Ivo));
    }

    [Fact]
    public void The_last_word_on_going_counts()
    {
        var run = Begun.At(14).When(Host, new RunCommand.HelperLeaves(Ivo, 0)).When(Host, new RunCommand.HelperLeaves(Ivo, 600)).Run;
        Assert.True(run.Helpers.Single(helper => helper.Id == Ivo).IsHere(At(14), At(16)));
    }

    [Fact]
    public void Hands_that_went_before_they_came_are_never_there()
    {
        var run = Begun.When(Host, new RunCommand.HelperLeaves(Ivo, 0)).Run;
        Assert.False(run.Helpers.Single(helper => helper.Id == Ivo).IsHere(At(14), At(14, 10)));
    }

    [Fact]
    public void Work_of_somebody_who_will_have_gone_is_free()
    {
        var run = Begun.At(14).When(Host, new RunCommand.HelperLeaves(Ivo, 0)).Run;
        Assert.True(run.IsFree(run.Meal.Step(Trim)));
    }

    [Fact]
    public void Nobody_leaves_whom_nobody_knows() =>
        Begun.When(Host, new RunCommand.HelperLeaves(new HelperId("otto"), 0)).Refused(new Refusal.UnknownHelper(new HelperId("otto")));

    [Fact]
    public void A_dish_that_is_left_out_is_in_neither_meal_nor_plan()
    {
        var kitchen = Begun.When(Host, new RunCommand.DropDish(Beans)).Then(new RunEvent.DishDropped(Beans));
        Assert.DoesNotContain(kitchen.Run.Meal.Steps, step => step.Id == Trim);
        Assert.DoesNotContain(kitchen.Run.Plan.Steps, step => step.Step == Trim);
        Assert.DoesNotContain(kitchen.Run.Plan.Holds, hold => hold.Dish == Beans);
        Assert.DoesNotContain(kitchen.Board().Next, card => card.Step.Id == Trim);
        kitchen.When(Host, new RunCommand.StartStep(Trim)).Refused(new Refusal.UnknownStep(Trim));
    }

    [Fact]
    public void A_dish_is_left_out_even_while_it_cooks()
    {
        var kitchen = Begun.Finished(Stuff).Given(new RunEvent.StepStarted(Roast)).When(Host, new RunCommand.DropDish(new DishId("goose")));
        Assert.Empty(kitchen.Board().Now);
        Assert.DoesNotContain(kitchen.Calls(), call => call.Step == Roast);
    }

    [Fact]
    public void The_only_dish_is_not_left_out() =>
        Begun.When(Host, new RunCommand.DropDish(Beans)).When(Host, new RunCommand.DropDish(new DishId("goose")))
            .When(Host, new RunCommand.DropDish(new DishId("dumplings"))).Refused(new Refusal.OnlyDish(new DishId("dumplings")));

    [Fact]
    public void A_later_table_is_the_new_promise()
    {
        var kitchen = Begun.When(Host, new RunCommand.MoveTable(Main, 20)).Then(new RunEvent.TableMoved(Main, At(15, 20)));
        var course = Assert.Single(kitchen.Board().Courses);
        Assert.Equal((At(15, 20), At(15, 20)), (course.Promised, course.Expected));
        Assert.Null(kitchen.Board().Slip);
    }

    [Fact]
    public void A_sooner_table_is_the_new_promise_which_the_old_plan_does_not_keep()
    {
        var kitchen = Begun.When(Host, new RunCommand.MoveTable(Main, -30));
        var course = Assert.Single(kitchen.Board().Courses);
        Assert.Equal((At(14, 30), At(15)), (course.Promised, course.Expected));
        Assert.Equal(At(14, 30), kitchen.Run.Replan(Limits, Clock(12, 20)).Meal.Courses[0].TableTime);
    }

    [Fact]
    public void A_table_is_not_moved_into_the_past() =>
        Begun.At(14, 50).When(Host, new RunCommand.MoveTable(Main, -15)).Refused(new Refusal.TableTimePast(Main));

    [Fact]
    public void A_slow_oven_keeps_the_roast_waiting_and_is_colder_than_planned()
    {
        var kitchen = Begun.At(12, 30).Finished(Stuff).When(Host, new RunCommand.OvenStillHeats(Oven, 20)).Then(new RunEvent.OvenBehind(Oven, At(12, 50), 180));
        Assert.Equal(At(12, 50), Minute.Of(kitchen.Board().Next.First(card => card.Step.Id == Roast && card.Tend is null).Starts));
        // It heats 12 °C a minute.
        Assert.Equal(20, kitchen.Run.Replan(Limits, Clock(12, 30)).So!.OvensNow[Oven]);
        Assert.Equal(180 - (5 * 12), kitchen.Run.Replan(Limits, Clock(12, 45)).So!.OvensNow[Oven]);
    }

    [Fact]
    public void What_upsets_the_plan_asks_for_a_new_one_until_it_is_taken()
    {
        var kitchen = Begun.When(Host, new RunCommand.MoveTable(Main, 20));
        Assert.Equal(new PlanWish(kitchen.Run.Sequence, IsEarly: false), kitchen.Run.Wish);
        Assert.Null(kitchen.When(Host, new RunCommand.AcceptPlan(kitchen.Run.Plan, kitchen.Run.Sequence)).Run.Wish);
    }

    [Fact]
    public void Ready_early_is_a_reason_to_look_for_a_plan_that_serves_sooner()
    {
        Assert.True(Begun.At(12, 30).Finished(Stuff).Run.Wish!.IsEarly);
        Assert.Null(Begun.At(12, 38).Finished(Stuff).Run.Wish);
    }
}
