using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Planner.Quick;
using static CookAlong.Planner.Tests.Cooking;
using static CookAlong.Planner.Tests.PropertyTests;

namespace CookAlong.Planner.Tests;

/// <summary>A running meal of which a course has been served, or a dish is made and waits.</summary>
public sealed class ServedAndMadeTests
{
    private static readonly CourseId Sweet = new("sweet");

    [Fact]
    public void A_course_that_was_served_late_does_not_keep_the_search_from_its_end()
    {
        var (meal, told, facts) = SoupServed(late: 7);
        var request = Request(meal, told, facts, Table + 10);
        var search = QuickSearch.Of(meal, Clock.Of(request.So!, request.Now), Told.Of(request), Prices.Of(request), seed: 1, request.So)!;
        var asked = 0;

        search.Run(first: 100, more: 100, () => ++asked > 100_000);

        Assert.NotNull(search.Found);
        Assert.InRange(asked, 1, 100_000);
    }

    [Theory, InlineData(Who.Solver), InlineData(Who.Quick)]
    public void A_table_put_off_after_its_time_is_kept(Who who)
    {
        var (meal, told, facts) = SoupServed(late: 0);
        var putOff = meal with { Courses = [meal.Courses[0] with { TableTime = Table + 12 }, meal.Courses[1]] };

        var again = Planner(who).Plan(Request(putOff, told, facts, Table + 2), null, TestContext.Current.CancellationToken);

        Assert.Equal(Table + 12, again.TableTime(Main));
    }

    [Theory, InlineData(Who.Solver), InlineData(Who.Quick)]
    public void Of_two_dishes_made_for_one_warm_shelf_one_stands_out(Who who)
    {
        var warm = KeptWarm(60, 80, limit: 30, standFirst: 2);
        var meal = Meal(60, Kitchen(shelves: 1), [Cook("ann"), Cook("ben")], Dish("pie", warm, Hands("pie-make", 10)), Dish("tart", warm, Hands("tart-make", 10)));
        var plan = Plan(meal);
        var told = plan with { Holds = [.. plan.Holds.Select(hold => hold with { From = Table })] };
        var now = Table - 5;
        var facts = told.Steps.Select(step => new StepFact(step.Step, Table - 15, now, true, []));
        var putOff = meal with { Courses = [meal.Courses[0] with { TableTime = now + 15 }] };

        var again = Planner(who).Plan(Request(putOff, told, [.. facts], now), null, TestContext.Current.CancellationToken);

        Assert.Equal(now + 15, again.TableTime(Main));
        Assert.Equal([13, 0], again.Holds.Select(hold => hold.To - hold.From).OrderDescending());
    }

    [Theory, InlineData(Who.Solver), InlineData(Who.Quick)]
    public void A_dish_that_is_made_goes_to_the_oven_that_was_told(Who who)
    {
        var meal = Meal(
            120, Kitchen(ovens: 2, shelves: 1), [Cook("cook")],
            Dish("pie", KeptWarm(60, 80, limit: 60, standFirst: 5), Hands("pie-make", 10) with { At = Table - 40 }),
            Dish("tart", OnTheSide(10, 10), Alone("tart-bake", 30, InOven(200, 210, oven: new OvenId("oven-1")))));
        var told = Plan(meal);
        var made = told.Step(new StepId("pie-make"));

        var again = Planner(who).Plan(Request(meal, told, [new StepFact(made.Step, made.Start, made.End, true, [])], made.End), null, TestContext.Current.CancellationToken);

        Assert.Equal(0, again.Cost.LateMinutes);
        Assert.Equal(new OvenId("oven-2"), again.Holds.Single(hold => hold.Dish == new DishId("pie")).Oven);
    }

    /// <summary>The soup so many minutes late, the sweet still to come.</summary>
    private static (Meal Meal, Plan Told, StepFact[] Facts) SoupServed(int late)
    {
        var soup = Dish("soup", OnTheSide(60, 30), Hands("soup-cut", 10));
        var sweet = Dish("cream", OnTheSide(60, 30), Hands("cream-whip", 10)) with { Course = Sweet };
        var meal = Meal(120, Kitchen(), [Cook("cook")], soup, sweet);
        meal = meal with { Courses = meal.Courses.Add(new Course(Sweet, "Sweet", Table + 60)) };
        var plan = Plan(meal);
        var told = plan with { Courses = [plan.Courses[0] with { TableTime = Table + late }, plan.Courses[1]] };
        var cut = told.Step(new StepId("soup-cut"));
        return (meal, told, [new StepFact(cut.Step, cut.Start, cut.End, true, [])]);
    }

    private static IMealPlanner Planner(Who who) => who == Who.Solver ? new CpSatPlanner() : new QuickPlanner();

    private static PlanRequest Request(Meal meal, Plan told, StepFact[] facts, Minute now)
    {
        var ovens = told.Ovens.ToDictionary(oven => oven.Oven, oven => ReplanTests.CelsiusAt(oven.Points, now));
        return new PlanRequest(meal, new PlanLimits(TimeSpan.FromSeconds(10), Workers: 1, Deterministic: 0.5), now, new SoFar(told, facts, ovens));
    }
}
