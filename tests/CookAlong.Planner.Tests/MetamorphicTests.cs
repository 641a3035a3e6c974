using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CsCheck;
using static CookAlong.Planner.Tests.Cooking;

namespace CookAlong.Planner.Tests;

/// <summary>
/// What a change to a meal may do to its cheapest plan, known without knowing the plan. Costs are compared, not plans: a meal
/// may have many plans of one cost. Only proven ones say anything; the limit is deterministic, so the same are proven everywhere.
/// </summary>
public sealed class MetamorphicTests
{
    private static readonly PlanLimits Limits = new(TimeSpan.FromMinutes(2), Workers: 1, Deterministic: 4);

    private static readonly Hold AsLongAsItLikes = OnTheSide(limit: 100_000, bestWithin: 100_000, cost: 0);

    public enum More { Grown, Child, Ring, Shelf, Oven, Grill, Appliance }

    /// <summary>
    /// Every plan of the meal is one of the richer meal too, and costs no more there: hands enter the prices only as those
    /// that are there in the last minutes, and more of them make work dearer nowhere. Who does what has no part in the cost.
    /// </summary>
    [Theory]
    [InlineData(More.Grown)]
    [InlineData(More.Child)]
    [InlineData(More.Ring)]
    [InlineData(More.Shelf)]
    [InlineData(More.Oven)]
    [InlineData(More.Grill)]
    [InlineData(More.Appliance)]
    public void More_of_anything_never_makes_the_proven_best_dearer(More more) =>
        Compare(meal => With(meal, more), (before, after) => before is null || after <= before);

    /// <summary>All is counted from the first minute, so whole days later the same is found, step by step.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(-7)]
    [InlineData(3653)]
    public void Whole_days_later_everything_is_the_same_but_for_the_day(int days) => Gen.Int.Sample(
        seed =>
        {
            var meal = new RandomMeals(seed, mostSteps: 6, scale: 5).Next();
            var minutes = days * 1440;
            var (plan, later) = (Best(meal), Best(Later(meal, minutes)));

            Assert.Equal(Lines(plan, minutes), Lines(later, 0));
            Assert.Equal((plan.Status, plan.Cost), (later.Status, later.Cost));
        },
        iter: 40, threads: 1, print: seed => $"meal {seed}");

    /// <summary>No price and no rule looks at a name or at what stands first. Which of two equal plans is found may differ.</summary>
    [Fact]
    public void Other_names_in_another_order_cost_the_same() => Compare(Renamed.Of, (before, after) => before == after);

    /// <summary>Nobody's minutes, nothing in use, waits for nothing: within three hours of the table, so no price either.</summary>
    [Fact]
    public void A_dish_that_makes_itself_changes_nothing() => Compare(
        meal => meal with { Dishes = meal.Dishes.Insert(0, Dish("water", AsLongAsItLikes, Alone("water-settles", 1)) with { Course = meal.Courses[^1].Id }) },
        (before, after) => before == after);

    [Fact]
    public void A_dish_done_before_now_changes_nothing_in_a_running_meal()
    {
        var compared = 0;

        // A child who may do nothing but water once counted as hands for the rest.
        Compared(-14655312);
        Gen.Int.Sample(Compared, iter: 150, threads: 1, print: seed => $"meal {seed}");
        Assert.True(compared > 10, $"only {compared} compared: too few to say anything");

        void Compared(int seed)
        {
            var meal = new RandomMeals(seed, mostSteps: 6, scale: 5).Next();
            var told = Best(meal);
            if (told.Status == PlanStatus.None)
            {
                return;
            }

            var now = told.Steps.Max(step => step.Start);
            var water = Dish("water", AsLongAsItLikes, Alone("water-settles", 1)) with { Course = meal.Courses[^1].Id };
            var richer = meal with { Dishes = meal.Dishes.Insert(0, water) };
            var settled = new PlannedStep(water.Steps[0].Id, told.NotBefore, told.NotBefore + 1, -1, [], null, null, [], Slack: 0);
            var withWater = told with { Steps = told.Steps.Insert(0, settled), Holds = told.Holds.Insert(0, new PlannedHold(water.Id, 0, HoldPlace.Side, settled.End, told.TableTime(water.Course), null)) };
            var (before, after) = (Again(meal, told, now), Again(richer, withWater, now));
            if (before.Status == PlanStatus.Optimal && after.Status == PlanStatus.Optimal)
            {
                compared++;
                Assert.Equal(before.Cost.Objective, after.Cost.Objective);
            }
        }
    }

