using CookAlong.Domain.Planning;
using CookAlong.Domain.Runs;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Domain.Tests.Runs;

public sealed class GivingTakenBackTests
{
    static KitchenStory Begun => KitchenStory.Begun();

    static readonly RunCommand takeBackTrim = new RunCommand.TakeBackGiving(Trim), takeBackServe = new RunCommand.TakeBackGiving(Serve);

    [Fact]
    public void A_step_given_by_mistake_is_again_whose_it_was()
    {
        var story = Begun.When(Host, new RunCommand.GiveStep(Trim, Maren)).When(Host, takeBackTrim).Then(new RunEvent.GivingTakenBack(Trim));
        Assert.Equal([Ivo], story.Run.HoldersOf(Trim));
        Assert.False(story.Run.IsClaimed(Trim));
        story.When(Host, takeBackTrim).Refused(new Refusal.NothingToTakeBack());
    }

    [Fact]
    public void Given_twice_it_goes_back_one_by_one()
    {
        var story = Begun.When(Host, new RunCommand.GiveStep(Roll, Ivo)).When(Host, new RunCommand.TakeOver(Roll)).When(Host, new RunCommand.TakeBackGiving(Roll));
        Assert.Equal([Ivo], story.Run.HoldersOf(Roll));
        Assert.Equal([Tobi], story.When(Host, new RunCommand.TakeBackGiving(Roll)).Run.HoldersOf(Roll));
    }

    [Fact]
    public void Whoever_handed_their_part_on_has_it_back_until_it_has_begun()
    {
        var story = Begun.When(IvoPhone, new RunCommand.GiveStep(Serve, Maren));
        story.When(TobiPhone, takeBackServe).Refused(new Refusal.NotYours(Serve));
        Assert.Equal([Tobi, Ivo], story.When(IvoPhone, takeBackServe).Run.HoldersOf(Serve));

        story.When(IvoPhone, new RunCommand.GiveStep(Serve, Maren)).Given(new RunEvent.StepStarted(Serve));
        story.When(IvoPhone, takeBackServe).Refused(new Refusal.AlreadyStarted(Serve, Clock(12, 20)));
        story.When(Host, takeBackServe).Then(new RunEvent.GivingTakenBack(Serve));
    }

    [Fact]
    public void What_the_host_gave_away_no_helper_takes_back() =>
        Begun.When(Host, new RunCommand.GiveStep(Trim, Maren)).When(IvoPhone, takeBackTrim).Refused(new Refusal.NotYours(Trim));

    [Fact]
    public void Nothing_is_taken_back_from_somebody_who_has_taken_it_since() =>
        Begun.When(Host, new RunCommand.GiveStep(Roll, Maren)).When(Host, new RunCommand.LetGoStep(Roll)).When(IvoPhone, new RunCommand.ClaimStep(Roll))
            .When(Host, new RunCommand.TakeBackGiving(Roll)).Refused(new Refusal.NothingToTakeBack());

    [Fact]
    public void A_finished_step_stays_whose_it_was() =>
        Begun.When(Host, new RunCommand.GiveStep(Trim, Maren)).Finished(Trim).When(Host, takeBackTrim).Refused(new Refusal.AlreadyFinished(Trim, Clock(12, 20)));

    [Fact]
    public void It_is_taken_back_though_a_new_plan_has_counted_it_since()
    {
        var story = Begun.When(Host, new RunCommand.GiveStep(Trim, Maren));
        var counted = SmallMeal.Plan with { Steps = [.. SmallMeal.Plan.Steps.Select(step => step.Step == Trim ? step with { Helpers = [Maren] } : step)] };
        story.When(Host, new RunCommand.AcceptPlan(counted, story.Run.Sequence));
        Assert.Equal([Maren], story.Run.HoldersOf(Trim));
        Assert.Equal([Ivo], story.When(Host, takeBackTrim).Run.HoldersOf(Trim));
    }

    [Fact]
    public void A_plan_on_offer_for_how_it_was_given_is_out_of_date()
    {
        var story = Begun.When(Host, new RunCommand.GiveStep(Trim, Maren));
        var madeAt = story.Run.Sequence;
        story.When(Host, takeBackTrim).When(Host, new RunCommand.AcceptPlan(SmallMeal.Plan, madeAt)).Refused(new Refusal.PlanIsStale());
    }
}
