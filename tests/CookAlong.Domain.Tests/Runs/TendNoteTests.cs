using CookAlong.Domain.Runs;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Domain.Tests.Runs;

/// <summary>The goose is in since 12:40; it is to be basted at 13:11 and 13:40.</summary>
public sealed class TendNoteTests
{
    static readonly TendTurn First = new(Roast, 0, 0), Second = new(Roast, 0, 1);

    static KitchenStory Roasting => KitchenStory.Begun().At(12, 40).Finished(Stuff).Given(new RunEvent.StepStarted(Roast));

    static KitchenStory Baste(KitchenStory story, int turn) => story.When(IvoPhone, new RunCommand.FinishTend(Roast, 0, turn));

    [Fact]
    public void A_tend_done_in_time_is_no_news() => Assert.Empty(Baste(Roasting.At(13, 15), 0).Run.TendNotesOf(Roast));

    [Fact]
    public void A_late_one_says_how_late() =>
        Assert.Equal([new TendNote(First, Clock(13, 11), 12, IsSkipped: false)], Baste(Roasting.At(13, 23), 0).Run.TendNotesOf(Roast));

    [Fact]
    public void One_that_is_late_and_not_done_yet_is_not_skipped() => Assert.Empty(Roasting.At(13, 35).Run.TendNotesOf(Roast));

    [Fact]
    public void One_whose_next_turn_was_done_is_skipped_and_called_no_more()
    {
        var story = Baste(Roasting.At(13, 41), 1);
        Assert.Equal([new TendNote(First, Clock(13, 11), 0, IsSkipped: true)], story.Run.TendNotesOf(Roast));
        Assert.DoesNotContain(story.Calls(), call => call.Kind == CallKind.Tend);
        Assert.Contains((0, 0), story.Run.FactsAt(Clock(13, 41)).Single(fact => fact.Step == Roast).TendsDone);
    }

    [Fact]
    public void Taking_that_turn_back_calls_both_again()
    {
        var story = Baste(Roasting.At(13, 41), 1).When(IvoPhone, new RunCommand.TakeBackTend(Roast, 0, 1));
        Assert.Empty(story.Run.TendNotesOf(Roast));
        Assert.Equal(2, story.Calls().Count(call => call.Kind == CallKind.Tend));
    }

    [Fact]
    public void One_that_was_due_before_the_step_was_finished_without_it_is_skipped()
    {
        var story = Baste(Roasting.At(13, 12), 0).At(14, 10).Finished(Roast);
        Assert.Equal([new TendNote(Second, Clock(13, 40), 0, IsSkipped: true)], story.Run.TendNotesOf(Roast));
        Assert.Equal(story.Run.TendNotesOf(Roast), story.Board().Done.Single(card => card.Step.Id == Roast).TendNotes);
    }

    [Fact]
    public void One_that_was_not_due_when_the_step_was_finished_is_not()
        => Assert.Empty(Baste(Roasting.At(13, 12), 0).At(13, 30).Finished(Roast).Run.TendNotesOf(Roast));
}
