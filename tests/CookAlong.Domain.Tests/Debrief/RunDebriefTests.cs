using CookAlong.Domain.Debrief;
using CookAlong.Domain.FoodSafety;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Runs;
using CookAlong.Domain.Tests.Runs;
using CsCheck;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Domain.Tests.Debrief;

public sealed class RunDebriefTests
{
    [Fact]
    public void A_lunch_that_went_as_planned_has_nothing_to_tell()
    {
        var debrief = RunDebrief.Of(Cooked().Log);

        Assert.Equal(0, Assert.Single(debrief.Courses).LateMinutes);
        Assert.Empty(debrief.Slips);
        Assert.Empty(debrief.Calls.Where(call => !call.IsMissed));
        Assert.Equal(0, debrief.ByNewPlans);
        Assert.All(debrief.Steps, step => Assert.Equal(step.PlannedEnd.Utc, step.Finished));
    }

    [Fact]
    public void What_took_longer_than_the_slack_after_it_cost_the_table_the_rest()
    {
        // The roast took 20 minutes longer; 10 of them were spare: rest 30, then carve at 14:40 until 14:55, table at 15:00.
        var debrief = RunDebrief.Of(Cooked((Roast, 0, 20)).Log);

        var slip = Assert.Single(debrief.Slips);
        Assert.Equal((Roast, 0, 20, 15), (slip.Step, slip.BeganLate, slip.TookLonger, slip.TableMinutes));
        Assert.Equal(15, Assert.Single(debrief.Courses).LateMinutes);
        Assert.Equal(new Absorbed(null, Main, 5), Assert.Single(slip.Absorbed));
        Assert.Equal(Clock(14, 10), slip.From);
        Assert.Equal(new Sign(Clock(14, 30), SignKind.Finished), slip.Noticed);
    }

    [Fact]
    public void A_slip_that_was_announced_was_noticed_then()
    {
        var story = KitchenStory.Begun();
        Play(story, Events((Roast, 0, 20)).Append((Clock(14, 2), new RunEvent.TimeAdded(Roast, 20))));
        var slip = Assert.Single(RunDebrief.Of(story.Log).Slips);
        Assert.Equal(new Sign(Clock(14, 2), SignKind.TimeAdded), slip.Noticed);
    }

    [Fact]
    public void Of_two_slips_each_is_told_what_the_table_would_have_been_without_it()
    {
        // Trimming has half an hour to spare and costs nothing; stuffing pushes the roast and all after it.
        var debrief = RunDebrief.Of(Cooked((Stuff, 0, 12), (Trim, 0, 10)).Log);

        Assert.Equal([(Stuff, 12, 7), (Trim, 10, 0)], debrief.Slips.Select(slip => (slip.Step, slip.Minutes, slip.TableMinutes)));
        Assert.Equal(7, debrief.Courses[0].LateMinutes);
    }

    [Fact]
    public void Begun_late_is_a_slip_of_who_was_free_to_begin()
    {
        var slip = Assert.Single(RunDebrief.Of(Cooked((Trim, 8, 0)).Log).Slips);
        Assert.Equal((Trim, 8, 0, 0), (slip.Step, slip.BeganLate, slip.TookLonger, slip.TableMinutes));
        Assert.Equal(Clock(14, 20), slip.From);
    }

    [Fact]
    public void Begun_late_at_the_end_costs_the_table_what_it_had_not_to_spare()
    {
        var slip = Assert.Single(RunDebrief.Of(Cooked((Carve, 9, 0)).Log).Slips);
        Assert.Equal((Carve, 9, 4), (slip.Step, slip.BeganLate, slip.TableMinutes));
    }

    [Fact]
    public void A_call_that_was_answered_late_is_noted()
    {
        var call = Assert.Single(RunDebrief.Of(Cooked((Trim, 8, 0)).Log).Calls, call => !call.IsMissed);
        Assert.Equal((CallKind.Begin, Trim, 8), (call.Kind, call.Step, call.LateMinutes));
        Assert.Equal(Clock(14, 20), call.Due);
    }

    [Fact]
    public void A_tend_that_nobody_did_was_missed() =>
        Assert.Equal([Roast, Roast], RunDebrief.Of(Cooked().Log).Calls.Where(call => call is { IsMissed: true, Kind: CallKind.Tend }).Select(call => call.Step));

