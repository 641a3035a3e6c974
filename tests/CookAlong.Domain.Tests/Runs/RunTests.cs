using CookAlong.Domain.Runs;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Domain.Tests.Runs;

public sealed class RunTests
{
    static KitchenStory Begun => KitchenStory.Begun();

    [Fact]
    public void A_run_begins_with_its_meal_and_its_host()
    {
        var run = KitchenStory.OnlyHost().Run;
        Assert.Equal((2L, Role.Host, Maren), (run.Sequence, run.People[Host].Role, run.People[Host].Helper!.Value));
    }

    [Fact]
    public void A_plan_that_leaves_steps_out_cannot_be_run() =>
        Assert.Throws<ArgumentException>(() => Run.Start(Meal, Plan with { Steps = Plan.Steps[1..] }, Host, "Maren", Maren));

    [Fact]
    public void Events_with_a_hole_are_not_applied() =>
        Assert.Throws<InvalidOperationException>(() => Begun.Run.Apply(new Logged(9, Command(1), Host, Clock(12), new RunEvent.RunEnded())));

    [Fact]
    public void Starting_a_step_of_ones_own() =>
        Begun.When(Host, new RunCommand.StartStep(Stuff)).Then(new RunEvent.StepStarted(Stuff));

    [Fact]
    public void A_started_step_is_not_started_again() =>
        Begun.At(12, 21).Given(new RunEvent.StepStarted(Stuff)).At(12, 25)
            .When(Host, new RunCommand.StartStep(Stuff)).Refused(new Refusal.AlreadyStarted(Stuff, Clock(12, 21)));

    [Fact]
    public void A_finished_step_is_not_started_again() =>
        Begun.At(12, 41).Finished(Stuff).At(12, 45)
            .When(Host, new RunCommand.StartStep(Stuff)).Refused(new Refusal.AlreadyFinished(Stuff, Clock(12, 41)));

    [Fact]
    public void A_step_does_not_start_before_what_it_waits_for() =>
        Begun.When(Host, new RunCommand.StartStep(Roast)).Refused(new Refusal.WaitsFor(Roast, Stuff));

    [Fact]
    public void Nothing_starts_in_a_pause() =>
        Begun.Given(new RunEvent.KitchenPaused(null)).When(Host, new RunCommand.StartStep(Stuff)).Refused(new Refusal.Paused());

    [Fact]
    public void A_step_that_is_not_in_the_meal_is_unknown() =>
        Begun.When(Host, new RunCommand.FinishStep(new StepId("flambé"))).Refused(new Refusal.UnknownStep(new StepId("flambé")));

    [Fact]
    public void Finishing_a_step_twice_is_refused_with_its_time() =>
        Begun.At(12, 41).Finished(Stuff).At(12, 43)
            .When(Host, new RunCommand.FinishStep(Stuff)).Refused(new Refusal.AlreadyFinished(Stuff, Clock(12, 41)));

    [Fact]
    public void A_step_that_still_waits_cannot_be_finished() =>
        Begun.When(Host, new RunCommand.FinishStep(Carve)).Refused(new Refusal.WaitsFor(Carve, Roast));

    [Fact]
    public void A_step_finished_without_a_start_began_when_it_was_planned()
    {
        var story = Begun.At(12, 43).When(Host, new RunCommand.FinishStep(Stuff)).Then(new RunEvent.StepFinished(Stuff));
        Assert.Equal(Clock(12, 20), story.Run.StateOf(Stuff).Started);
    }

    [Fact]
    public void Or_when_what_it_waited_for_was_done_and_had_rested()
    {
        var story = Begun.At(14, 40).Finished(Stuff, Roast).At(15, 20).When(Host, new RunCommand.FinishStep(Carve));
        Assert.Equal(Clock(15, 10), story.Run.StateOf(Carve).Started);
    }

    [Fact]
    public void And_never_after_it_was_finished()
    {
        var story = Begun.At(12, 10).When(Host, new RunCommand.FinishStep(Stuff));
        Assert.Equal(Clock(12, 10), story.Run.StateOf(Stuff).Started);
    }

    [Fact]
    public void A_pause_point_pauses_the_kitchen() =>
        Begun.Finished(Roll).When(Host, new RunCommand.FinishStep(Boil))
            .Then(new RunEvent.StepFinished(Boil), new RunEvent.KitchenPaused(Boil));

    [Fact]
    public void What_was_done_can_be_ticked_off_in_a_pause() =>
        Begun.Given(new RunEvent.KitchenPaused(null)).When(TobiPhone, new RunCommand.FinishStep(Roll)).Then(new RunEvent.StepFinished(Roll));

