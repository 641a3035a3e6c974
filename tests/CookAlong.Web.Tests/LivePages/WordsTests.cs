using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Live.Wording;
using static CookAlong.Web.Tests.LivePages.SampleKitchen;
using Role = CookAlong.Domain.Runs.Role;

namespace CookAlong.Web.Tests.LivePages;

public sealed class WordsTests
{
    static readonly Words Words = new(SampleKitchen.Meal, People);

    [Fact]
    public void A_refusal_names_the_step_and_the_time_on_the_kitchens_clock() =>
        Assert.Equal("“Rough up the boiled potatoes” was done at 13:21 already.", Words.Of(new Refusal.AlreadyFinished(Rough.Id, At(13, 21))));

    [Fact]
    public void A_refusal_says_who_was_first() =>
        Assert.Equal("Maren took “Peel the celeriac” first.", Words.Of(new Refusal.Taken(Peel.Id, Maren)));

    [Fact]
    public void A_refusal_says_what_a_step_waits_for() =>
        Assert.Equal("“Rough up the boiled potatoes” waits for “Boil the potatoes”, which is not done yet.", Words.Of(new Refusal.WaitsFor(Rough.Id, Boil.Id)));

    [Fact]
    public void That_a_job_is_not_yours_fits_starting_finishing_lengthening_and_letting_go() =>
        Assert.Equal("“Peel the celeriac” is not your job. Whoever has it can do that, or the host.", Words.Of(new Refusal.NotYours(Peel.Id)));

    [Fact]
    public void Every_refusal_has_a_sentence_that_ends()
    {
        var every = new Refusal[]
        {
            new Refusal.RunOver(), new Refusal.NotInThisRun(), new Refusal.NotYourRole(Role.Host), new Refusal.NotYourRole(Role.Helper), new Refusal.NotYourRole(Role.Watcher),
            new Refusal.UnknownStep(Peel.Id), new Refusal.AlreadyFinished(Peel.Id, At(13, 0)), new Refusal.AlreadyStarted(Peel.Id, At(13, 0)), new Refusal.NotStarted(Peel.Id),
            new Refusal.WaitsFor(Peel.Id, Boil.Id), new Refusal.OthersWentOn(Boil.Id, Rough.Id), new Refusal.Paused(), new Refusal.NotPaused(), new Refusal.Taken(Peel.Id, Ivo),
            new Refusal.NotYours(Peel.Id), new Refusal.NotForChildren(Peel.Id), new Refusal.NeedsSkill(Peel.Id, "knife"), new Refusal.UnknownHelper(Ivo), new Refusal.HelperTaken(Ivo),
            new Refusal.UnknownTend(Peel.Id), new Refusal.TendAlreadyDone(Peel.Id, At(13, 0)), new Refusal.UnknownCall(GooseOut.Id), new Refusal.PlanIsStale(),
            new Refusal.UnknownDish(new("flan")), new Refusal.OnlyDish(new("flan")), new Refusal.DishIsThere(new("flan")), new Refusal.NothingToCook("Olives"), new Refusal.NoPlaceFor("Bake the flan"), new Refusal.UnknownCourse(new("sweet")), new Refusal.TableTimePast(new("sweet")), new Refusal.UnknownOven(new("oven-9")),
            new Refusal.OutOfRange("Minutes", 1, 120), new Refusal.HostStays(), new Refusal.NothingToTakeBack(), new Refusal.NoPlanBefore(), new Refusal.NotHere(Ivo),
            new Refusal.NoCore(Peel.Id), new Refusal.CoreNotReached(Peel.Id, 74, null, null), new Refusal.CoreNotLongEnough(Peel.Id, 70, 2, At(13, 2)), new Refusal.CoreNotReached(Peel.Id, 74, new CoreReading(At(13, 0), 61.5m, new CoreWord(CoreVerdict.NoForecast)), null),
        };
        var kinds = typeof(Refusal).GetNestedTypes().Where(type => type.IsSubclassOf(typeof(Refusal)));

        Assert.Empty(kinds.Except(every.Select(one => one.GetType())));
        Assert.All(every, one => Assert.EndsWith(".", Words.Of(one), StringComparison.Ordinal));
    }

    [Fact]
    public void A_step_or_a_person_the_meal_does_not_know_still_gives_a_sentence() =>
        Assert.Equal("somebody else took that step first.", Words.Of(new Refusal.Taken(new StepId("gone"), new HelperId("stranger"))));

    [Fact]
    public void A_call_for_a_tray_says_which_way_it_goes()
    {
        Assert.Equal("Tray out: Goose out, then cover it with foil", Words.Of(GooseOut));
        Assert.Equal("On the heat: Simmer the giblet stock", Words.Of(Call("in:gravy-stock", At(12, 42), CallKind.In, CallPriority.Medium, Stock.Id)));
    }