    private static Plan Best(Meal meal) => CpSatPlanner.PlanOnly(new PlanRequest(meal, Limits));

    private static Plan Again(Meal meal, Plan told, Minute now)
    {
        var facts = told.Steps.Where(step => step.Start <= now).Select(step => new StepFact(
            step.Step, step.Start, step.End, step.End <= now,
            [.. told.Tends.Where(tend => tend.Step == step.Step && tend.End <= now).Select(tend => (tend.Tend, tend.Turn))]));
        var ovens = told.Ovens.ToDictionary(oven => oven.Oven, oven => ReplanTests.CelsiusAt(oven.Points, now));
        return CpSatPlanner.PlanOnly(new PlanRequest(meal, Limits, now, new SoFar(told, [.. facts], ovens)));
    }

    private static void Compare(Func<Meal, Meal> change, Func<long?, long?, bool> holds)
    {
        var planned = 0;
        Gen.Int.Sample(
            seed =>
            {
                var meal = new RandomMeals(seed, mostSteps: 6, scale: 5).Next();
                var (before, after) = (Best(meal), Best(change(meal)));
                if (before.Status == PlanStatus.Feasible || after.Status == PlanStatus.Feasible)
                {
                    return true;
                }

                planned += before.Status == PlanStatus.None ? 0 : 1;
                return holds(CostOf(before), CostOf(after));
            },
            iter: 80, threads: 1, print: seed => $"meal {seed}");
        Assert.True(planned > 10, $"only {planned} of the meals were planned and proven: too few to say anything");
    }

    private static long? CostOf(Plan plan) => plan.Status == PlanStatus.None ? null : plan.Cost.Objective;

    private static Meal With(Meal meal, More more)
    {
        var kitchen = meal.Kitchen;
        return more switch
        {
            More.Grown => meal with { Helpers = meal.Helpers.Add(Cook("friend")) },
            More.Child => meal with { Helpers = meal.Helpers.Insert(0, Cook("niece", isChild: true, new Window(Table - 20, Table + 400))) },
            More.Ring => meal with { Kitchen = kitchen with { Rings = kitchen.Rings + 1 } },
            More.Shelf => meal with { Kitchen = kitchen with { Ovens = [.. kitchen.Ovens.Select(oven => oven with { Shelves = oven.Shelves + 1 })] } },
            More.Oven => meal with { Kitchen = kitchen with { Ovens = kitchen.Ovens.Add(kitchen.Ovens[0] with { Id = new OvenId("neighbour's") }) } },
            More.Grill => meal with { Kitchen = kitchen with { Grills = kitchen.Grills.Add(new Grill(new GrillId("other grill"), null)) } },
            More.Appliance => meal with { Kitchen = kitchen with { Appliances = [.. kitchen.Appliances.Select(one => one with { Count = one.Count + 1 })] } },
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }

    private static Meal Later(Meal meal, int minutes)
    {
        Window Moved(Window window) => new(window.From + minutes, window.To + minutes);
        return meal with
        {
            NotBefore = meal.NotBefore + minutes,
            Courses = [.. meal.Courses.Select(course => course with { TableTime = course.TableTime + minutes })],
            Helpers = [.. meal.Helpers.Select(helper => helper with { Available = [.. helper.Available.Select(Moved)] })],
            Dishes =
            [
                .. meal.Dishes.Select(dish => dish with
                {
                    Steps = [.. dish.Steps.Select(step => step with { At = step.At + minutes, Window = step.Window is { } window ? Moved(window) : null })],
                }),
            ],
        };
    }

    /// <summary>All that a plan says, a line a thing, its times so many minutes later.</summary>
    private static IEnumerable<string> Lines(Plan plan, int minutes) =>
    [
        .. plan.Steps.Select(step => $"{step.Step} {step.Start + minutes} {step.End + minutes} {step.Option} {string.Join(',', step.Helpers)} {step.Oven} {step.Grill} {step.Slack}"),
        .. plan.Tends.Select(tend => $"{tend.Step} {tend.Tend} {tend.Turn} {tend.At + minutes} {tend.Helper}"),
        .. plan.Holds.Select(hold => $"{hold.Dish} {hold.Hold} {hold.From + minutes} {hold.To + minutes} {hold.Oven}"),
        .. plan.Ovens.SelectMany(oven => oven.Points.Select(point => $"{oven.Oven} {point.At + minutes} {point.Celsius}")),
        .. plan.Courses.Select(course => $"{course.Course} {course.TableTime + minutes}"),
    ];
}
