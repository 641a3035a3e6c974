using CookAlong.Domain.Runs;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Domain.Tests.Runs;

/// <summary>How long a step that nobody begins stays with who has it. The five minutes are common practice, no source.</summary>
public sealed class HeldUntilTests
{
    /// <summary>All has gone as planned until a quarter past two: beans that nobody trims yet are not held back for a late goose.</summary>
    static KitchenStory Begun => KitchenStory.Begun().At(12, 40).Finished(Stuff).Given(new RunEvent.StepStarted(Roast))
        .At(14, 10).Finished(Roast).At(14, 15).Finished(Roll).Given(new RunEvent.StepStarted(Boil));

    /// <summary>Trimming, for 14:20, was given up and taken again by Ivo at a quarter past two.</summary>
    static KitchenStory Claimed => Begun.When(IvoPhone, new RunCommand.LetGoStep(Trim)).When(IvoPhone, new RunCommand.ClaimStep(Trim));

    static RunCommand.FreeStep Free(bool isSilent = false) => new(Trim, Ivo, isSilent);

    [Fact]
    public void A_due_step_that_was_taken_is_theirs_for_five_minutes_after_its_call()
    {
        Assert.Null(Trimming(Claimed.At(14, 19)).HeldUntil);
        var card = Trimming(Claimed.At(14, 21));
        Assert.Equal((At(14, 25), true), (card.HeldUntil, card.IsClaimed));
    }

    [Fact]
    public void Then_the_kitchen_frees_it_and_anybody_may_take_it()
    {
        var story = Claimed.At(14, 25).When(by: null, Free()).Then(new RunEvent.ClaimFreed(Trim, Ivo));
        Assert.Null(story.Log[^1].By);
        Assert.Empty(story.Run.HoldersOf(Trim));
        Assert.True(Trimming(story).IsFree);
        story.When(Host, new RunCommand.GiveStep(Trim, Ivo)).Then(new RunEvent.StepGiven(Trim, Ivo));
    }

    [Fact]
    public void Not_a_minute_sooner() => Claimed.At(14, 24).When(by: null, Free()).Then();

    [Fact]
    public void Whoever_is_on_it_keeps_it_five_minutes_longer()
    {
        var story = Claimed.At(14, 22).When(IvoPhone, new RunCommand.KeepStep(Trim)).Then(new RunEvent.ClaimKept(Trim, Ivo, At(14, 30)));
        story.At(14, 29).When(by: null, Free()).Then();
        story.At(14, 30).When(by: null, Free()).Then(new RunEvent.ClaimFreed(Trim, Ivo));
    }

    [Fact]
    public void Before_it_is_due_there_is_nothing_to_keep() => Claimed.At(14, 19).When(IvoPhone, new RunCommand.KeepStep(Trim)).Then();

    [Fact]
    public void Only_ones_own_step_is_kept() =>
        KitchenStory.Begun().At(14, 1).When(IvoPhone, new RunCommand.KeepStep(Roll)).Refused(new Refusal.NotYours(Roll));

    [Fact]
    public void What_has_begun_is_not_freed() =>
        Claimed.At(14, 21).When(IvoPhone, new RunCommand.StartStep(Trim)).At(14, 40).When(by: null, Free()).Then();

    [Fact]
    public void What_the_plan_alone_gave_somebody_is_freed_only_while_their_phone_is_silent()
    {
        Begun.At(14, 25).When(by: null, Free()).Then();
        Begun.At(14, 25).When(by: null, Free(isSilent: true)).Then(new RunEvent.ClaimFreed(Trim, Ivo));
    }

    [Fact]
    public void Whoever_took_it_after_its_call_has_five_minutes_all_the_same()
    {
        var story = Begun.At(14, 40).Given(new RunEvent.StepLetGo(Trim, Ivo)).When(IvoPhone, new RunCommand.ClaimStep(Trim));
        Assert.Equal(At(14, 45), Trimming(story).HeldUntil);
    }

    [Fact]
    public void Whoever_was_busy_with_another_step_has_five_minutes_from_its_end()
    {
        var story = Claimed.Given(new RunEvent.StepTakenBack(Boil), new RunEvent.StepTakenBack(Roll), new RunEvent.StepGiven(Roll, Ivo)).At(14, 23).Finished(Roll).At(14, 24);
        Assert.Equal(At(14, 28), Trimming(story).HeldUntil);
    }

    [Fact]
    public void A_pause_takes_nobody_s_time()
    {
        var story = Claimed.At(14, 15).When(Host, new RunCommand.HoldEverything()).At(14, 40);
        Assert.Null(Trimming(story).HeldUntil);
        Assert.Equal(At(14, 45), Trimming(story.When(Host, new RunCommand.GoOn())).HeldUntil);
    }

    [Fact]
    public void Nobody_frees_a_step_by_a_tap() =>
        Claimed.At(14, 25).When(Host, Free()).Refused(new Refusal.NotYourRole(Role.Host));

    static BoardCard Trimming(KitchenStory story)
    {
        var board = story.Board();
        return board.Now.Concat(board.Next).Single(card => card.Step.Id == Trim);
    }
}
