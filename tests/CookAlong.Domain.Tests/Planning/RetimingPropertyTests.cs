using System.Collections.Immutable;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CsCheck;
using static CookAlong.Domain.Tests.MealBuilder;

namespace CookAlong.Domain.Tests.Planning;

public sealed class RetimingPropertyTests
{
    const int Samples = 300;

    [Fact]
    public void A_random_plan_holds() => Each(plan => Assert.True(RandomPlan.Holds(plan.Meal, plan.Plan)));

    [Fact]
    public void Nothing_moves_while_nothing_has_happened() => Each(one =>
    {
        var retimed = Retiming.MoveRight(one.Meal, one.Plan, [], Zero);

        Assert.All(one.Plan.Steps, step => Assert.Equal((step.Start, step.End), retimed.Steps[step.Step]));
        Assert.All(one.Plan.Tends, tend => Assert.Equal(tend.At, retimed.Tends[(tend.Step, tend.Tend, tend.Turn)]));
        Assert.All(one.Plan.Courses, course => Assert.Equal(course.TableTime, retimed.TableTimes[course.Course]));
    });

    [Fact]
    public void Nothing_that_has_not_begun_comes_earlier_than_planned_or_now() => Each((one, now) =>
    {
        var facts = FactsAt(one.Plan, now, late: 7);

        var retimed = Retiming.MoveRight(one.Meal, one.Plan, facts, now);

        foreach (var step in one.Plan.Steps.Where(step => facts.All(fact => fact.Step != step.Step)))
        {
            Assert.True(retimed.Steps[step.Step].Start >= step.Start && retimed.Steps[step.Step].Start >= now);
            Assert.Equal(step.Minutes, retimed.Steps[step.Step].End - retimed.Steps[step.Step].Start);
        }
    });

    [Fact]
    public void A_step_may_slip_by_its_slack_and_by_no_minute_more() => Each(one =>
    {
        var slack = Slack.Of(one.Meal, one.Plan);
        foreach (var step in one.Plan.Steps)
        {
            Assert.True(StillServes(NotBefore(one.Meal, step, slack[step.Step]), one.Plan), $"{step.Step} slips by {slack[step.Step]}");
            var later = NotBefore(one.Meal, step, slack[step.Step] + 1);
            Assert.False(StillServes(later, one.Plan) && !IsLeftForLater(later, one.Plan), $"{step.Step} slips by {slack[step.Step] + 1}");
        }
    });

    [Fact]
    public void The_kitchen_may_pause_for_its_breathing_room_and_no_minute_more() => Each((one, now) =>
    {
        var room = Retiming.MoveRight(one.Meal, one.Plan, FactsAt(one.Plan, now), now).BreathingRoom;

        Assert.True(ServesAfterPause(one, now, room), $"pauses for {room}");
        // A tend that comes due in the pause counts as work still to do, though its step may be over before anybody moves again.
        Assert.False(one.Plan.Tends.IsEmpty && ServesAfterPause(one, now, room + 1), $"pauses for {room + 1}");
    });

    static void Each(Action<RandomPlan> check) => Each((one, _) => check(one));

    // Fresh plans each time; a failure names the seed that shows it again.
    static void Each(Action<RandomPlan, Minute> check) => Gen.Int[0, int.MaxValue - 1].Sample(
        seed =>
        {
            var one = new RandomPlan(seed);
            check(one, Zero + new Random(seed).Next(0, one.Meal.FirstTableTime - Zero));
        },
        iter: Samples);

    /// <summary>Somebody goes home and does a job of this plan when they are back: slack ends before that, whatever the table says.</summary>
    static bool IsLeftForLater(Meal meal, Plan plan)
    {
        var retimed = Retiming.MoveRight(meal, plan, [], Zero);
        Window? Stay(HelperId id, Minute at) => meal.Helpers.Single(helper => helper.Id == id).Available.Cast<Window?>().FirstOrDefault(span => at < span!.Value.To);
        return plan.Steps.Any(step => step.Helpers.Any(helper => Stay(helper, step.Start) != Stay(helper, retimed.Steps[step.Step].Start)))
            || plan.Tends.Any(tend => Stay(tend.Helper, tend.At) != Stay(tend.Helper, retimed.Tends[(tend.Step, tend.Tend, tend.Turn)]));
    }

