using CookAlong.Domain.Doneness;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Runs;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Domain.Tests.Runs;

/// <summary>A duck of 2 kg instead of the goose, in at 12:40, wanted at 74 °C (USDA FSIS, Safe Minimum Internal Temperature Chart: all poultry 165 °F).</summary>
public sealed class CoreTests
{
    static readonly CoreWanted duck = new(74, new Joint(Cut.WholeDuck, 2));

    static KitchenStory Roasting(CoreWanted? core = null)
    {
        var meal = SmallMeal.Meal with { Dishes = [.. SmallMeal.Meal.Dishes.Select(dish => dish with { Steps = [.. dish.Steps.Select(step => step.Id == Roast ? step with { Core = core ?? duck } : step)] })] };
        return new KitchenStory()
            .Given([.. Run.Start(meal, Plan, Host, "Maren", Maren)])
            .Given(new RunEvent.PersonJoined(IvoPhone, "Ivo", Role.Helper, Ivo))
            .Finished(Stuff)
            .At(12, 40).Given(new RunEvent.StepStarted(Roast));
    }

    static KitchenStory Read(KitchenStory story, params (int Minutes, decimal Celsius)[] readings) =>
        readings.Aggregate(story, (so, one) => so.At(12 + ((40 + one.Minutes) / 60), (40 + one.Minutes) % 60).When(Host, new RunCommand.ReadCore(Roast, one.Celsius)));

    [Fact]
    public void It_is_not_done_before_the_thermometer_says_so()
    {
        Roasting().At(14, 10).When(Host, new RunCommand.FinishStep(Roast)).Refused(new Refusal.CoreNotReached(Roast, 74, null, null));

        var early = Read(Roasting(new CoreWanted(74, null)), (85, 68));
        var last = early.Run.StateOf(Roast).Readings[^1];
        early.When(Host, new RunCommand.FinishStep(Roast)).Refused(new Refusal.CoreNotReached(Roast, 74, last, null));
        Read(early, (95, 74.5m)).When(Host, new RunCommand.FinishStep(Roast)).Then(new RunEvent.StepFinished(Roast));
    }

    [Fact]
    public void A_joint_s_readings_say_when_and_the_step_ends_then()
    {
        var story = Read(Roasting(), (20, 9), (40, 21), (60, 38));
        var word = story.Run.StateOf(Roast).Word!;
        Assert.Equal(CoreVerdict.Expected, word.Verdict);
        Assert.True(word.Earliest < word.Likely && word.Likely < word.Latest);
        var card = story.Board().Now.Single(one => one.Step.Id == Roast && one.Tend is null);
        Assert.InRange((card.Ends - word.Likely!.Value).TotalMinutes, 0, 1);
        Assert.Equal(3, card.Core!.Readings.Length);
        Assert.NotEqual(14 * 60 + 10, (int)card.Ends.TimeOfDay.TotalMinutes);
    }

    [Fact]
    public void What_is_done_sooner_rings_now()
    {
        var story = Read(Roasting(new CoreWanted(74, null)), (60, 58), (70, 74));
        Assert.Equal(CoreVerdict.Reached, story.Run.StateOf(Roast).Word!.Verdict);
        Assert.Equal(Clock(13, 50), story.Calls().Single(call => call.Kind == CallKind.Out && call.Step == Roast).Due);
    }

    [Fact]
    public void A_call_that_was_answered_rings_again_at_the_time_a_reading_names()
    {
        var story = Read(Roasting(), (20, 9), (40, 21), (60, 38)).At(14, 20);
        var call = story.Calls().Single(one => one.Kind == CallKind.Out && one.Step == Roast);
        story = Read(story.When(Host, new RunCommand.Acknowledge(call.Id)), (101, 66));
        Assert.False(story.Calls().Single(one => one.Kind == CallKind.Out && one.Step == Roast).IsAcknowledged);
    }

    [Theory]
    [InlineData(500, CoreVerdict.Impossible)]
    [InlineData(-40, CoreVerdict.Impossible)]
    [InlineData(15, CoreVerdict.Fell)]
    [InlineData(74, CoreVerdict.Leapt)]
    public void A_reading_that_cannot_be_is_kept_and_moves_nothing(int celsius, CoreVerdict verdict)
    {
        var before = Read(Roasting(), (20, 9), (40, 21), (60, 38));
        var ends = before.Run.MinutesOf(Roast);
        var after = Read(before, (62, celsius));
        Assert.Equal(verdict, after.Run.StateOf(Roast).Word!.Verdict);
        Assert.Equal(ends, after.Run.MinutesOf(Roast));
        Assert.IsType<Refusal.CoreNotReached>(Assert.IsType<Decision.Refused>(after.Run.Decide(new Tap(Command(7), Host, new RunCommand.FinishStep(Roast)), Clock(13, 43))).Why);
    }

    [Fact]
    public void The_last_reading_is_taken_back_with_what_it_moved()
    {
        var story = Read(Roasting(), (20, 9), (40, 21), (60, 38));
        var minutes = story.Run.MinutesOf(Roast);
        story = Read(story, (70, 60));
        story.When(Host, new RunCommand.TakeBackReading(Roast)).Then(new RunEvent.CoreTakenBack(Roast));
        Assert.Equal(minutes, story.Run.MinutesOf(Roast));
        Assert.Equal(3, story.Run.StateOf(Roast).Readings.Length);
    }

    [Fact]
    public void Only_the_host_vouches_for_another_check_and_it_is_written_down()
    {
        Roasting().When(IvoPhone, new RunCommand.VouchFor(Roast, "juices run clear")).Refused(new Refusal.NotYourRole(Role.Host));
        Roasting().When(Host, new RunCommand.VouchFor(Roast, " ")).Refused(new Refusal.OutOfRange("What was looked at, in characters,", 1, 200));
        Roasting().When(Host, new RunCommand.VouchFor(Roast, "Gran's own thermometer")).Then(new RunEvent.CoreVouched(Roast, "Gran's own thermometer"))
            .When(Host, new RunCommand.FinishStep(Roast)).Then(new RunEvent.StepFinished(Roast));
    }

    [Fact]
    public void A_phone_that_was_away_says_when_it_was_read()
    {
        var story = Roasting().At(13, 20).When(Host, new RunCommand.ReadCore(Roast, 21, Clock(13, 5)));
        Assert.Equal(Clock(13, 5), story.Run.StateOf(Roast).Readings.Single().At);
        story = Roasting().At(13, 20).When(Host, new RunCommand.ReadCore(Roast, 21, Clock(15)));
        Assert.Equal(Clock(13, 20), story.Run.StateOf(Roast).Readings.Single().At);
    }

    [Fact]
    public void A_new_plan_keeps_the_readings_and_the_end_they_name()
    {
        var story = Read(Roasting(), (20, 9), (40, 21), (60, 38));
        var minutes = story.Run.MinutesOf(Roast);
        story = story.Given(new RunEvent.PlanAccepted(story.Run.PlanAsItStands));
        Assert.Equal(minutes, story.Run.MinutesOf(Roast));
        Assert.Equal(3, story.Run.StateOf(Roast).Readings.Length);
    }

    [Fact]
    public void What_has_no_core_temperature_or_is_not_in_the_heat_cannot_be_read()
    {
        Roasting().When(Host, new RunCommand.ReadCore(Carve, 60)).Refused(new Refusal.NoCore(Carve));
        Roasting().When(Host, new RunCommand.TakeBack(Roast)).When(Host, new RunCommand.ReadCore(Roast, 60)).Refused(new Refusal.NotStarted(Roast));
    }
}