    [Fact]
    public void A_call_for_the_dial_says_how_hot_or_off()
    {
        Assert.Equal("Turn the oven to 200\u00a0°C, fan 180", Words.Of(DialUp));
        Assert.Equal("Turn the oven off", Words.Of(DialUp with { Dial = new DialSetting(Min(15, 0), 0) }));
    }

    [Fact]
    public void A_call_for_a_tend_says_whose_food_it_is() =>
        Assert.Equal("Tend: Baste it (Goose)", Words.Of(Call("tend:goose-roast:0:3", At(11, 24), CallKind.Tend, CallPriority.Medium, RoastGoose.Id, new Tend("Baste it", 1, 30, null, 3, false))));

    [Fact]
    public void A_call_for_the_table_names_the_course() =>
        Assert.Equal("Pudding: to the table in 10 minutes", Words.Of(Call("table:pudding", At(16, 0), CallKind.Table, CallPriority.Low, course: new CourseId("pudding"))));

    [Fact]
    public void Each_priority_has_its_own_word() =>
        Assert.Equal(3, Enum.GetValues<CallPriority>().Select(Words.Of).Distinct().Count());

    [Fact]
    public void A_slip_says_what_it_costs_and_who_is_behind()
    {
        Assert.Equal("Main course at 15:06 instead of 15:00.", Words.Slip(Crowded));
        Assert.Equal("Behind: “Rough up the boiled potatoes” and “Peel the celeriac”.", Words.Causes(Crowded.Slip!));
    }

    [Fact]
    public void An_offered_plan_says_exactly_whose_next_step_changes()
    {
        Assert.Equal("Maren instead of Ivo: “Peel the celeriac” at 13:30, not 13:35", Words.Change(Offer.Changes[0]));
        Assert.Equal("Maren: “Potatoes and squash into the oven” at 13:34, not 13:31", Words.Change(Offer.Changes[1]));
    }

    [Fact]
    public void A_pause_point_names_its_step_and_a_held_kitchen_goes_on_cooking()
    {
        Assert.Contains("after “Rough up the boiled potatoes”", Words.Pause(Paused.Pause!), StringComparison.Ordinal);
        Assert.Contains("what cooks goes on cooking", Words.Pause(new BoardPause(At(13, 0), null)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(160, "2:40")]
    [InlineData(0, "0:00")]
    [InlineData(-30, "+0:30")]
    [InlineData(5999, "99:59")]
    [InlineData(6300, "1 h 45")]
    public void A_countdown_is_read_at_a_glance(int seconds, string shown) =>
        Assert.Equal(shown, WallClock.Left(TimeSpan.FromSeconds(seconds)));

    [Theory]
    [InlineData(9, "9 min")]
    [InlineData(99, "99 min")]
    [InlineData(125, "2 h 5 min")]
    [InlineData(1431, "23 h")]
    [InlineData(2880, "2 days")]
    [InlineData(4319, "2 days")]
    public void Time_in_hand_is_said_as_large_as_it_is_and_no_larger(int minutes, string said) => Assert.Equal(said, Words.Room(minutes));

    [Fact]
    public void A_table_that_comes_hours_late_is_said_in_hours() => Assert.Equal("2 h 5 min late", Words.Late(new BoardSlip(125, [])));

    [Fact]
    public void A_child_reads_a_kind_word_in_every_state_of_a_job_and_no_word_of_being_late()
    {
        var kind = Enum.GetValues<CardState>().Select(state => Words.Kindly(SampleKitchen.Card(Dumplings, state, At(13, 0), At(13, 15)))).ToList();
        Assert.All(kind, words => Assert.DoesNotMatch("(?i)late|over|hurry|urgent", words));
        Assert.Equal("Well done!", kind[(int)CardState.Done]);
        Assert.Equal((null, "Well done: one job finished!", "Well done: 3 jobs finished!"), (Words.Praise(0), Words.Praise(1), Words.Praise(3)));
    }

    [Fact]
    public void The_clock_follows_the_kitchens_zone_and_not_the_servers() =>
        Assert.Equal("13:24", new WallClock(Zone).Show(At(13, 24).ToUniversalTime()));

    [Fact]
    public void Another_day_is_said_with_the_hour_by_the_kitchens_midnight_and_not_the_servers()
    {
        var late = new WallClock(Zone, At(23, 50).ToUniversalTime());

        Assert.Equal("23:59", late.Show(At(23, 59)));
        Assert.Equal("Mon 00:00", late.Show(At(23, 59).AddMinutes(1)));
        Assert.Equal("Sat 23:59", late.Show(At(0, 0).AddMinutes(-1)));
    }
}