    [Fact]
    public void A_helper_does_not_finish_what_another_has_in_hand() =>
        Begun.When(IvoPhone, new RunCommand.FinishStep(Stuff)).Refused(new Refusal.NotYours(Stuff));

    [Fact]
    public void The_host_may_finish_for_anybody() =>
        Begun.When(Host, new RunCommand.FinishStep(Roll)).Then(new RunEvent.StepFinished(Roll));

    [Fact]
    public void Anybody_with_hands_may_take_out_what_nobody_stands_at() =>
        Begun.Finished(Stuff).When(IvoPhone, new RunCommand.FinishStep(Roast)).Then(new RunEvent.StepFinished(Roast));

    [Fact]
    public void A_child_does_not() =>
        Begun.Finished(Stuff).When(TobiPhone, new RunCommand.FinishStep(Roast)).Refused(new Refusal.NotForChildren(Roast));

    [Fact]
    public void A_helper_who_starts_free_work_takes_it() =>
        KitchenStory.OnlyHost().Given(new RunEvent.PersonJoined(IvoPhone, "Ivo", Role.Helper, Ivo))
            .When(IvoPhone, new RunCommand.StartStep(Roll))
            .Then(new RunEvent.StepClaimed(Roll, Ivo), new RunEvent.StepStarted(Roll));

    [Fact]
    public void A_watcher_only_looks() =>
        Begun.When(Watcher, new RunCommand.FinishStep(Roll)).Refused(new Refusal.NotYourRole(Role.Helper));

    [Fact]
    public void Who_has_not_joined_may_do_nothing() =>
        Begun.When(Stranger, new RunCommand.FinishStep(Roll)).Refused(new Refusal.NotInThisRun());

    [Fact]
    public void Taking_back_a_tick_sets_it_running_again()
    {
        var story = Begun.At(12, 40).Finished(Stuff).When(Host, new RunCommand.TakeBack(Stuff)).Then(new RunEvent.StepTakenBack(Stuff));
        Assert.True(story.Run.StateOf(Stuff).IsRunning);
    }

    [Fact]
    public void Taking_back_a_start_lets_it_wait_again()
    {
        var story = Begun.Given(new RunEvent.StepStarted(Stuff)).When(Host, new RunCommand.TakeBack(Stuff));
        Assert.Null(story.Run.StateOf(Stuff).Started);
    }

    [Fact]
    public void There_must_be_something_to_take_back() =>
        Begun.When(Host, new RunCommand.TakeBack(Stuff)).Refused(new Refusal.NotStarted(Stuff));

    [Fact]
    public void A_tick_is_not_taken_back_once_others_went_on() =>
        Begun.Finished(Stuff).Given(new RunEvent.StepStarted(Roast))
            .When(Host, new RunCommand.TakeBack(Stuff)).Refused(new Refusal.OthersWentOn(Stuff, Roast));

    [Fact]
    public void Taking_back_a_pause_point_ends_its_pause() =>
        Begun.Finished(Roll).When(Host, new RunCommand.FinishStep(Boil))
            .When(Host, new RunCommand.TakeBack(Boil)).Then(new RunEvent.StepTakenBack(Boil), new RunEvent.KitchenWentOn());

    [Fact]
    public void Time_is_added_to_a_step() =>
        Begun.When(TobiPhone, new RunCommand.AddTime(Roll, 10)).Then(new RunEvent.TimeAdded(Roll, 10));

    [Theory]
    [InlineData(0)]
    [InlineData(-5)]
    [InlineData(121)]
    public void But_only_from_1_to_120_minutes(int minutes) =>
        Begun.When(Host, new RunCommand.AddTime(Roll, minutes)).Refused(new Refusal.OutOfRange("minutes", 1, 120));

    [Fact]
    public void No_time_is_added_to_a_finished_step() =>
        Begun.Finished(Roll).When(Host, new RunCommand.AddTime(Roll, 5)).Refused(new Refusal.AlreadyFinished(Roll, Clock(12, 20)));

    [Fact]
    public void A_tend_is_done_once() =>
        Begun.Finished(Stuff).Given(new RunEvent.StepStarted(Roast)).At(13, 10)
            .When(IvoPhone, new RunCommand.FinishTend(Stuff, 0, 0)).When(Host, new RunCommand.FinishTend(Roast, 0, 0))
            .Then(new RunEvent.TendFinished(Roast, 0, 0))
            .When(Host, new RunCommand.FinishTend(Roast, 0, 0)).Refused(new Refusal.TendAlreadyDone(Roast, Clock(13, 10)));

