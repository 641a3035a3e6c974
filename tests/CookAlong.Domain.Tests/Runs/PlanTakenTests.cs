using CookAlong.Domain.Runs;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Domain.Tests.Runs;

public sealed class PlanTakenTests
{
    /// <summary>Trimming goes from Ivo to Maren and five minutes on; rolling, Tobi's next, starts ten minutes later.</summary>
    static readonly CookAlong.Domain.Planning.Plan Other = SmallMeal.Plan with
    {
        Steps = [.. SmallMeal.Plan.Steps.Select(step =>
            step.Step == Trim ? step with { Helpers = [Maren], Start = At(14, 25), End = At(14, 35) }
            : step.Step == Roll ? step with { Start = At(14, 10), End = At(14, 25) }
            : step)],
    };

    static KitchenStory Taken => KitchenStory.Begun().At(12, 50).When(Host, new RunCommand.AcceptPlan(Other, 5));

    [Fact]
    public void A_new_plan_says_whose_next_step_it_changes()
    {
        var taken = Taken.Board().Taken!;
        Assert.Equal(Clock(12, 50), taken.At);
        Assert.Equal([Roll, Trim], taken.Changes.Select(change => change.Step));
        Assert.Equal((At(14), At(14, 10)), (taken.Changes[0].Was, taken.Changes[0].Becomes));
        Assert.Equal((Ivo, Maren), (taken.Changes[1].WasBy[0], taken.Changes[1].BecomesBy[0]));
    }

    [Fact]
    public void It_is_news_for_ten_minutes()
    {
        Assert.NotNull(Taken.At(12, 59).Board().Taken);
        Assert.Null(Taken.At(13).Board().Taken);
    }

    [Fact]
    public void A_step_that_has_begun_since_is_no_news() =>
        Assert.Equal([Trim], Taken.Given(new RunEvent.StepStarted(Roll)).Board().Taken!.Changes.Select(change => change.Step));

    [Fact]
    public void Work_somebody_had_taken_was_theirs_before_the_plan()
    {
        var story = KitchenStory.Begun().Given(new RunEvent.StepGiven(Trim, Maren));
        var taken = story.When(Host, new RunCommand.AcceptPlan(Other, story.Run.Sequence)).Board().Taken!;
        Assert.DoesNotContain(taken.Changes, change => change.Step == Trim);
    }

    [Fact]
    public void A_plan_that_changes_nothing_says_so() =>
        Assert.Empty(KitchenStory.Begun().When(Host, new RunCommand.AcceptPlan(SmallMeal.Plan, 5)).Board().Taken!.Changes);

    [Fact]
    public void Before_the_first_new_plan_there_is_no_news() => Assert.Null(KitchenStory.Begun().Board().Taken);

    /// <summary>Stuffing takes 35 minutes instead of 20, and all that follows from it is 15 minutes later.</summary>
    static readonly CookAlong.Domain.Planning.Plan Later = SmallMeal.Plan with
    {
        Courses = [new(Main, At(15, 10), At(15))],
        Steps = [.. SmallMeal.Plan.Steps.Select(step => step.Step == Stuff ? step with { End = step.End + 15 } : step with { Start = step.Start + 15, End = step.End + 15 })],
    };

    static KitchenStory RanOver => KitchenStory.Begun().Given(new RunEvent.StepStarted(Stuff), new RunEvent.TimeAdded(Stuff, 15)).At(12, 50);

    [Fact]
    public void Added_time_that_a_new_plan_counts_is_not_added_again()
    {
        Assert.NotNull(RanOver.Board().Slip);

        var taken = RanOver.When(Host, new RunCommand.AcceptPlan(Later, RanOver.Run.Sequence));
        Assert.Equal(Clock(12, 55), taken.Board().Now.Single(card => card.Step.Id == Stuff).Ends);
        Assert.Equal(At(15, 10), taken.Board().Courses.Single().Expected);
        Assert.Null(taken.Board().Slip);
    }

    [Fact]
    public void Time_added_after_a_new_plan_makes_the_step_longer_by_just_that()
    {
        var taken = RanOver.When(Host, new RunCommand.AcceptPlan(Later, RanOver.Run.Sequence)).Given(new RunEvent.TimeAdded(Stuff, 10));
        Assert.Equal(Clock(13, 5), taken.Board().Now.Single(card => card.Step.Id == Stuff).Ends);
        Assert.Equal(Stuff, taken.Board().Slip!.Causes[0]);
    }

    [Fact]
    public void A_step_that_has_run_over_stays_over_since_the_same_minute()
    {
        var story = KitchenStory.Begun().Given(new RunEvent.StepStarted(Stuff)).At(12, 50);

        // Planned at ten to one, when the stuffing had gone on for half an hour.
        var planned = Later with { Steps = [.. Later.Steps.Select(step => step.Step == Stuff ? step with { End = At(12, 50) } : step)] };
        Assert.Equal(Clock(12, 40), story.When(Host, new RunCommand.AcceptPlan(planned, story.Run.Sequence)).Board().Now.Single(card => card.Step.Id == Stuff).Ends);
    }
}
