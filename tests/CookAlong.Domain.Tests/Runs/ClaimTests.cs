using CookAlong.Domain.Runs;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Domain.Tests.Runs;

public sealed class ClaimTests
{
    static KitchenStory Begun => KitchenStory.Begun();

    /// <summary>Ivo is there; Tobi, for whom rolling is planned, is not.</summary>
    static KitchenStory WithoutTobi => KitchenStory.OnlyHost().Given(new RunEvent.PersonJoined(IvoPhone, "Ivo", Role.Helper, Ivo));

    [Fact]
    public void Work_planned_for_somebody_who_is_not_here_is_free() =>
        WithoutTobi.When(IvoPhone, new RunCommand.ClaimStep(Roll)).Then(new RunEvent.StepClaimed(Roll, Ivo));

    [Fact]
    public void Claiming_what_one_has_already_changes_nothing() =>
        Begun.When(IvoPhone, new RunCommand.ClaimStep(Trim)).Then();

    [Fact]
    public void A_step_somebody_here_has_is_taken() =>
        Begun.When(IvoPhone, new RunCommand.ClaimStep(Roll)).Refused(new Refusal.Taken(Roll, Tobi));

    [Fact]
    public void A_claimed_step_is_taken() =>
        WithoutTobi.When(IvoPhone, new RunCommand.ClaimStep(Roll)).When(Host, new RunCommand.ClaimStep(Roll)).Refused(new Refusal.Taken(Roll, Ivo));

    [Fact]
    public void A_step_let_go_is_free_again() =>
        Begun.When(TobiPhone, new RunCommand.LetGoStep(Roll)).Then(new RunEvent.StepLetGo(Roll, Tobi))
            .When(IvoPhone, new RunCommand.ClaimStep(Roll)).Then(new RunEvent.StepClaimed(Roll, Ivo));

    [Fact]
    public void A_step_for_two_has_room_for_a_second()
    {
        var story = WithoutTobi.When(Host, new RunCommand.ClaimStep(Serve)).Then(new RunEvent.StepClaimed(Serve, Maren));
        Assert.Equal([Ivo, Maren], story.Run.HoldersOf(Serve));
        Assert.False(story.Run.HasRoom(Meal.Step(Serve)));
    }

    [Fact]
    public void What_a_helper_had_is_free_once_they_are_put_out() =>
        Begun.When(Host, new RunCommand.PutOut(TobiPhone)).Then(new RunEvent.PersonPutOut(TobiPhone))
            .When(IvoPhone, new RunCommand.ClaimStep(Roll)).Then(new RunEvent.StepClaimed(Roll, Ivo));

    [Fact]
    public void A_child_claims_only_what_is_safe_for_children() =>
        Begun.Given(new RunEvent.StepLetGo(Stuff, Maren)).When(TobiPhone, new RunCommand.ClaimStep(Stuff)).Refused(new Refusal.NotForChildren(Stuff));

    [Fact]
    public void Who_lacks_a_skill_does_not_claim_what_needs_it() =>
        Begun.Given(new RunEvent.StepLetGo(Carve, Maren)).When(IvoPhone, new RunCommand.ClaimStep(Carve)).Refused(new Refusal.NeedsSkill(Carve, "carve"));

    [Fact]
    public void A_finished_step_is_not_claimed() =>
        Begun.Finished(Roll).When(IvoPhone, new RunCommand.ClaimStep(Roll)).Refused(new Refusal.AlreadyFinished(Roll, Clock(12, 20)));

    [Fact]
    public void A_host_the_plan_does_not_know_lends_a_hand_by_taking_something()
    {
        var edda = new HelperId("walk-in-1");
        var story = WithoutTobi.Given(new RunEvent.PersonJoined(Person(5), "Edda", Role.Host, null))
            .When(Person(5), new RunCommand.ClaimStep(Roll))
            .Then(new RunEvent.PersonJoined(Person(5), "Edda", Role.Host, edda), new RunEvent.StepClaimed(Roll, edda));
        Assert.Contains(story.Board().People, person => person is { Name: "Edda", IsChild: false });
    }

    [Fact]
    public void But_not_by_what_somebody_here_has() =>
        Begun.Given(new RunEvent.PersonJoined(Person(5), "Edda", Role.Host, null))
            .When(Person(5), new RunCommand.ClaimStep(Roll)).Refused(new Refusal.Taken(Roll, Tobi));

    [Fact]
    public void Only_ones_own_work_is_let_go() =>
        Begun.When(IvoPhone, new RunCommand.LetGoStep(Roll)).Refused(new Refusal.NotYours(Roll));

    [Fact]
    public void The_host_gives_a_step_away() =>
        Begun.When(Host, new RunCommand.GiveStep(Roll, Ivo)).Then(new RunEvent.StepGiven(Roll, Ivo))
            .When(TobiPhone, new RunCommand.FinishStep(Roll)).Refused(new Refusal.NotYours(Roll));

    [Fact]
    public void A_helper_hands_on_their_own_part_of_a_step_and_no_more()
    {
        var story = Begun.When(IvoPhone, new RunCommand.GiveStep(Serve, Maren)).Then(new RunEvent.StepHandedOver(Serve, Ivo, Maren));
        Assert.Equal([Tobi, Maren], story.Run.HoldersOf(Serve));
    }

    [Fact]
    public void Helpers_give_away_nothing_that_is_somebody_else_s() =>
        Begun.When(IvoPhone, new RunCommand.GiveStep(Roll, Maren)).Refused(new Refusal.NotYours(Roll));

    [Fact]
    public void Nothing_is_handed_to_somebody_who_is_not_here() =>
        WithoutTobi.When(IvoPhone, new RunCommand.GiveStep(Serve, Tobi)).Refused(new Refusal.NotHere(Tobi));

    [Fact]
    public void A_child_is_handed_only_what_is_safe_for_children() =>
        Begun.When(IvoPhone, new RunCommand.GiveStep(Trim, Tobi)).Refused(new Refusal.NotForChildren(Trim));

    [Fact]
    public void The_host_takes_over_what_somebody_else_has() =>
        Begun.When(Host, new RunCommand.TakeOver(Roll)).Then(new RunEvent.StepGiven(Roll, Maren));

    [Fact]
    public void Only_the_host_takes_over() =>
        Begun.When(IvoPhone, new RunCommand.TakeOver(Roll)).Refused(new Refusal.NotYourRole(Role.Host));

    [Fact]
    public void A_host_the_plan_does_not_know_takes_over_as_new_hands() =>
        Begun.Given(new RunEvent.PersonJoined(Person(5), "Edda", Role.Host, null))
            .When(Person(5), new RunCommand.TakeOver(Roll))
            .Then(new RunEvent.PersonJoined(Person(5), "Edda", Role.Host, new("walk-in-1")), new RunEvent.StepGiven(Roll, new("walk-in-1")));

    [Fact]
    public void Nothing_is_given_to_somebody_unknown() =>
        Begun.When(Host, new RunCommand.GiveStep(Roll, new HelperId("nobody"))).Refused(new Refusal.UnknownHelper(new HelperId("nobody")));

    [Fact]
    public void A_child_is_given_only_what_is_safe_for_children() =>
        Begun.When(Host, new RunCommand.GiveStep(Carve, Tobi)).Refused(new Refusal.NotForChildren(Carve));

    [Fact]
    public void Who_lacks_a_skill_is_not_given_what_needs_it() =>
        Begun.When(Host, new RunCommand.GiveStep(Carve, Ivo)).Refused(new Refusal.NeedsSkill(Carve, "carve"));
}
