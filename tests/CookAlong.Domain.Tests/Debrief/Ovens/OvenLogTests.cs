using CookAlong.Domain.Debrief.Learning.Ovens;
using CookAlong.Domain.Runs;
using CookAlong.Domain.Tests.Runs;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Domain.Tests.Debrief.Ovens;

/// <summary>What a log of the small lunch says of its oven: to be turned to 180 °C from 20 at 12:20, its fan's dial to 160; planned hot at 12:34.</summary>
public sealed class OvenLogTests
{
    static KitchenStory Turned => KitchenStory.Begun().At(12, 21).When(Host, new RunCommand.Acknowledge(Turn));

    /// <summary>The call to the dial, as the schedule names it.</summary>
    static CallId Turn => KitchenStory.Begun().Calls().Single(call => call.Kind == CallKind.Dial && call.Dial!.Value.Celsius > 0).Id;

    static HotTap[] Taps(KitchenStory story) => [.. HotTaps.Of(story.Log).Select(one => one.Tap)];

    static DialReading[] Readings(KitchenStory story) => [.. DialReadings.Of(story.Run.Id, story.Log).Select(one => one.Reading)];

    [Fact]
    public void It_is_timed_from_the_answered_call_to_when_it_was_said_to_be_hot() =>
        Assert.Equal([new HotTap(24, 20, 180)], Taps(Turned.At(12, 35).When(Host, new RunCommand.OvenStillHeats(Oven, 10))));

    [Fact]
    public void Hot_after_all_says_when() =>
        Assert.Equal([new HotTap(19, 20, 180)], Taps(Turned.At(12, 35).When(Host, new RunCommand.OvenStillHeats(Oven, 10)).At(12, 40).When(Host, new RunCommand.OvenOnTime(Oven))));

    [Fact]
    public void Who_said_nothing_teaches_nothing()
    {
        Assert.Empty(Taps(KitchenStory.Begun()));
        Assert.Empty(Taps(Turned));
        Assert.Empty(Taps(KitchenStory.Begun().At(12, 35).When(Host, new RunCommand.OvenStillHeats(Oven, 10))));
    }

    [Fact]
    public void A_call_whose_answer_was_taken_back_was_not_answered()
    {
        var undone = Turned.When(Host, new RunCommand.TakeBackAnswer(Turn)).At(12, 35).When(Host, new RunCommand.OvenStillHeats(Oven, 10));
        Assert.Empty(Taps(undone));

        var again = Turned.When(Host, new RunCommand.TakeBackAnswer(Turn)).At(12, 25).When(Host, new RunCommand.Acknowledge(Turn)).At(12, 35).When(Host, new RunCommand.OvenStillHeats(Oven, 10));
        Assert.Equal([new HotTap(20, 20, 180)], Taps(again));
    }

    [Fact]
    public void A_clock_that_went_back_teaches_nothing()
    {
        Assert.Empty(Taps(Turned.Given(new RunEvent.OvenBehind(Oven, At(12, 15), 180))));
        Assert.Empty(Taps(Turned.At(12, 10).Given(new RunEvent.OvenBehind(Oven, At(12, 30), 180), new RunEvent.OvenCaughtUp(Oven))));
    }

    [Fact]
    public void Of_another_temperature_it_says_nothing() =>
        Assert.Empty(Taps(Turned.At(12, 35).Given(new RunEvent.OvenBehind(Oven, At(12, 50), 220))));

    [Fact]
    public void The_same_log_says_the_same_once()
    {
        var story = Turned.At(12, 35).When(Host, new RunCommand.OvenStillHeats(Oven, 10)).At(13, 35).When(Host, new RunCommand.ReadOven(Oven, 150));
        Assert.Equal(Taps(story), Taps(story));
        Assert.Single(Readings(story));

        // The same tap sent twice is one tap.
        var twice = Turned.At(13, 35).When(Host, new RunCommand.ReadOven(Oven, 150), id: 77).When(Host, new RunCommand.ReadOven(Oven, 150), id: 77);
        Assert.Single(Readings(twice));
    }

    [Fact]
    public void A_reading_of_an_oven_that_has_settled_is_held_against_its_dial() =>
        Assert.Equal([new DialReading(160, 150)], Readings(Turned.At(12, 44).When(Host, new RunCommand.ReadOven(Oven, 150))));

    [Fact]
    public void On_the_way_up_and_when_it_is_off_a_reading_says_nothing_of_the_dial() =>
        Assert.Empty(Readings(Turned.At(12, 43).When(Host, new RunCommand.ReadOven(Oven, 120)).Given(new RunEvent.StepStarted(Roast)).At(14, 10).Finished(Roast).At(14, 40).When(Host, new RunCommand.ReadOven(Oven, 90))));

    [Fact]
    public void After_the_door_was_open_a_reading_says_nothing_of_the_dial()
    {
        var story = Turned.At(12, 40).Given(new RunEvent.StepStarted(Roast)).At(13, 11).Given(new RunEvent.TendFinished(Roast, 0, 0));
        Assert.Empty(Readings(story.At(13, 22).When(Host, new RunCommand.ReadOven(Oven, 130))));
        Assert.Equal([new DialReading(160, 152)], Readings(story.At(13, 23).When(Host, new RunCommand.ReadOven(Oven, 152))));
    }

    [Fact]
    public void A_reading_that_was_taken_back_was_never_read() =>
        Assert.Equal([new DialReading(160, 151)], Readings(Turned
            .At(13, 5).When(Host, new RunCommand.ReadOven(Oven, 151))
            .At(13, 6).When(Host, new RunCommand.ReadOven(Oven, 15)).When(Host, new RunCommand.TakeBackOvenReading(Oven))));
}