    [Theory]
    [InlineData(1, 0)]
    [InlineData(0, 2)]
    [InlineData(-1, 0)]
    [InlineData(0, -1)]
    public void Only_tends_of_the_step_can_be_done(int tend, int turn) =>
        Begun.Finished(Stuff).Given(new RunEvent.StepStarted(Roast))
            .When(Host, new RunCommand.FinishTend(Roast, tend, turn)).Refused(new Refusal.UnknownTend(Roast));

    [Fact]
    public void Nothing_is_tended_before_it_has_begun() =>
        Begun.When(Host, new RunCommand.FinishTend(Roast, 0, 0)).Refused(new Refusal.NotStarted(Roast));

    [Fact]
    public void A_child_does_not_tend_what_is_not_safe_for_children() =>
        Begun.Finished(Stuff).Given(new RunEvent.StepStarted(Roast))
            .When(TobiPhone, new RunCommand.FinishTend(Roast, 0, 0)).Refused(new Refusal.NotForChildren(Roast));

    [Fact]
    public void Hold_everything_and_go_on() =>
        Begun.When(Host, new RunCommand.HoldEverything()).Then(new RunEvent.KitchenPaused(null))
            .When(Host, new RunCommand.GoOn()).Then(new RunEvent.KitchenWentOn());

    [Fact]
    public void A_kitchen_that_is_held_cannot_be_held_again() =>
        Begun.Given(new RunEvent.KitchenPaused(null)).When(Host, new RunCommand.HoldEverything()).Refused(new Refusal.Paused());

    [Fact]
    public void A_kitchen_that_goes_on_cannot_go_on() =>
        Begun.When(Host, new RunCommand.GoOn()).Refused(new Refusal.NotPaused());

    [Fact]
    public void A_new_plan_is_taken_when_nothing_has_changed_since()
    {
        var story = Begun.Finished(Roll);
        story.When(Host, new RunCommand.AcceptPlan(Plan, story.Run.Sequence)).Then(new RunEvent.PlanAccepted(Plan));
    }

    [Fact]
    public void A_plan_made_before_somebody_began_something_is_stale()
    {
        var story = Begun;
        var made = story.Run.Sequence;
        story.Finished(Roll).When(Host, new RunCommand.AcceptPlan(Plan, made)).Refused(new Refusal.PlanIsStale());
    }

    [Fact]
    public void A_plan_made_before_somebody_only_joined_is_not()
    {
        var story = KitchenStory.OnlyHost();
        var made = story.Run.Sequence;
        story.Given(new RunEvent.PersonJoined(IvoPhone, "Ivo", Role.Helper, Ivo))
            .When(Host, new RunCommand.AcceptPlan(Plan, made)).Then(new RunEvent.PlanAccepted(Plan));
    }

    [Fact]
    public void A_due_call_is_acknowledged_once_for_all()
    {
        var call = new CallId("begin:stuff");
        var story = Begun.When(IvoPhone, new RunCommand.Acknowledge(call)).Then(new RunEvent.CallAcknowledged(call));
        story.When(Host, new RunCommand.Acknowledge(call)).Then();
    }

    [Fact]
    public void A_call_that_is_settled_meanwhile_is_acknowledged_without_effect() =>
        Begun.Finished(Stuff).When(Host, new RunCommand.Acknowledge(new CallId("begin:stuff"))).Then();

    [Fact]
    public void A_call_about_nothing_is_unknown() =>
        Begun.When(Host, new RunCommand.Acknowledge(new CallId("begin:flambé"))).Refused(new Refusal.UnknownCall(new CallId("begin:flambé")));

    [Fact]
    public void After_the_end_nothing_can_be_done() =>
        Begun.When(Host, new RunCommand.EndRun()).Then(new RunEvent.RunEnded())
            .When(Host, new RunCommand.StartStep(Stuff)).Refused(new Refusal.RunOver());

    [Fact]
    public void A_host_may_end_while_work_is_open_and_nothing_is_called_any_more()
    {
        var story = Begun.Finished(Stuff).Given(new RunEvent.StepStarted(Roast)).At(13, 40);
        story.When(IvoPhone, new RunCommand.EndRun()).Refused(new Refusal.NotYourRole(Role.Host));
        Assert.NotEmpty(story.Calls());

        story.When(Host, new RunCommand.EndRun()).Then(new RunEvent.RunEnded());
        Assert.Empty(story.Calls());
        Assert.True(story.Run.StateOf(Roast).IsRunning);
        Assert.Equal([Stuff], story.Board().Done.Select(card => card.Step.Id));
    }

    [Fact]
    public void The_same_tap_twice_is_accepted_and_has_one_effect() =>
        Begun.When(Host, new RunCommand.FinishStep(Stuff), id: 5).When(Host, new RunCommand.FinishStep(Stuff), id: 5).Then();
}
