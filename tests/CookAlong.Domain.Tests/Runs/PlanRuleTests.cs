using CookAlong.Domain.Planning;
using CookAlong.Domain.Runs;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Domain.Tests.Runs;

public sealed class PlanRuleTests
{
    static KitchenStory Begun => KitchenStory.Begun();

    /// <summary>Trimming, Ivo's next, starts later.</summary>
    static Plan Later(int minutes) => SmallMeal.Plan with
    {
        Steps = [.. SmallMeal.Plan.Steps.Select(step => step.Step == Trim ? step with { Start = step.Start + minutes, End = step.End + minutes } : step)],
    };

    static readonly Plan OtherHands = SmallMeal.Plan with
    {
        Steps = [.. SmallMeal.Plan.Steps.Select(step => step.Step == Trim ? step with { Helpers = [Maren] } : step)],
    };

    static KitchenStory By(int? minutes) => Begun.When(Host, new RunCommand.SetPlanRule(minutes));

    static KitchenStory Offered(KitchenStory story, Plan plan) => story.When(by: null, new RunCommand.AcceptPlan(plan, story.Run.Sequence));

    [Fact]
    public void No_plan_is_taken_by_itself_unless_the_host_says_so() =>
        Offered(Begun, SmallMeal.Plan).Refused(new Refusal.NotYourRole(Role.Host));

    [Fact]
    public void A_plan_that_moves_nobody_s_next_step_far_is_taken_by_itself()
    {
        var story = Offered(By(5), Later(5));
        Assert.IsType<RunEvent.PlanAccepted>(story.Log[^1].Event);
        Assert.Null(story.Log[^1].By);
    }

    [Fact]
    public void One_that_moves_it_further_waits_for_the_host() => Offered(By(5), Later(6)).Refused(new Refusal.NotYourRole(Role.Host));

    [Fact]
    public void One_that_gives_it_to_other_hands_waits_for_the_host() => Offered(By(5), OtherHands).Refused(new Refusal.NotYourRole(Role.Host));

    [Fact]
    public void One_for_a_kitchen_that_has_moved_on_is_not_taken()
    {
        var story = By(5);
        var madeAt = story.Run.Sequence;
        story.When(Host, new RunCommand.StartStep(Stuff)).When(by: null, new RunCommand.AcceptPlan(Later(5), madeAt)).Refused(new Refusal.PlanIsStale());
    }

    [Fact]
    public void The_rule_is_the_host_s_to_set_and_to_end()
    {
        Begun.When(IvoPhone, new RunCommand.SetPlanRule(5)).Refused(new Refusal.NotYourRole(Role.Host));
        Begun.When(Host, new RunCommand.SetPlanRule(61)).Refused(new Refusal.OutOfRange("minutes", 0, 60));
        var story = By(5).When(Host, new RunCommand.SetPlanRule(null)).Then(new RunEvent.PlanRuleSet(null));
        Offered(story, Later(1)).Refused(new Refusal.NotYourRole(Role.Host));
    }

    [Fact]
    public void Taking_back_a_plan_ends_the_rule_which_would_take_it_again()
    {
        var story = Offered(By(5), Later(5)).When(Host, new RunCommand.TakeBackPlan());
        Assert.Null(story.Run.PlanRule);
        Assert.Equal(At(14, 20), story.Run.Plan.Step(Trim).Start);
    }

    [Fact]
    public void The_kitchen_does_nothing_else_by_itself() =>
        Begun.When(by: null, new RunCommand.EndRun()).Refused(new Refusal.NotInThisRun());
}