    [Fact]
    public void A_dish_waited_from_its_last_step_to_the_table()
    {
        var waits = RunDebrief.Of(Cooked().Log).Waits.ToDictionary(wait => wait.Dish.Value, wait => wait.Minutes);
        Assert.Equal((5, 5, 30), (waits["goose"], waits["dumplings"], waits["beans"]));
    }

    // UK Food Standards Agency, Hot holding: below 63 °C once, for up to two hours.
    [Theory]
    [InlineData(0, 40, false)]
    [InlineData(-100, 140, true)]
    public void What_stood_out_of_heat_and_cold_before_the_table_is_looked_back_on(int rolledLater, int minutes, bool isTooLong)
    {
        var meal = SmallMeal.Meal with { Dishes = [.. SmallMeal.Meal.Dishes.Select(dish => dish.Id.Value == "dumplings" ? dish with { Ingredients = [new Ingredient("eggs", 3, null, null, [])] } : dish)] };
        var story = new KitchenStory().Given([.. Run.Start(meal, SmallMeal.Plan, Host, "Maren", Maren, Region.UnitedKingdom)]);
        Play(story, Events((Roll, rolledLater, 0)));
        var stood = Assert.Single(RunDebrief.Of(story.Log).Standing, one => one.Dish.Value == "dumplings");
        // Raw eggs until they boil at 14:15, and from 14:35, when they are out, to the table at 15:00.
        Assert.Equal((minutes, isTooLong), (stood.Out.TotalMinutes, stood.IsTooLong));
        Assert.Empty(RunDebrief.Of(Cooked().Log).Standing);
    }

    [Fact]
    public void What_was_not_finished_makes_no_table_time_and_is_no_slip()
    {
        var story = KitchenStory.Begun();
        Play(story, Events().Where(one => !IsAbout(one.Event, Carve)));
        var debrief = RunDebrief.Of(story.At(15, 5).Given(new RunEvent.RunEnded()).Log);

        Assert.Null(Assert.Single(debrief.Courses).Ready);
        Assert.Empty(debrief.Slips);
        Assert.DoesNotContain(debrief.Waits, wait => wait.Dish.Value == "goose");
        Assert.Contains(debrief.Calls, call => call is { IsMissed: true, Kind: CallKind.Begin } && call.Step == Carve);
    }

    [Fact]
    public void A_dish_that_was_left_out_is_marked_and_holds_nothing_up()
    {
        var story = KitchenStory.Begun();
        Play(story, Events().Where(one => !IsAbout(one.Event, Trim))
            .Append((Clock(13), new RunEvent.DishDropped(new DishId("beans")))));
        var debrief = RunDebrief.Of(story.Log);

        Assert.Equal([Trim], debrief.Steps.Where(step => step.WasLeftOut).Select(step => step.Step));
        Assert.Equal(0, debrief.Courses[0].LateMinutes);
    }

    [Fact]
    public void Who_did_what_is_told_beside_a_fair_part()
    {
        var shares = RunDebrief.Of(Cooked().Log).Shares.ToDictionary(share => share.Name);
        Assert.Equal((2, 35, 35), (shares["Maren"].Steps, shares["Maren"].PlannedMinutes, shares["Maren"].Minutes));
        Assert.Equal(25, shares["Tobi"].Minutes);
        Assert.Equal(20, shares["Ivo"].Minutes);
        // Maren was here for 160 minutes, Tobi for 160 as a child, Ivo for 90: of 80 minutes' work.
        Assert.Equal((39, 19, 22), (shares["Maren"].FairMinutes, shares["Tobi"].FairMinutes, shares["Ivo"].FairMinutes));
        Assert.DoesNotContain(shares.Values, share => share.IsMuch);
    }

    [Fact]
    public void What_a_new_plan_moved_is_nobodys_slip_and_its_cause_keeps_its_price()
    {
        // The roast will be 20 minutes longer, so the dumplings are moved by as much as the carving.
        var story = KitchenStory.Begun();
        Play(story, Events((Roast, 0, 20), (Roll, 15, 0)).Append((Clock(13, 30), new RunEvent.PlanAccepted(Later(15, Roll, Boil, Serve, Carve)))));
        var debrief = RunDebrief.Of(story.Log);

        Assert.Equal([(Roast, 15)], debrief.Slips.Select(slip => (slip.Step, slip.TableMinutes)));
        Assert.Equal((15, 0), (debrief.Courses[0].LateMinutes, debrief.ByNewPlans));
    }

