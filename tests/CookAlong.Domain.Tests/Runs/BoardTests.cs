using CookAlong.Domain.Runs;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Domain.Tests.Runs;

public sealed class BoardTests
{
    static KitchenStory Begun => KitchenStory.Begun();

    static BoardCard Card(Board board, StepId step) => board.Now.Concat(board.Next).Concat(board.Done).First(card => card.Step.Id == step && card.Tend is null);

    [Fact]
    public void A_step_is_due_when_its_time_has_come()
    {
        Assert.Equal(CardState.Waiting, Card(Begun.At(12, 19).Board(), Stuff).State);
        Assert.Equal(CardState.Due, Card(Begun.At(12, 20).Board(), Stuff).State);
    }

    [Fact]
    public void But_not_before_what_it_waits_for_is_done()
    {
        Assert.Equal(CardState.Waiting, Card(Begun.At(13).Board(), Roast).State);
        Assert.Equal(CardState.Due, Card(Begun.At(13).Finished(Stuff).Board(), Roast).State);
    }

    [Fact]
    public void A_step_past_its_minutes_is_over()
    {
        var story = Begun.At(12, 20).Given(new RunEvent.StepStarted(Stuff));
        Assert.Equal(CardState.Running, Card(story.At(12, 40).Board(), Stuff).State);
        Assert.Equal(CardState.Over, Card(story.At(12, 41).Board(), Stuff).State);
        Assert.Equal(CardState.Running, Card(story.Given(new RunEvent.TimeAdded(Stuff, 5)).Board(), Stuff).State);
    }

    [Fact]
    public void The_goose_is_on_the_same_two_shelves_before_and_while_it_roasts()
    {
        var story = Begun.At(12, 30).Finished(Stuff);
        var before = Assert.Single(story.Board().Ovens);
        Assert.Equal([Roast, Roast, null], before.Shelves.Select(tray => tray?.Card?.Step.Id));
        Assert.Equal(180, before.Celsius);
        var after = Assert.Single(story.At(12, 45).Given(new RunEvent.StepStarted(Roast)).Board().Ovens);
        Assert.Equal([Roast, Roast, null], after.Shelves.Select(tray => tray?.Card?.Step.Id));
        Assert.Equal(Clock(14, 15), after.Shelves[0]!.Ends);
        Assert.Equal(0, after.Next!.Value.Celsius);
    }

    [Fact]
    public void A_ring_is_taken_while_something_boils_on_it()
    {
        var story = Begun.At(14, 15).Finished(Roll).Given(new RunEvent.StepStarted(Boil));
        Assert.Equal([Boil, null, null, null], story.Board().Rings.Select(ring => ring.Card?.Step.Id));
    }

    [Fact]
    public void A_tend_is_a_card_of_its_own_when_it_is_due()
    {
        var story = Begun.At(12, 40).Finished(Stuff).Given(new RunEvent.StepStarted(Roast));
        var board = story.At(13, 12).Board();
        var due = Assert.Single(board.Now, card => card.Tend is not null);
        Assert.Equal((Clock(13, 11), CardState.Due, "Baste"), (due.Starts, due.State, due.Tend!.Text));
        Assert.Equal(CallKind.Tend, due.Call!.Kind);
        Assert.Equal(Clock(13, 40), Assert.Single(board.Next, card => card.Tend is not null).Starts);
        Assert.DoesNotContain(story.Given(new RunEvent.TendFinished(Roast, 0, 0)).Board().Now, card => card.Tend is not null);
    }

    [Fact]
    public void What_can_burn_comes_first()
    {
        var story = Begun.At(12, 40).Finished(Stuff).Given(new RunEvent.StepStarted(Roast)).At(14, 11);
        Assert.Equal(Roast, story.Board().Now[0].Step.Id);
        Assert.Equal(CallPriority.High, story.Board().Now[0].Call!.Priority);
    }

    [Fact]
    public void A_finished_dish_waits_for_its_table_time()
    {
        var story = Begun.At(14, 30).Finished(Trim);
        var beans = Assert.Single(story.Board().Waiting);
        Assert.Equal(("beans", Clock(14, 30), At(15, 30)), (beans.Dish.Name, beans.Since, beans.Limit));
    }

    [Fact]
    public void Nothing_has_slipped_while_the_promise_holds()
    {
        var board = Begun.At(12, 20).Board();
        Assert.Null(board.Slip);
        Assert.Equal(5, board.BreathingRoom);
    }

    [Fact]
    public void A_pause_uses_up_the_breathing_room_first_and_then_costs_table_time()
    {
        var held = Begun.Given(new RunEvent.KitchenPaused(null));
        Assert.Equal((2, null), (held.At(12, 23).Board().BreathingRoom, held.Board().Slip));
        var late = held.At(12, 35).Board();
        Assert.Equal((0, 10), (late.BreathingRoom, late.Slip!.LateMinutes));
        Assert.Equal((At(15), At(15, 10)), (late.Courses[0].Promised, late.Courses[0].Expected));
    }

    [Fact]
    public void A_step_that_is_far_behind_moves_the_table_time_and_is_named()
    {
        var board = Begun.At(12, 50).Board();
        Assert.Equal(25, board.Slip!.LateMinutes);
        Assert.Equal(Stuff, board.Slip.Causes[0]);
        Assert.Equal((At(15), At(15, 25)), (board.Courses[0].Promised, board.Courses[0].Expected));
    }

    [Fact]
    public void People_keep_their_mark_and_say_when_they_come()
    {
        var people = Begun.At(12, 20).Board().People;
        Assert.Equal([0, 1, 2], people.Select(person => person.Mark));
        Assert.Equal((false, At(13, 30)), (people[2].IsHereNow, people[2].HereFrom!.Value));
    }

    [Fact]
    public void Free_work_is_marked_so()
    {
        var board = KitchenStory.OnlyHost().Board();
        Assert.True(Card(board, Roll).IsFree);
        Assert.False(Card(board, Stuff).IsFree);
        Assert.True(Card(board, Roast).IsFree);
    }

    [Fact]
    public void A_run_that_has_ended_shows_what_was_done_and_asks_for_nothing()
    {
        var board = Begun.Finished(Trim).Given(new RunEvent.RunEnded()).Board();
        Assert.True(board.IsOver);
        Assert.Empty(board.Now);
        Assert.Empty(board.Calls);
        Assert.Single(board.Done);
    }
}
