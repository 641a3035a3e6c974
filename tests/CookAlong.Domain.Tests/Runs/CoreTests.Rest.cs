using CookAlong.Domain.Doneness;
using CookAlong.Domain.FoodSafety;
using CookAlong.Domain.Runs;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Domain.Tests.Runs;

// The duck once it is out.
public sealed partial class CoreTests
{
    [Fact]
    public void Once_it_is_out_its_rest_is_foretold_by_the_limit_of_the_household()
    {
        var story = Read(ByTheUk(), (20, 9), (40, 21), (60, 38), (80, 55));
        var rest = story.Run.StateOf(Roast).Word!.Rest!;
        Assert.Equal(63, rest.Limit);
        Assert.True(74 < rest.Peak.Likely && rest.Peak.Likely < 90);
        Assert.True(TimeSpan.FromMinutes(10) < rest.Hot.Low && rest.Hot.Low < rest.Hot.Likely && rest.Hot.Likely < TimeSpan.FromHours(3));
        // 70 °C for 2 minutes, or as much: before it has 74 °C, or in the first minutes of its rest.
        Assert.InRange((rest.SafeAt!.Value - story.Run.StateOf(Roast).Word!.Likely!.Value).TotalMinutes, -15, 15);
        Assert.Null(Read(Roasting(), (20, 9), (40, 21), (60, 38), (80, 55)).Run.StateOf(Roast).Word!.Rest);
    }

    [Fact]
    public void A_resting_joint_calls_before_it_is_too_cold_and_until_somebody_goes_on_with_it()
    {
        var story = Read(ByTheUk(), (20, 9), (40, 21), (60, 38), (80, 55), (117, 74.2m)).When(Host, new RunCommand.FinishStep(Roast));
        var resting = Assert.Single(story.Board().Resting);
        Assert.Equal(Clock(14, 37), resting.Out);
        var call = story.Calls().Single(one => one.Kind == CallKind.Cools);
        Assert.Equal(resting.HotUntil!.Value.AddMinutes(-10), call.Due);
        Assert.True(call.Due > Clock(14, 30));
        story.When(Host, new RunCommand.TakeBack(Roast));
        Assert.DoesNotContain(story.Calls(), one => one.Kind == CallKind.Cools);
        story.When(Host, new RunCommand.FinishStep(Roast)).At(15, 0).When(Host, new RunCommand.StartStep(Carve));
        Assert.Empty(story.Board().Resting);
        Assert.DoesNotContain(story.Calls(), one => one.Kind == CallKind.Cools);
    }

    [Fact]
    public void What_lies_over_a_resting_joint_and_how_warm_the_kitchen_is_say_how_long_it_stays_hot()
    {
        var story = Read(ByTheUk(), (20, 9), (40, 21), (60, 38), (80, 55));
        TimeSpan Hot() => story.Run.StateOf(Roast).Word!.Rest!.Hot.Likely;
        var foil = Hot();
        story.When(IvoPhone, new RunCommand.CoverRest(Roast, RestUnder.FoilAndCloths, 22));
        var cloths = Hot();
        Assert.True(cloths > foil);
        Assert.Equal((RestUnder.FoilAndCloths, 22), (story.Run.StateOf(Roast).Word!.Rest!.Under, story.Run.RoomCelsius));
        story.When(Host, new RunCommand.CoverRest(Roast, RestUnder.FoilAndCloths, 12));
        Assert.True(Hot() < cloths);
        // Said once, it holds for the readings to come.
        Read(story, (117, 74.2m));
        Assert.Equal((RestUnder.FoilAndCloths, 12), (story.Run.StateOf(Roast).Word!.Rest!.Under, story.Run.StateOf(Roast).Word!.Rest!.RoomCelsius));
        story.When(Host, new RunCommand.CoverRest(Roast, RestUnder.FoilAndCloths, 12)).Then();
    }

