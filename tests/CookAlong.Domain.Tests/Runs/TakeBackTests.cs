using CookAlong.Domain.Planning;
using CookAlong.Domain.Runs;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Domain.Tests.Runs;

public sealed class TakeBackTests
{
    static readonly DishId Beans = new("beans"), Dumplings = new("dumplings");

    static KitchenStory Begun => KitchenStory.Begun();

    /// <summary>Trimming goes from Ivo to Maren.</summary>
    static readonly Plan Other = SmallMeal.Plan with
    {
        Steps = [.. SmallMeal.Plan.Steps.Select(step => step.Step == Trim ? step with { Helpers = [Maren], Start = At(14, 25), End = At(14, 35) } : step)],
    };

    static KitchenStory Roasting => Begun.At(12, 40).Finished(Stuff).Given(new RunEvent.StepStarted(Roast));

    static KitchenStory OtherTaken(KitchenStory story) => story.When(Host, new RunCommand.AcceptPlan(Other, story.Run.Sequence));

    [Fact]
    public void Minutes_that_were_added_are_taken_back()
    {
        var story = Begun.When(IvoPhone, new RunCommand.AddTime(Trim, 15)).When(IvoPhone, new RunCommand.TakeBackTime(Trim, 5)).Then(new RunEvent.TimeTakenBack(Trim, 5));
        Assert.Equal(20, story.Run.MinutesOf(Trim));
        story.When(IvoPhone, new RunCommand.TakeBackTime(Trim, 15)).Refused(new Refusal.NothingToTakeBack());
    }

    [Fact]
    public void Only_whoever_could_add_them_takes_minutes_back() =>
        Begun.When(Host, new RunCommand.AddTime(Roll, 5)).When(IvoPhone, new RunCommand.TakeBackTime(Roll, 5)).Refused(new Refusal.NotYours(Roll));

    [Fact]
    public void The_call_of_the_shorter_time_rings_again_though_it_was_answered()
    {
        var story = Roasting.At(14, 11)
            .When(IvoPhone, new RunCommand.Acknowledge(new("out:roast")))
            .When(IvoPhone, new RunCommand.AddTime(Roast, 10))
            .When(IvoPhone, new RunCommand.TakeBackTime(Roast, 10));
        var call = Assert.Single(story.Board().Calls, call => call.Kind == CallKind.Out && call.Step == Roast);
        Assert.Equal((new CallId("out:roast"), false, Clock(14, 10)), (call.Id, call.IsAcknowledged, call.Due));
    }

    [Fact]
    public void A_tend_that_was_not_done_after_all_is_called_again()
    {
        var story = Roasting.At(13, 12)
            .When(IvoPhone, new RunCommand.Acknowledge(new("tend:roast:0:0")))
            .When(IvoPhone, new RunCommand.FinishTend(Roast, 0, 0))
            .When(IvoPhone, new RunCommand.TakeBackTend(Roast, 0, 0)).Then(new RunEvent.TendTakenBack(Roast, 0, 0));
        Assert.Contains(story.Board().Calls, call => call.Id == new CallId("tend:roast:0:0") && !call.IsAcknowledged);
        story.When(IvoPhone, new RunCommand.TakeBackTend(Roast, 0, 0)).Refused(new Refusal.NothingToTakeBack());
    }

    [Fact]
    public void A_child_does_not_take_back_what_is_not_safe_for_children() =>
        Roasting.At(13, 12).When(IvoPhone, new RunCommand.FinishTend(Roast, 0, 0))
            .When(TobiPhone, new RunCommand.TakeBackTend(Roast, 0, 0)).Refused(new Refusal.NotForChildren(Roast));

    [Fact]
    public void An_answer_is_taken_back_and_the_call_rings_again()
    {
        var story = Begun.When(IvoPhone, new RunCommand.Acknowledge(new("begin:stuff")))
            .When(IvoPhone, new RunCommand.TakeBackAnswer(new("begin:stuff"))).Then(new RunEvent.CallTakenBack(new("begin:stuff")));
        Assert.Contains(story.Board().Calls, call => call.Id == new CallId("begin:stuff") && !call.IsAcknowledged);
        story.When(IvoPhone, new RunCommand.TakeBackAnswer(new("begin:stuff"))).Refused(new Refusal.NothingToTakeBack());
    }

    [Fact]
    public void The_answer_to_a_call_that_is_settled_stays() =>
        Begun.When(IvoPhone, new RunCommand.Acknowledge(new("begin:stuff"))).Finished(Stuff)
            .When(IvoPhone, new RunCommand.TakeBackAnswer(new("begin:stuff"))).Refused(new Refusal.UnknownCall(new("begin:stuff")));

    [Fact]
    public void A_plan_that_was_taken_gives_way_to_the_one_before()
    {
        var story = OtherTaken(Begun).When(Host, new RunCommand.TakeBackPlan());
        Assert.Equal([Ivo], story.Run.HoldersOf(Trim));
        Assert.Equal(At(14, 20), story.Run.Plan.Step(Trim).Start);
        var taken = story.Board().Taken!;
        Assert.True(taken.IsBack);
        Assert.Equal([Trim], taken.Changes.Select(change => change.Step));
        story.When(Host, new RunCommand.TakeBackPlan()).Refused(new Refusal.NoPlanBefore());
    }

    [Fact]
    public void What_has_begun_by_the_new_plan_stays_as_it_is()
    {
        var story = OtherTaken(Begun).At(14, 25).Given(new RunEvent.StepStarted(Trim)).When(Host, new RunCommand.TakeBackPlan());
        Assert.Equal([Maren], story.Run.HoldersOf(Trim));
        Assert.Equal(Clock(14, 35), story.Board().Now.Single(card => card.Step.Id == Trim).Ends);
    }

