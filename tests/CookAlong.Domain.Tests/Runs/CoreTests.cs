using CookAlong.Domain.Doneness;
using CookAlong.Domain.FoodSafety;
using CookAlong.Domain.Meals;
using OvenProgramme = CookAlong.Domain.Planning.OvenProgramme;
using CookAlong.Domain.Runs;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Domain.Tests.Runs;

/// <summary>A duck of 2 kg instead of the goose, in at 12:40, wanted at 74 °C (USDA FSIS, Safe Minimum Internal Temperature Chart: all poultry 165 °F).</summary>
public sealed partial class CoreTests
{
    static readonly CoreWanted duck = new(74, new Joint(Cut.WholeDuck, 2));

    /// <summary>Hot for half an hour, moderate until the roast's planned end, and then only warm.</summary>
    static readonly OvenProgramme programme = new(Oven, [new(At(12, 30), 220), new(At(13, 10), 220), new(At(13, 25), 170), new(At(14, 10), 170), new(At(14, 40), 70)], []);

    static KitchenStory Roasting(CoreWanted? core = null, (int Hour, int Minute)? at = null, Region? authority = null)
    {
        var meal = WithCore(core ?? duck);
        return new KitchenStory()
            .Given([.. Run.Start(meal, Plan with { Ovens = [programme] }, Host, "Maren", Maren, authority)])
            .Given(new RunEvent.PersonJoined(IvoPhone, "Ivo", Role.Helper, Ivo))
            .Finished(Stuff)
            .At(at?.Hour ?? 12, at?.Minute ?? 40).Given(new RunEvent.StepStarted(Roast));
    }

    static KitchenStory ByTheUk() => Roasting(new CoreWanted(74, duck.Joint), authority: Region.UnitedKingdom);

    [Fact]
    public void A_child_lays_no_foil_over_what_is_hot()
    {
        var story = Roasting().Given(new RunEvent.PersonJoined(TobiPhone, "Tobi", Role.Helper, Tobi));
        story.When(TobiPhone, new RunCommand.SetFoil(Roast, true)).Refused(new Refusal.NotForChildren(Roast));
        story.When(TobiPhone, new RunCommand.CoverRest(Roast, RestUnder.FoilAndCloths, 22)).Refused(new Refusal.NotForChildren(Roast));
    }

