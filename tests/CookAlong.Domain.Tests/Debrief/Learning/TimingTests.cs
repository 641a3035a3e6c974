using CookAlong.Domain.Debrief.Learning;
using CookAlong.Domain.Runs;
using CookAlong.Domain.Tests.Runs;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Domain.Tests.Debrief.Learning;

/// <summary>What a log says about hands, and what it contradicts itself about.</summary>
public sealed class TimingTests
{
    static readonly RunId RunId = new(new Guid(7, 0, 0, new byte[8]));

    static Timing[] Read(KitchenStory story) => [.. Timing.Of(RunId, story.Log, dish => dish.Name, _ => null)];

    [Fact]
    public void A_step_that_was_begun_and_finished_by_hand_is_timed_with_who_did_it()
    {
        var timing = Assert.Single(Read(KitchenStory.Begun().Given(new RunEvent.StepStarted(Stuff)).At(12, 46).Finished(Stuff)));

        Assert.Equal((StepKey.Of("goose", "stuff"), "stuff", "Maren", 26.0), (timing.Step, timing.Kind, timing.Person, timing.Minutes));
        Assert.Equal(new WrittenTime(20, 20, 20), timing.Written);
    }

    [Fact]
    public void What_the_oven_takes_teaches_nothing_about_hands() =>
        Assert.Empty(Read(KitchenStory.Begun().At(12, 40).Given(new RunEvent.StepStarted(Roast)).At(14, 40).Finished(Roast)));

    [Fact]
    public void Done_without_having_begun_teaches_nothing() =>
        Assert.Empty(Read(KitchenStory.Begun().At(12, 55).Finished(Stuff)));

    [Fact]
    public void A_start_that_was_taken_back_counts_from_when_it_was_tapped_again()
    {
        var story = KitchenStory.Begun().Given(new RunEvent.StepStarted(Stuff)).At(12, 30).Given(new RunEvent.StepTakenBack(Stuff))
            .At(12, 40).Given(new RunEvent.StepStarted(Stuff)).At(13, 0).Finished(Stuff);
        Assert.Equal(20, Assert.Single(Read(story)).Minutes);
    }

    [Fact]
    public void A_start_that_was_taken_back_for_good_is_no_start() =>
        Assert.Empty(Read(KitchenStory.Begun().Given(new RunEvent.StepStarted(Stuff)).At(12, 30).Given(new RunEvent.StepTakenBack(Stuff)).At(12, 50).Finished(Stuff)));

    [Fact]
    public void An_end_that_was_taken_back_counts_at_the_last_end()
    {
        var story = KitchenStory.Begun().Given(new RunEvent.StepStarted(Stuff)).At(12, 22).Finished(Stuff).Given(new RunEvent.StepTakenBack(Stuff)).At(12, 45).Finished(Stuff);
        Assert.Equal(25, Assert.Single(Read(story)).Minutes);
    }

    [Fact]
    public void A_clock_that_went_back_meanwhile_teaches_nothing() =>
        Assert.Empty(Read(KitchenStory.Begun().Given(new RunEvent.StepStarted(Stuff)).At(13, 30).Given(new RunEvent.TimeAdded(Trim, 5)).At(12, 41).Finished(Stuff)));

    [Fact]
    public void A_clock_that_jumped_hours_ahead_teaches_nothing() =>
        Assert.Empty(Read(KitchenStory.Begun().Given(new RunEvent.StepStarted(Stuff)).At(18).Finished(Stuff)));

    [Fact]
    public void Begun_and_finished_in_one_go_teaches_nothing() =>
        Assert.Empty(Read(KitchenStory.Begun().Given(new RunEvent.StepStarted(Stuff)).At(12, 21).Finished(Stuff)));

    [Fact]
    public void Time_in_which_everything_was_held_teaches_nothing() =>
        Assert.Empty(Read(KitchenStory.Begun().Given(new RunEvent.StepStarted(Stuff)).At(12, 30).Given(new RunEvent.KitchenPaused(null)).At(12, 40).Given(new RunEvent.KitchenWentOn()).At(12, 50).Finished(Stuff)));

    [Fact]
    public void What_is_ticked_off_while_everything_is_held_for_good_teaches_nothing() =>
        Assert.Empty(Read(KitchenStory.Begun().Given(new RunEvent.StepStarted(Stuff)).At(12, 30).Given(new RunEvent.KitchenPaused(null)).At(12, 50).Finished(Stuff)));

    [Fact]
    public void Where_it_was_planned_with_what_was_learned_it_is_held_against_the_recipe()
    {
        var story = KitchenStory.Begun().Given(new RunEvent.StepStarted(Stuff)).At(12, 46).Finished(Stuff);
        var timing = Assert.Single(Timing.Of(RunId, story.Log, dish => dish.Name, way => way == (Stuff, -1) ? new WrittenTime(10, 13, 16) : null));
        Assert.Equal(13, timing.Written.Likely);
    }
}