    [Fact]
    public void Work_that_was_taken_and_longer_before_the_plan_is_so_again()
    {
        var story = OtherTaken(Begun.Given(new RunEvent.StepGiven(Roll, Maren), new RunEvent.TimeAdded(Roll, 5))).When(Host, new RunCommand.TakeBackPlan());
        Assert.Equal([Maren], story.Run.HoldersOf(Roll));
        Assert.Equal(20, story.Run.MinutesOf(Roll));
    }

    [Fact]
    public void Only_the_host_takes_back_a_plan() =>
        OtherTaken(Begun).When(IvoPhone, new RunCommand.TakeBackPlan()).Refused(new Refusal.NotYourRole(Role.Host));

    [Fact]
    public void The_first_plan_is_not_taken_back() =>
        Begun.When(Host, new RunCommand.TakeBackPlan()).Refused(new Refusal.NoPlanBefore());

    [Fact]
    public void What_had_upset_the_plan_before_upsets_it_again()
    {
        var story = OtherTaken(Begun.When(Host, new RunCommand.HelperLeaves(Ivo, 0)));
        Assert.Null(story.Run.Wish);
        Assert.False(story.When(Host, new RunCommand.TakeBackPlan()).Run.Wish!.IsEarly);
        Assert.Null(story.When(Host, new RunCommand.HelperStays(Ivo)).Run.Wish);
    }

    [Fact]
    public void A_dish_left_out_comes_back_as_it_was()
    {
        var story = Begun.At(14).Given(new RunEvent.StepStarted(Roll)).When(Host, new RunCommand.DropDish(Dumplings)).When(Host, new RunCommand.BringBackDish(Dumplings));
        Assert.Equal(Meal.Steps.Select(step => step.Id), story.Run.Meal.Steps.Select(step => step.Id));
        Assert.Equal(CardState.Running, story.Board().Now.Single(card => card.Step.Id == Roll).State);
        Assert.Equal(SmallMeal.Plan.Step(Boil), story.Run.Plan.Step(Boil));
        Assert.Null(story.Run.Wish);
        story.When(Host, new RunCommand.BringBackDish(Dumplings)).Refused(new Refusal.NothingToTakeBack());
    }

    [Fact]
    public void A_dish_that_the_new_plan_does_not_know_comes_back_and_asks_for_another()
    {
        var without = SmallMeal.Plan with { Steps = [.. SmallMeal.Plan.Steps.Where(step => step.Step != Trim)], Holds = [.. SmallMeal.Plan.Holds.Where(hold => hold.Dish != Beans)] };
        var story = Begun.When(Host, new RunCommand.DropDish(Beans));
        story.When(Host, new RunCommand.AcceptPlan(without, story.Run.Sequence)).When(Host, new RunCommand.BringBackDish(Beans));
        Assert.Equal(At(14, 20), story.Run.Plan.Step(Trim).Start);
        Assert.NotNull(story.Run.Wish);

        // And the plan before it can come back as well.
        story.When(Host, new RunCommand.TakeBackPlan());
        Assert.Equal(At(14, 20), story.Run.Plan.Step(Trim).Start);
        Assert.Contains(story.Board().Next, card => card.Step.Id == Trim);
    }

    [Fact]
    public void Hands_that_stay_after_all_have_their_work_again()
    {
        var story = Begun.At(14).When(Host, new RunCommand.HelperLeaves(Ivo, 0)).When(Host, new RunCommand.HelperStays(Ivo)).Then(new RunEvent.HelperStayed(Ivo));
        Assert.Equal(Meal.Helpers.Single(helper => helper.Id == Ivo), story.Run.Helpers.Single(helper => helper.Id == Ivo));
        Assert.False(story.Run.IsFree(story.Run.Meal.Step(Trim)));
        Assert.Null(story.Run.Wish);
        story.When(Host, new RunCommand.HelperStays(Ivo)).Refused(new Refusal.NothingToTakeBack());
    }

    [Fact]
    public void A_table_goes_back_to_where_it_was_move_by_move()
    {
        var story = Begun.When(Host, new RunCommand.MoveTable(Main, 20)).When(Host, new RunCommand.MoveTable(Main, 10))
            .When(Host, new RunCommand.TakeBackTable(Main)).Then(new RunEvent.TableMovedBack(Main, At(15, 20)));
        Assert.NotNull(story.Run.Wish);
        story.When(Host, new RunCommand.TakeBackTable(Main));
        var course = Assert.Single(story.Board().Courses);
        Assert.Equal((At(15), At(15)), (course.Promised, course.Expected));
        Assert.Null(story.Board().Slip);
        Assert.Null(story.Run.Wish);
        story.When(Host, new RunCommand.TakeBackTable(Main)).Refused(new Refusal.NothingToTakeBack());
    }

    [Fact]
    public void A_table_does_not_go_back_into_the_past() =>
        Begun.When(Host, new RunCommand.MoveTable(Main, 20)).At(15, 1).When(Host, new RunCommand.TakeBackTable(Main)).Refused(new Refusal.TableTimePast(Main));

    [Fact]
    public void An_oven_that_was_not_slow_keeps_nothing_waiting()
    {
        var story = Begun.At(12, 30).Finished(Stuff).When(Host, new RunCommand.OvenStillHeats(Oven, 20)).When(Host, new RunCommand.OvenOnTime(Oven)).Then(new RunEvent.OvenCaughtUp(Oven));
        Assert.Equal(At(12, 40), Minute.Of(story.Board().Next.First(card => card.Step.Id == Roast && card.Tend is null).Starts));
        story.When(Host, new RunCommand.OvenOnTime(Oven)).Refused(new Refusal.NothingToTakeBack());
    }
}