    [Fact]
    public void Foil_over_it_while_it_roasts_makes_it_later()
    {
        KitchenStory Half(bool isUnderFoil)
        {
            var story = Read(ByTheUk(), (20, 9), (40, 21));
            return Read(isUnderFoil ? story.When(IvoPhone, new RunCommand.SetFoil(Roast, true)) : story, (41, 22));
        }

        DateTimeOffset Done(KitchenStory story) => story.Run.StateOf(Roast).Word!.Likely!.Value;
        Assert.True(Done(Half(isUnderFoil: true)) > Done(Half(isUnderFoil: false)).AddMinutes(3));
        var under = Half(isUnderFoil: true);
        Assert.Equal(Clock(13, 20), under.Board().Now.Select(card => card.Core?.Foil).First(foil => foil is not null)!.Value.From);
        under.When(Host, new RunCommand.SetFoil(Roast, true)).Then();
        under.When(Host, new RunCommand.SetFoil(Roast, false));
        Assert.Equal([new FoilSpan(Clock(13, 20), Clock(13, 21))], under.Run.StateOf(Roast).Foil);
        under.When(Host, new RunCommand.SetFoil(Carve, true)).Refused(new Refusal.NoCore(Carve));
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
        Roasting().At(15, 1).When(Host, new RunCommand.ReadCore(Roast, 75, Clock(13))).Refused(new Refusal.OutOfRange("Minutes since it was read", 0, 120));
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

    // 145 °F is 63 °C, 100 °F is 38 °C: neither is 74 °C.
    [Fact]
    public void Where_nothing_is_known_of_it_a_number_in_Fahrenheit_is_not_done()
    {
        var story = Read(Roasting(new CoreWanted(74, null)), (60, 145));
        Assert.Equal(CoreVerdict.Impossible, story.Run.StateOf(Roast).Word!.Verdict);
        Assert.Equal(62.8, story.Run.StateOf(Roast).Word!.Celsius!.Value, 0.05);

        story = Read(Roasting(new CoreWanted(74, null)), (60, 100));
        Assert.Equal(CoreVerdict.OnceMore, story.Run.StateOf(Roast).Word!.Verdict);
        Assert.IsType<Refusal.CoreNotReached>(WhyNotDone(story, 61));
        Assert.Equal(CoreVerdict.Reached, Read(story, (62, 76)).Run.StateOf(Roast).Word!.Verdict);
    }

    // Food Standards Agency (UK), cooking your food: 70 °C for 2 minutes, or its equivalents.
    [Fact]
    public void What_is_to_be_kept_hot_is_done_only_when_readings_say_that_it_was()
    {
        var kept = new CoreWanted(70, null, Minutes: 2);
        var story = Read(Roasting(kept), (60, 66), (70, 70));
        Assert.Equal(new Refusal.CoreNotLongEnough(Roast, 70, 2, Clock(13, 52)), WhyNotDone(story, 71));
        Assert.Equal(new Refusal.CoreNotLongEnough(Roast, 70, 2, Clock(13, 55)), WhyNotDone(Read(story, (71, 66), (73, 70)), 73));
        Read(story, (75, 71)).When(Host, new RunCommand.FinishStep(Roast)).Then(new RunEvent.StepFinished(Roast));
    }

    [Fact]
    public void What_stays_in_when_it_is_done_is_over_however_often_it_is_read()
    {
        var story = Read(Roasting(new CoreWanted(74, null)), (60, 58), (70, 74)).At(13, 51);
        var call = story.Calls().Single(one => one.Kind == CallKind.Out && one.Step == Roast);
        story = Read(story.When(Host, new RunCommand.Acknowledge(call.Id)), (75, 77), (80, 79)).At(14, 0);
        Assert.Equal(Clock(13, 50), story.Board().Now.Single(one => one.Step.Id == Roast && one.Tend is null).Ends);
        Assert.DoesNotContain(story.Calls(), one => one.Kind == CallKind.Out && one.Step == Roast && !one.IsAcknowledged);
    }

    [Fact]
    public void A_reading_that_moves_nothing_makes_no_plan_on_offer_old()
    {
        var story = Read(Roasting(), (20, 9), (40, 21), (60, 38));
        var basis = story.Run.PlanBasis;
        Assert.Equal(story.Run.Sequence, basis);
        Assert.Equal(basis, Read(story, (62, 500)).Run.PlanBasis);
    }

    [Fact]
    public void A_joint_that_was_not_in_after_all_begins_without_its_readings()
    {
        var story = Read(Roasting(new CoreWanted(74, null)), (60, 74), (62, 75)).When(Host, new RunCommand.TakeBack(Roast)).When(Host, new RunCommand.StartStep(Roast));
        Assert.Empty(story.Run.StateOf(Roast).Readings);
        Assert.IsType<Refusal.CoreNotReached>(WhyNotDone(story, 63));
    }

    // The oven waits for a joint that is late; by the plan's own clock it would be only warm by then.
    [Fact]
    public void A_joint_that_went_in_late_is_foretold_in_the_oven_it_is_in()
    {
        (int, decimal)[] readings = [(20, 9), (40, 21), (60, 38)];
        var onTime = Read(Roasting(), readings).Run.StateOf(Roast).Word!;
        var late = readings.Aggregate(Roasting(at: (14, 10)), (so, one) => so.At(14 + ((10 + one.Item1) / 60), (10 + one.Item1) % 60).When(Host, new RunCommand.ReadCore(Roast, one.Item2))).Run.StateOf(Roast).Word!;
        Assert.Equal(onTime with { Earliest = null, Likely = null, Latest = null }, late with { Earliest = null, Likely = null, Latest = null });
        Assert.Equal(90, (late.Likely!.Value - onTime.Likely!.Value).TotalMinutes, 0.1);
    }

    // The plan lets the oven cool from 14:10 on; a duck that is not done by then stays in.
    [Fact]
    public void The_oven_stays_hot_for_what_takes_longer_than_planned()
    {
        var slow = Read(Roasting(), (20, 6), (40, 13), (60, 25), (80, 37)).Run.StateOf(Roast).Word!;
        Assert.Equal(CoreVerdict.Expected, slow.Verdict);
        Assert.True(slow.Likely > Clock(14, 20));
    }

    [Fact]
    public void Without_a_forecast_one_reading_far_from_the_others_ends_nothing()
    {
        var leapt = Read(Roasting(new CoreWanted(74, null)), (20, 20), (30, 76));
        Assert.Equal(CoreVerdict.OnceMore, leapt.Run.StateOf(Roast).Word!.Verdict);
        Assert.Equal(CoreVerdict.Reached, Read(leapt, (32, 75)).Run.StateOf(Roast).Word!.Verdict);
    }

    static Refusal WhyNotDone(KitchenStory story, int minutes) => Assert.IsType<Decision.Refused>(
        story.Run.Decide(new Tap(Command(7), Host, new RunCommand.FinishStep(Roast)), Clock(12, 40).AddMinutes(minutes))).Why;

    [Fact]
    public void What_has_no_core_temperature_or_is_not_in_the_heat_cannot_be_read()
    {
        Roasting().When(Host, new RunCommand.ReadCore(Carve, 60)).Refused(new Refusal.NoCore(Carve));
        Roasting().When(Host, new RunCommand.TakeBack(Roast)).When(Host, new RunCommand.ReadCore(Roast, 60)).Refused(new Refusal.NotStarted(Roast));
    }
}