    [Fact]
    public void Lateness_that_a_new_plan_brought_without_a_slip_is_the_plans()
    {
        var story = KitchenStory.Begun();
        Play(story, Events((Serve, 25, 0)).Append((Clock(13, 30), new RunEvent.PlanAccepted(Later(25, Serve)))));
        var debrief = RunDebrief.Of(story.Log);

        Assert.Empty(debrief.Slips);
        Assert.Equal((20, 20), (debrief.Courses[0].LateMinutes, debrief.ByNewPlans));
    }

    static CookAlong.Domain.Planning.Plan Later(int minutes, params StepId[] steps) => SmallMeal.Plan with
    {
        Steps = [.. SmallMeal.Plan.Steps.Select(step => steps.Contains(step.Step) ? step with { Start = step.Start + minutes, End = step.End + minutes } : step)],
    };

    [Fact]
    public void With_nothing_taken_away_the_replay_is_what_happened()
    {
        // Whatever slips, the table was ready when its last dish was, and what the slips cost is never more than that.
        Check.Sample(
            Gen.Select(Gen.Int[0, 25], Gen.Int[-5, 25], Gen.Int[0, 6]).Array[0, 4],
            slips =>
            {
                var debrief = RunDebrief.Of(Cooked([.. slips.DistinctBy(one => one.Item3).Select(one => (Steps[one.Item3], one.Item1, one.Item2))]).Log);
                var ready = debrief.Steps.Max(step => step.Step == Roast ? step.Finished!.Value.AddMinutes(30) : step.Finished!.Value);
                return debrief.Courses[0].Ready!.Value.Utc == ready && debrief.ByNewPlans == 0 && debrief.Slips.All(slip => slip.TableMinutes <= debrief.Courses[0].LateMinutes && slip.TableMinutes <= slip.Minutes);
            },
            iter: 200);
    }

    static readonly StepId[] Steps = [Stuff, Roast, Carve, Roll, Boil, Serve, Trim];

    /// <summary>Each step as planned, later by its own delay and longer by its own minutes, after what it waits for and after its helper's last work.</summary>
    static KitchenStory Cooked(params (StepId Step, int Later, int Longer)[] slips)
    {
        var story = KitchenStory.Begun();
        Play(story, Events(slips));
        return story;
    }

    static IEnumerable<(DateTimeOffset At, RunEvent Event)> Events(params (StepId Step, int Later, int Longer)[] slips)
    {
        var ends = new Dictionary<StepId, DateTimeOffset>();
        DateTimeOffset After(StepId before, int least) => ends[before].AddMinutes(least);
        foreach (var (step, waits) in new (StepId, Func<DateTimeOffset[]>)[]
        {
            (Stuff, () => []), (Roast, () => [After(Stuff, 0)]), (Roll, () => []), (Boil, () => [After(Roll, 0)]), (Trim, () => []),
            (Carve, () => [After(Roast, 30), After(Stuff, 0)]), (Serve, () => [After(Boil, 0), After(Roll, 0), After(Trim, 0)]),
        })
        {
            var slip = slips.FirstOrDefault(one => one.Step == step);
            var planned = SmallMeal.Plan.Step(step);
            var start = waits().Append(planned.Start.Utc).Max().AddMinutes(slip.Later);
            ends[step] = start.AddMinutes(planned.Minutes + slip.Longer);
            yield return (start, new RunEvent.StepStarted(step));
            yield return (ends[step], new RunEvent.StepFinished(step));
        }
    }

    static bool IsAbout(RunEvent happened, StepId step) => happened is RunEvent.StepStarted { Step: var started } ? started == step : happened is RunEvent.StepFinished { Step: var finished } && finished == step;

    static void Play(KitchenStory story, IEnumerable<(DateTimeOffset At, RunEvent Event)> events)
    {
        foreach (var (at, happened) in events.OrderBy(one => one.At))
        {
            story.At(at.Hour, at.Minute).Given(happened);
        }
    }
}