    /// <summary>The same step kept from starting for some minutes more, by nothing but the clock.</summary>
    static Meal NotBefore(Meal meal, PlannedStep planned, int minutes) => meal with
    {
        Dishes = [.. meal.Dishes.Select(dish => dish with
        {
            Steps = [.. dish.Steps.Select(step => step.Id == planned.Step
                ? step with { Window = new(planned.Start + minutes, step.Window?.To ?? At(100_000)) }
                : step)],
        })],
    };

    static bool StillServes(Meal meal, Plan plan)
    {
        var retimed = Retiming.MoveRight(meal, plan, [], Zero);
        return plan.Courses.All(course => retimed.TableTimes[course.Course] == course.TableTime) && RandomPlan.Holds(meal, Moved(retimed, plan, meal));
    }

    static bool ServesAfterPause(RandomPlan one, Minute now, int minutes)
    {
        var (meal, plan) = (one.Meal, one.Plan);
        var facts = FactsAt(plan, now).Select(fact =>
            fact.IsFinished ? fact
            : WayOf(meal, plan.Step(fact.Step)).Attention == Attention.HandsOn ? fact with { End = fact.End + minutes }
            : fact with { IsFinished = fact.End <= now + minutes }).ToArray();
        var lengths = facts.ToDictionary(fact => fact.Step, fact => fact.End - fact.Start);
        var retimed = Retiming.MoveRight(meal, plan, facts, now + minutes);
        var asItWent = meal with
        {
            Dishes = [.. meal.Dishes.Select(dish => dish with
            {
                Steps = [.. dish.Steps.Select(step => lengths.TryGetValue(step.Id, out var length) ? step with { Way = step.Way with { Minutes = Durations.Exactly(length) }, Window = null } : step)],
            })],
        };
        return now + minutes <= meal.FirstTableTime
            && plan.Courses.All(course => retimed.TableTimes[course.Course] == course.TableTime)
            && RandomPlan.Holds(asItWent, Moved(retimed, plan, asItWent), lengths.Keys);
    }

    static Way WayOf(Meal meal, PlannedStep step) => meal.Step(step.Step).WayOf(step.Option);

    static Plan Moved(Retimed retimed, Plan plan, Meal meal)
    {
        var moved = plan with
        {
            Steps = [.. plan.Steps.Select(step => step with { Start = retimed.Steps[step.Step].Start, End = retimed.Steps[step.Step].End })],
            // Tends that are done, or whose step ended without them, take nobody's time any more.
            Tends = [.. from tend in plan.Tends
                        where retimed.Tends.ContainsKey((tend.Step, tend.Tend, tend.Turn))
                        select tend with { At = retimed.Tends[(tend.Step, tend.Tend, tend.Turn)] }],
        };
        return moved with { Holds = [.. plan.Holds.Select(hold => hold with { From = meal.Dishes.Single(dish => dish.Id == hold.Dish).Steps.Max(step => moved.Step(step.Id).End) })] };
    }

    /// <summary>Everything went as planned until now; what runs ends late by some minutes.</summary>
    static ImmutableArray<StepFact> FactsAt(Plan plan, Minute now, int late = 0) =>
    [
        .. plan.Steps.Where(step => step.Start < now).Select(step => step.End <= now
            ? new StepFact(step.Step, step.Start, step.End, IsFinished: true, [])
            : new StepFact(step.Step, step.Start, step.End + late, IsFinished: false,
                [.. plan.Tends.Where(tend => tend.Step == step.Step && tend.At < now).Select(tend => (tend.Tend, tend.Turn))])),
    ];
}
