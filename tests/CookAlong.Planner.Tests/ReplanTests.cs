using System.Collections.Immutable;
using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Planner.Quick;
using CsCheck;
using static CookAlong.Planner.Tests.Cooking;
using static CookAlong.Planner.Tests.PropertyTests;

namespace CookAlong.Planner.Tests;

public sealed class ReplanTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory, InlineData(Who.Solver), InlineData(Who.Quick)]
    public void Where_nothing_slipped_nothing_moves(Who who)
    {
        var meal = CommonPracticeTests.RoastDinner();
        var told = Plan(meal);
        var now = told.Step(new StepId("bird-roast")).Start + 30;

        var again = Replan(who, meal, told, now);

        Assert.Equal(told.Steps.Select(step => (step.Step, step.Start, step.End)), again.Steps.Select(step => (step.Step, step.Start, step.End)));
        Assert.Equal(told.Steps.SelectMany(step => step.Helpers), again.Steps.SelectMany(step => step.Helpers));
    }

    [Theory, InlineData(Who.Solver), InlineData(Who.Quick)]
    public void What_has_begun_stays_and_the_rest_starts_from_now_on(Who who)
    {
        var meal = CommonPracticeTests.RoastDinner();
        var told = Plan(meal);
        var roast = told.Step(new StepId("bird-roast"));
        var now = roast.End - 5;

        var again = Replan(who, meal, told, now, slipped: roast.Step, by: 20);

        Assert.NotEqual(PlanStatus.None, again.Status);
        Assert.Equal((roast.Start, roast.End + 20), (again.Step(roast.Step).Start, again.Step(roast.Step).End));
        Assert.All(
            again.Steps.Where(step => told.Step(step.Step).Start >= now),
            step => Assert.True(step.Start >= now));
        Assert.True(again.Step(new StepId("bird-brown")).Start >= roast.End + 20);
    }

    [Theory, InlineData(Who.Solver), InlineData(Who.Quick)]
    public void A_slip_costs_table_time_no_more_than_the_cushion_leaves_of_it(Who who)
    {
        var meal = Meal(120, Kitchen(), [Cook("cook")], Dish("soup", OnTheSide(60, 30), Hands("soup-cut", 10), Alone("soup-boil", 30, OnRings())));
        var told = Plan(meal);
        var cut = told.Step(new StepId("soup-cut"));

        var again = Replan(who, meal, told, cut.Start + 1, slipped: cut.Step, by: 8);

        Assert.Equal(8 - PlanRequest.UsualCushion, again.Cost.LateMinutes);
        Assert.Equal(cut.End + 8, again.Step(cut.Step).End);
    }

    [Theory, InlineData(Who.Solver), InlineData(Who.Quick)]
    public void People_keep_their_steps_where_they_can(Who who)
    {
        var meal = Meal(
            120, Kitchen(), [Cook("ann"), Cook("ben")],
            Dish("one", OnTheSide(90, 90), Hands("one-a", 10), Hands("one-b", 10), Hands("one-c", 10)),
            Dish("two", OnTheSide(90, 90), Hands("two-a", 10), Hands("two-b", 10), Hands("two-c", 10)));
        var told = Plan(meal);
        var first = told.Steps.MinBy(step => step.Start)!;

        var again = Replan(who, meal, told, first.Start + 2, slipped: first.Step, by: 3);

        Assert.Equal(told.Steps.Select(step => (step.Step, step.Helpers[0])), again.Steps.Select(step => (step.Step, step.Helpers[0])));
    }

    [Theory, InlineData(Who.Solver), InlineData(Who.Quick)]
    public void A_tend_that_is_due_while_every_hand_is_busy_does_not_stop_the_plan(Who who)
    {
        var meal = Meal(
            60, Kitchen(), [Cook("cook")],
            Dish("roast", OnTheSide(30, 30), Alone("roast-cook", 30, OnRings()) with { Tends = [Every(15, give: 0)] }),
            Dish("salad", OnTheSide(60, 60), Hands("salad-cut", 10)));
        var told = Plan(meal);
        var roast = told.Step(new StepId("roast-cook"));
        var facts = new[]
        {
            new StepFact(roast.Step, roast.Start, roast.End, false, []),
            new StepFact(new StepId("salad-cut"), roast.Start + 5, roast.End + 5, false, []),
        };

        var again = Ask(who, meal, told, roast.Start + 10, facts);

        Assert.NotEqual(PlanStatus.None, again.Status);
        Assert.Single(again.Tends);
    }

    [Theory, InlineData(Who.Solver), InlineData(Who.Quick)]
    public void A_random_meal_that_slips_at_random_still_has_a_plan(Who who)
    {
        var replanned = 0;
        Gen.Int.Sample(
            seed =>
            {
                if (Slipped(who, seed) is not { } story)
                {
                    return;
                }

                var (meal, again) = story;
                replanned++;
                Assert.NotEqual(PlanStatus.None, again.Status);
                Assert.Equal(meal.Steps.Select(step => step.Id), again.Steps.Select(step => step.Step));
            },
            iter: 150, threads: 1, print: seed => $"meal {seed}");

        Assert.True(replanned > 15, $"only {replanned} were replanned");
    }

    /// <summary>The dish that is made goes into a warm oven, and the grill in that oven is still to be used.</summary>
    [Theory, InlineData(Who.Solver), InlineData(Who.Quick)]
    public void What_is_made_waits_for_its_warm_oven_where_a_step_needs_the_oven_first(Who who)
    {
        var (_, again) = Slipped(who, -75505141)!.Value;

        Assert.NotEqual(PlanStatus.None, again.Status);
        Assert.Equal(8, again.Cost.LateMinutes);
    }

    /// <summary>A random meal at a random minute, something that runs taking longer; null where it has no plan, or helpers who go.</summary>
    private static (Meal Meal, Plan Again)? Slipped(Who who, int seed)
    {
        var meal = new RandomMeals(seed, 6, 5).Next();
        var told = CpSatPlanner.PlanOnly(new PlanRequest(meal, new PlanLimits(TimeSpan.FromSeconds(3), Workers: 1, Deterministic: 0.5)));
        if (told.Status == PlanStatus.None || meal.Helpers.Any(helper => !helper.Available.IsEmpty))
        {
            return null;
        }

        var random = new Random(seed);
        var now = told.NotBefore + random.Next(told.Courses.Max(course => course.TableTime) - told.NotBefore);
        var running = told.Steps.Where(step => step.Start <= now && now < step.End).ToList();
        var slips = running.Count > 0 ? running[random.Next(running.Count)].Step : (StepId?)null;
        return (meal, Replan(who, meal, told, now, slips, by: random.Next(20)));
    }

    [Fact]
    public void What_is_handed_back_in_the_end_is_no_dearer_than_any_plan_that_was_offered()
    {
        var meal = SeedMealsTests.Meal("midwinter-lunch.json");
        var told = Plan(meal, effort: 1);
        foreach (var before in new[] { 240, 180, 120, 90, 60, 30 })
        {
            var (now, offers) = (told.Courses.Max(course => course.TableTime) - before, new List<Plan>());
            var facts = told.Steps.Where(step => step.Start <= now)
                .Select(step => new StepFact(step.Step, step.Start, step.End > now ? step.End + 15 : step.End, step.End <= now, []));
            var ovens = told.Ovens.ToDictionary(oven => oven.Oven, oven => CelsiusAt(oven.Points, now));

            // So little time that what is found soon is all there will be.
            var limits = new PlanLimits(TimeSpan.FromMilliseconds(200), Workers: 1);
            var plan = new CpSatPlanner().Plan(new PlanRequest(meal, limits, now, new SoFar(told, [.. facts], ovens)), new Offers(offers), Stop);

            Assert.All(offers, offer => Assert.True(plan.Cost.Objective <= offer.Cost.Objective, $"{plan.Cost.Objective} at {now} after {offer.Cost.Objective}"));
        }
    }

    /// <summary>At <paramref name="now"/> all has gone by the plan, but one step takes longer.</summary>
    private static Plan Replan(Who who, Meal meal, Plan told, Minute now, StepId? slipped = null, int by = 0) => Ask(
        who, meal, told, now,
        [
            .. told.Steps.Where(step => step.Start <= now).Select(step =>
            {
                var end = step.End + (step.Step == slipped ? by : 0);
                var done = told.Tends.Where(tend => tend.Step == step.Step && tend.End <= now).Select(tend => (tend.Tend, tend.Turn)).ToList();
                return new StepFact(step.Step, step.Start, end, end <= now, done);
            }),
        ]);

    private static Plan Ask(Who who, Meal meal, Plan told, Minute now, IReadOnlyList<StepFact> facts)
    {
        var ovens = told.Ovens.ToDictionary(oven => oven.Oven, oven => CelsiusAt(oven.Points, now));
        IMealPlanner planner = who == Who.Solver ? new CpSatPlanner() : new QuickPlanner();
        var limits = who == Who.Solver ? new PlanLimits(TimeSpan.FromSeconds(10)) : new PlanLimits(TimeSpan.FromSeconds(10), Deterministic: 1);
        return planner.Plan(new PlanRequest(meal, limits, now, new SoFar(told, facts, ovens)), null, Stop);
    }

    private sealed class Offers(List<Plan> plans) : IProgress<PlanProgress>
    {
        public void Report(PlanProgress value) => plans.AddRange(value.Plan is { } plan ? [plan] : []);
    }

    internal static int CelsiusAt(ImmutableArray<OvenPoint> points, Minute now)
    {
        var last = points.Last(point => point.At <= now);
        var next = points.FirstOrDefault(point => point.At > now, last);
        return next == last ? last.Celsius : last.Celsius + ((next.Celsius - last.Celsius) * (now - last.At) / (next.At - last.At));
    }
}
