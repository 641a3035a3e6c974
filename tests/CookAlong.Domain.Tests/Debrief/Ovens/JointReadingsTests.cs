using CookAlong.Domain.Debrief.Learning.Ovens;
using CookAlong.Domain.Doneness;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Runs;
using CookAlong.Domain.Tests.Doneness;
using CookAlong.Domain.Tests.Runs;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Domain.Tests.Debrief.Ovens;

/// <summary>What a log says of its oven by the readings of a joint of beef that roasts from 12:40 by a programme of 180 °C.</summary>
public sealed class JointReadingsTests
{
    static readonly CoreWanted beef = new(52, Roasts.Beef());

    static KitchenStory Roasting(double oven, int readings = 9) =>
        Roasts.Readings(10 * readings, oven, every: 10).Index().Aggregate(
            new KitchenStory().Given([.. Run.Start(WithCore(beef), Plan, Host, "Maren", Maren)]).Finished(Stuff).At(12, 40).Given(new RunEvent.StepStarted(Roast)),
            (story, one) => At(story, 10 * (one.Index + 1)).When(Host, new RunCommand.ReadCore(Roast, (decimal)one.Item.Celsius)));

    static KitchenStory At(KitchenStory story, int minutes) => story.At(12 + ((40 + minutes) / 60), (40 + minutes) % 60);

    static JointReading[] Of(KitchenStory story) => [.. JointReadings.Of(story.Run.Id, story.Log).Select(one => one.Reading)];

    [Fact]
    public void A_joint_that_was_taken_out_says_something_and_a_hotter_oven_says_so()
    {
        var (cold, hot) = (Of(Roasting(150).Finished(Roast)).Single(), Of(Roasting(210).Finished(Roast)).Single());
        Assert.True(hot.ReadsHighBy < cold.ReadsHighBy - 20, $"{hot} {cold}");
    }

    [Fact]
    public void Few_readings_one_that_is_still_in_and_what_was_taken_back_say_nothing()
    {
        Assert.Empty(Of(Roasting(180, readings: 5).Finished(Roast)));
        Assert.Empty(Of(Roasting(180)));
        Assert.Empty(Of(Roasting(180).Finished(Roast).When(Host, new RunCommand.TakeBack(Roast))));
    }

    [Fact]
    public void The_same_log_says_the_same() =>
        Assert.Equal(Of(Roasting(180).Finished(Roast)), Of(Roasting(180).Finished(Roast)));
}
