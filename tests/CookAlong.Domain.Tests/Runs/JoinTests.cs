using CookAlong.Domain.Runs;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Domain.Tests.Runs;

public sealed class JoinTests
{
    [Fact]
    public void A_helper_of_the_meal_joins_as_themselves() =>
        KitchenStory.OnlyHost().When(IvoPhone, new RunCommand.Join(IvoPhone, "Ivo", Role.Helper, Ivo))
            .Then(new RunEvent.PersonJoined(IvoPhone, "Ivo", Role.Helper, Ivo));

    [Fact]
    public void Two_people_are_not_the_same_helper() =>
        KitchenStory.Begun().When(Stranger, new RunCommand.Join(Stranger, "Also Ivo", Role.Helper, Ivo)).Refused(new Refusal.HelperTaken(Ivo));

    [Fact]
    public void Joining_as_nobody_of_the_meal_is_refused() =>
        KitchenStory.OnlyHost().When(Stranger, new RunCommand.Join(Stranger, "X", Role.Helper, new HelperId("x")))
            .Refused(new Refusal.UnknownHelper(new HelperId("x")));

    [Fact]
    public void Hands_nobody_planned_for_are_added()
    {
        var story = KitchenStory.OnlyHost()
            .When(Person(5), new RunCommand.Join(Person(5), "Anouk", Role.Helper, null))
            .Then(new RunEvent.PersonJoined(Person(5), "Anouk", Role.Helper, new HelperId("walk-in-1")))
            .When(Host, new RunCommand.PutOut(Person(5)))
            .When(Person(6), new RunCommand.Join(Person(6), "Bela", Role.Helper, null))
            .Then(new RunEvent.PersonJoined(Person(6), "Bela", Role.Helper, new HelperId("walk-in-2")));
        Assert.Equal(["Maren", "Tobi", "Ivo", "Bela"], story.Board().People.Select(person => person.Name));
    }

    [Fact]
    public void Who_was_put_out_keeps_the_name_of_what_they_did() =>
        Assert.Contains(
            KitchenStory.OnlyHost()
                .Given(new RunEvent.PersonJoined(Person(5), "Anouk", Role.Helper, new HelperId("walk-in-1")))
                .Given(new RunEvent.StepClaimed(Roll, new HelperId("walk-in-1")), new RunEvent.StepFinished(Roll))
                .When(Host, new RunCommand.PutOut(Person(5)))
                .Board().People,
            person => person is { Name: "Anouk", Person: null });

    [Fact]
    public void Joining_again_the_same_way_changes_nothing() =>
        KitchenStory.Begun().When(IvoPhone, new RunCommand.Join(IvoPhone, "Ivo", Role.Helper, Ivo)).Then();

    [Fact]
    public void A_watcher_has_no_hands() =>
        KitchenStory.OnlyHost().When(Watcher, new RunCommand.Join(Watcher, "Gran", Role.Watcher, null))
            .Then(new RunEvent.PersonJoined(Watcher, "Gran", Role.Watcher, null));

    [Fact]
    public void Only_the_host_puts_people_out() =>
        KitchenStory.Begun().When(IvoPhone, new RunCommand.PutOut(TobiPhone)).Refused(new Refusal.NotYourRole(Role.Host));

    [Fact]
    public void Who_is_not_in_the_run_cannot_be_put_out() =>
        KitchenStory.Begun().When(Host, new RunCommand.PutOut(Stranger)).Refused(new Refusal.NotInThisRun());

    [Fact]
    public void A_host_is_not_put_out() =>
        KitchenStory.Begun().When(Host, new RunCommand.PutOut(Host)).Refused(new Refusal.HostStays());

    [Fact]
    public void Who_was_put_out_may_do_nothing_more() =>
        KitchenStory.Begun().When(Host, new RunCommand.PutOut(TobiPhone)).When(TobiPhone, new RunCommand.FinishStep(Roll)).Refused(new Refusal.NotInThisRun());
}
