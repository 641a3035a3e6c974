using CookAlong.Domain.Runs;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Domain.Tests.Runs;

public sealed class CallScheduleTests
{
    static KitchenStory Begun => KitchenStory.Begun();

    static Call? Find(KitchenStory story, string id) => story.Calls().SingleOrDefault(call => call.Id == new CallId(id));

    [Fact]
    public void The_whole_run_is_scheduled_from_the_start() =>
        Assert.Equal(
            [
                "dial:oven 12:20 Medium", "begin:stuff 12:20 Low", "in:roast 12:40 Medium", "tend:roast:0:0 13:11 Medium", "tend:roast:0:1 13:40 Medium",
                "begin:roll 14:00 Low", "out:roast 14:10 High", "dial:oven 14:10 Medium", "in:boil 14:15 Medium", "begin:trim 14:20 Low",
                "out:boil 14:35 High", "begin:carve 14:40 Low", "begin:serve 14:45 Low", "table:main 14:50 Low",
            ],
            Begun.At(12).Calls().Select(call =>
                FormattableString.Invariant($"{(call.Dial is null ? call.Id.Value : "dial:oven")} {call.Due:HH:mm} {call.Priority}")));

    [Fact]
    public void A_call_that_has_come_does_not_move_with_the_clock()
    {
        Assert.Equal(Clock(12, 20), Find(Begun.At(12, 35), "begin:stuff")!.Due);
        Assert.Equal(Clock(12, 50), Find(Begun.At(12, 50).Finished(Stuff).At(13, 5), "in:roast")!.Due);
    }

    [Fact]
    public void What_is_expected_now_every_minute_anew_keeps_the_time_it_came_at()
    {
        var (first, later) = (Begun.At(12, 20), Begun.At(12, 23));
        var dial = first.Calls().First(call => call.Kind == CallKind.Dial);
        Assert.Equal(Clock(12, 23), later.Calls().Single(call => call.Id == dial.Id).Due);
        Assert.Equal(Clock(12, 20), later.Calls().Since(first.Calls(), Clock(12, 23)).Single(call => call.Id == dial.Id).Due);
    }

    [Fact]
    public void A_call_that_was_put_off_comes_at_its_new_time()
    {
        var (first, later) = (Begun.At(12, 20), Begun.At(12, 23));
        Assert.All(later.Calls().Since(first.Calls(), Clock(12, 22)), call => Assert.Equal(later.Calls().Single(one => one.Id == call.Id).Due, call.Due));
    }

    [Fact]
    public void A_call_does_not_come_before_its_step_can_begin() =>
        Assert.Equal(Clock(13, 1), Find(Begun.At(12, 41).Given(new RunEvent.StepStarted(Stuff)).At(13), "in:roast")!.Due);

    [Fact]
    public void Nobody_is_called_to_begin_anything_in_a_pause()
    {
        var story = Begun.Given(new RunEvent.KitchenPaused(null)).At(12, 40);
        Assert.Equal(Clock(12, 41), Find(story, "begin:stuff")!.Due);
        Assert.Contains(story.Calls(), call => call.Kind == CallKind.Pause && call.Due == Clock(12, 20));
    }

    [Fact]
    public void What_has_begun_is_not_called_for()
    {
        Assert.Null(Find(Begun.Given(new RunEvent.StepStarted(Stuff)), "begin:stuff"));
        Assert.Null(Find(Begun.Finished(Stuff, Roast), "out:roast"));
    }

    [Fact]
    public void A_step_calls_three_minutes_past_its_end() =>
        Assert.Equal((Clock(12, 43), CallPriority.Medium), (Find(Begun.Given(new RunEvent.StepStarted(Stuff)), "over:stuff")!.Due, Find(Begun.Given(new RunEvent.StepStarted(Stuff)), "over:stuff")!.Priority));

    [Fact]
    public void Something_hot_past_its_end_is_urgent() =>
        Assert.Equal(CallPriority.High, Find(Begun.At(12, 40).Finished(Stuff).Given(new RunEvent.StepStarted(Roast)), "over:roast")!.Priority);

    [Fact]
    public void Added_time_rings_anew_though_the_first_call_was_acknowledged()
    {
        var story = Begun.At(12, 40).Finished(Stuff).Given(new RunEvent.StepStarted(Roast)).At(14, 10)
            .Given(new RunEvent.CallAcknowledged(new CallId("out:roast")), new RunEvent.TimeAdded(Roast, 10));
        var call = Find(story, "out:roast:+10")!;
        Assert.Equal((Clock(14, 20), false), (call.Due, call.IsAcknowledged));
    }

    [Fact]
    public void What_is_taken_back_rings_again()
    {
        var story = Begun.Given(new RunEvent.CallAcknowledged(new CallId("begin:stuff")), new RunEvent.StepStarted(Stuff))
            .When(Host, new RunCommand.TakeBack(Stuff));
        Assert.Null(Find(story, "begin:stuff"));
        Assert.False(Find(story, "begin:stuff:again-1")!.IsAcknowledged);
    }

    [Fact]
    public void The_dial_waits_with_the_tray_it_is_for()
    {
        var story = Begun.At(12, 15).Given(new RunEvent.TimeAdded(Stuff, 30));
        var dial = story.Calls().First(call => call.Kind == CallKind.Dial);
        Assert.Equal((Clock(12, 50), 180), (dial.Due, dial.Dial!.Value.Celsius));
    }
}
