using CookAlong.Domain.Runs;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Domain.Tests.Runs;

/// <summary>The small lunch's fan oven is set for 180 °C at 12:20, which its dial calls 160; at 12 °C a minute from 20 it is hot at 12:34.</summary>
public sealed class OvenReadingTests
{
    static KitchenStory Begun => KitchenStory.Begun().At(12, 21).When(Host, new RunCommand.Acknowledge(KitchenStory.Begun().Calls().First(call => call.Kind == CallKind.Dial).Id));

    [Fact]
    public void A_dial_that_nobody_says_was_turned_waits_for_what_it_is_for() =>
        KitchenStory.Begun().At(12, 50).When(Host, new RunCommand.ReadOven(Oven, 60)).Then(Shown(12, 50, 60, hotAt: (13, 4)));

    static RunEvent.OvenRead Shown(int hour, int minute, decimal celsius, int dial = 160, (int Hour, int Minute)? hotAt = null) =>
        new RunEvent.OvenRead(Oven, new OvenShown(Clock(hour, minute), celsius, dial, Clock(hotAt?.Hour ?? 12, hotAt?.Minute ?? 34)));

    [Fact]
    public void A_reading_is_kept_beside_what_the_dial_stood_at_and_shown_at_the_oven()
    {
        var story = Begun.Finished(Stuff).At(13, 5).When(IvoPhone, new RunCommand.ReadOven(Oven, 168.04m)).Then(Shown(13, 5, 168));
        Assert.Equal(168, story.Board().Ovens[0].Reading!.Celsius);
        story.At(13, 20).When(Host, new RunCommand.ReadOven(Oven, 171, Clock(13, 15))).Then(Shown(13, 15, 171));
        Assert.Equal(171, story.Board().Ovens[0].Reading!.Celsius);
        story.When(Host, new RunCommand.TakeBackOvenReading(Oven)).Then(new RunEvent.OvenReadTakenBack(Oven));
        Assert.Equal(168, story.Board().Ovens[0].Reading!.Celsius);
        story.When(Host, new RunCommand.TakeBackOvenReading(Oven));
        Assert.Null(story.Board().Ovens[0].Reading);
        story.When(Host, new RunCommand.TakeBackOvenReading(Oven)).Refused(new Refusal.NothingToTakeBack());
    }

    [Fact]
    public void It_moves_no_plan()
    {
        var before = Begun.At(12, 40).Finished(Stuff).At(13, 5);
        var basis = before.Run.PlanBasis;
        var after = before.When(Host, new RunCommand.ReadOven(Oven, 120));
        Assert.Equal(basis, after.Run.PlanBasis);
        Assert.Null(after.Run.Wish);
    }

    [Fact]
    public void An_oven_that_is_said_to_heat_slowly_is_hot_later() =>
        Begun.At(12, 30).When(Host, new RunCommand.OvenStillHeats(Oven, 20)).At(12, 55).When(Host, new RunCommand.ReadOven(Oven, 150)).Then(Shown(12, 55, 150, hotAt: (12, 50)));

    [Fact]
    public void An_oven_that_is_off_is_read_all_the_same() =>
        Begun.Given(new RunEvent.StepStarted(Roast)).At(13, 40).Finished(Roast).At(14, 30).When(Host, new RunCommand.ReadOven(Oven, 90)).Then(Shown(14, 30, 90, dial: 0, hotAt: (14, 30)));

    [Fact]
    public void What_no_oven_shows_and_what_is_no_oven_are_refused()
    {
        Begun.When(Host, new RunCommand.ReadOven(Oven, 351)).Refused(new Refusal.OutOfRange("°C", -10, 350));
        Begun.At(15).When(Host, new RunCommand.ReadOven(Oven, 150, Clock(12, 59))).Refused(new Refusal.OutOfRange("Minutes since it was read", 0, 120));
        Begun.When(Host, new RunCommand.ReadOven(new("stove"), 150)).Refused(new Refusal.UnknownOven(new("stove")));
    }
}