    [Fact]
    public void Cloths_laid_over_it_late_save_what_is_left()
    {
        var story = Read(ByTheUk(), (20, 9), (40, 21), (60, 38), (80, 55), (117, 74.2m)).When(Host, new RunCommand.FinishStep(Roast));
        DateTimeOffset HotUntil() => Assert.Single(story.Board().Resting).HotUntil!.Value;
        var foil = HotUntil();
        story.At(14, 50).When(Host, new RunCommand.CoverRest(Roast, RestUnder.Nothing, 22));
        var bare = HotUntil();
        Assert.True(bare < foil);
        story.At(14, 55).When(Host, new RunCommand.CoverRest(Roast, RestUnder.FoilAndCloths, 22));
        Assert.True(HotUntil() > bare);
        Assert.Equal(HotUntil().AddMinutes(-10), story.Calls().Single(one => one.Kind == CallKind.Cools).Due);
    }

    [Fact]
    public void What_was_said_of_its_cover_and_of_the_kitchen_is_taken_back_one_by_one()
    {
        var story = Read(ByTheUk(), (20, 9), (40, 21), (60, 38), (80, 55));
        var foil = story.Run.StateOf(Roast).Word;
        story.When(IvoPhone, new RunCommand.CoverRest(Roast, RestUnder.FoilAndCloths, 25)).When(IvoPhone, new RunCommand.CoverRest(Roast, RestUnder.Nothing, 25));
        Assert.Equal(RestUnder.FoilAndCloths, story.When(IvoPhone, new RunCommand.TakeBackCover(Roast)).Run.StateOf(Roast).Word!.Rest!.Under);
        story.When(IvoPhone, new RunCommand.TakeBackCover(Roast));
        Assert.Equal((foil, 22), (story.Run.StateOf(Roast).Word, story.Run.RoomCelsius));
        Assert.Empty(story.Run.StateOf(Roast).Covers);
        story.When(IvoPhone, new RunCommand.TakeBackCover(Roast)).Refused(new Refusal.NothingToTakeBack());
    }

    [Fact]
    public void Cloths_that_were_never_laid_over_it_save_nothing()
    {
        var story = Read(ByTheUk(), (20, 9), (40, 21), (60, 38), (80, 55), (117, 74.2m)).When(Host, new RunCommand.FinishStep(Roast));
        DateTimeOffset HotUntil() => Assert.Single(story.Board().Resting).HotUntil!.Value;
        var foil = HotUntil();
        story.At(14, 50).When(Host, new RunCommand.CoverRest(Roast, RestUnder.FoilAndCloths, story.Run.RoomCelsius));
        Assert.True(HotUntil() > foil);
        story.At(14, 55).When(Host, new RunCommand.TakeBackCover(Roast));
        Assert.Equal(foil, HotUntil());
    }

    [Fact]
    public void Foil_that_was_not_laid_on_or_not_taken_off_is_taken_back_as_if_it_had_not_been_said()
    {
        var story = Read(ByTheUk(), (20, 9)).When(IvoPhone, new RunCommand.SetFoil(Roast, true)).At(13, 30).When(IvoPhone, new RunCommand.SetFoil(Roast, false));
        story.When(IvoPhone, new RunCommand.TakeBackFoil(Roast)).Then(new RunEvent.FoilTakenBack(Roast));
        Assert.Equal([new FoilSpan(Clock(13), null)], story.Run.StateOf(Roast).Foil);
        Assert.Empty(story.When(IvoPhone, new RunCommand.TakeBackFoil(Roast)).Run.StateOf(Roast).Foil);
        story.When(IvoPhone, new RunCommand.TakeBackFoil(Roast)).Refused(new Refusal.NothingToTakeBack());
    }

    [Fact]
    public void Only_a_joint_that_is_in_or_out_can_be_covered_and_only_in_a_kitchen()
    {
        ByTheUk().When(Host, new RunCommand.CoverRest(Stuff, RestUnder.Foil, 20)).Refused(new Refusal.NoCore(Stuff));
        ByTheUk().When(Host, new RunCommand.CoverRest(Roast, RestUnder.Foil, 60)).Refused(new Refusal.OutOfRange("The kitchen, in °C,", 0, 45));
        ByTheUk().When(Host, new RunCommand.TakeBack(Roast)).When(Host, new RunCommand.CoverRest(Roast, RestUnder.Nothing, 20)).Refused(new Refusal.NotStarted(Roast));
    }
}
