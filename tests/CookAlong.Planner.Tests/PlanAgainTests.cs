using CookAlong.Benchmarks.Planners;
using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Planner.Quick;
using static CookAlong.Planner.Tests.Cooking;

namespace CookAlong.Planner.Tests;

public sealed class PlanAgainTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public void Asking_one_person_for_one_step_moves_only_a_few_of_the_lunch()
    {
        var meal = SeedMealsTests.Meal("midwinter-lunch.json");
        var before = Plan(meal, effort: 4);
        var (step, other) = meal.Steps
            .Where(step => step.Way.People == 1 && step.By.IsEmpty && step.Options.IsEmpty && before.Step(step.Id).Helpers.Length == 1)
            .Select(step => (step, meal.Helpers.FirstOrDefault(helper => CouldDo(helper, step, before.Step(step.Id)))))
            .Last(one => one.Item2 is not null);
        var wished = Change(meal, step with { By = [other!.Id] });

        var again = Again(wished, before, seconds: 2);

        Assert.Equal([other.Id], again.Step(step.Id).Helpers);
        Assert.Empty(PlanCheck.Check(wished, again));
        var moved = meal.Steps.Where(one => Differs(before.Step(one.Id), again.Step(one.Id))).Select(one => one.Id).ToList();
        Assert.True(moved.Count <= 8, $"{moved.Count} moved: {string.Join(", ", moved)}");
    }

    [Fact]
    public void The_same_meal_planned_again_stays_as_it_is()
    {
        var meal = CommonPracticeTests.RoastDinner();
        var before = Plan(meal);

        var again = Again(meal, before, seconds: 10);

        Assert.Equal(before.Steps, again.Steps, (one, other) => !Differs(one, other));
        Assert.Equal(before.Cost, again.Cost);
    }

    [Fact]
    public void A_later_table_carries_the_whole_plan_along()
    {
        var meal = CommonPracticeTests.RoastDinner();
        var before = Plan(meal);
        var later = meal with { NotBefore = meal.NotBefore + 60, Courses = [.. meal.Courses.Select(course => course with { TableTime = course.TableTime + 60 })] };

        var again = Again(later, before, seconds: 10);

        Assert.All(again.Steps, step => Assert.Equal(before.Step(step.Step).Start + 60, step.Start));
    }

    [Fact]
    public void A_clearly_better_plan_wins_over_the_old_one()
    {
        var meal = Meal(240, Kitchen(), [Cook("cook")], Dish("soup", OnTheSide(200, 30), Hands("soup-cut", 10)));
        var before = Plan(meal);
        var cut = before.Steps[0];
        var early = before with { Steps = [cut with { Start = cut.Start - 100, End = cut.End - 100 }] };

        var again = Again(meal, early, seconds: 5);

        Assert.Equal(cut.Start, again.Steps[0].Start);
    }

    [Fact]
    public void Another_time_of_day_costs_the_same_however_far_it_is()
    {
        // Three steps an hour nearer to the table shorten the day by that hour; minute by minute they would not be worth it.
        var meal = Meal(240, Kitchen(), [Cook("cook")], Dish("soup", OnTheSide(200, 60), Hands("soup-cut", 10), Hands("soup-fry", 10), Hands("soup-blend", 10)));
        var before = Plan(meal);
        var early = before with { Steps = [.. before.Steps.Select(step => step with { Start = step.Start - 60, End = step.End - 60 })] };

        var again = Again(meal, early, seconds: 5);

        Assert.Equal(before.Cost.Objective, again.Cost.Objective);
    }

    [Fact]
    public void The_quick_search_begins_with_what_was_told()
    {
        var meal = Families.Full(0, helpers: 1);
        var before = Plan(meal, effort: 0.1);
        var told = Told.Of(new PlanRequest(meal, new PlanLimits(TimeSpan.Zero), Previous: before));
        var quick = QuickSearch.Of(meal, new Clock(before.NotBefore, 0, MostLate: 0), told, Prices.Usual, seed: 1)!;

        quick.Run(first: 1, more: 0, () => false);

        Assert.Equal(before.Cost.Objective, quick.Cost);
        Assert.Equal(before.Steps.Select(step => step.Start), quick.Plan().Steps.Select(step => step.Start));
    }

    [Fact]
    public void Steps_that_take_a_little_longer_make_a_large_meal_hardly_dearer()
    {
        var meal = Families.Large(0);
        var before = Plan(meal, effort: 0.2);
        var changed = meal.Dishes.Take(5).Select(dish => dish.Steps[1]).Aggregate(
            meal, (all, step) => Change(all, step with { Way = step.Way with { Minutes = Durations.Exactly(step.Way.Minutes.Likely + 5) } }));

        var again = AgainBy(changed, before, effort: 0.2);

        Assert.Empty(PlanCheck.Check(changed, again));
        Assert.InRange(again.Cost.Objective, 1, before.Cost.Objective * 115 / 100);
    }

    [Fact]
    public void Without_one_pair_of_hands_it_is_hardly_dearer_than_planned_anew()
    {
        var meal = Families.Full(1, helpers: 2);
        var before = Plan(meal, effort: 0.5);
        var alone = meal with { Helpers = [meal.Helpers[0]] };
        var anew = Plan(alone, effort: 0.5);

        var again = AgainBy(alone, before, effort: 0.5);

        Assert.Empty(PlanCheck.Check(alone, again));
        Assert.InRange(again.Cost.Objective, 1, anew.Cost.Objective * 130 / 100);
    }

    [Fact]
    public void Dishes_that_came_and_went_since_do_not_stop_it()
    {
        var one = Dish("one", OnTheSide(90, 90), Hands("one-a", 10), Hands("one-b", 10));
        var two = Dish("two", OnTheSide(90, 90), Hands("two-a", 10), Alone("two-b", 10, InOven(150, 160)));
        var three = Dish("three", OnTheSide(90, 90), Hands("three-a", 10));
        var before = Plan(Meal(120, Kitchen(), [Cook("ann"), Cook("ben")], one, two));

        var again = Again(Meal(120, Kitchen(), [Cook("ben"), Cook("cat")], two, three), before, seconds: 5);

        Assert.Equal(["two-a", "two-b", "three-a"], again.Steps.Select(step => step.Step.Value));
    }

    private static Plan Again(Meal meal, Plan before, double seconds) =>
        new CpSatPlanner().Plan(new PlanRequest(meal, new PlanLimits(TimeSpan.FromSeconds(seconds)), Previous: before), null, Stop);

    /// <param name="effort">As in <see cref="Plan"/>.</param>
    private static Plan AgainBy(Meal meal, Plan before, double effort) =>
        new CpSatPlanner().Plan(new PlanRequest(meal, new PlanLimits(TimeSpan.FromMinutes(5), Workers: 1, Deterministic: effort), Previous: before), null, Stop);

    private static bool Differs(PlannedStep one, PlannedStep other) => one.Start != other.Start || !one.Helpers.ToHashSet().SetEquals(other.Helpers);

    private static bool CouldDo(Helper helper, Step step, PlannedStep planned) =>
        !helper.IsChild && helper.Can is null && !planned.Helpers.Contains(helper.Id) && helper.IsHere(planned.Start, planned.End);

    private static Meal Change(Meal meal, Step step) => meal with
    {
        Dishes = [.. meal.Dishes.Select(dish => dish with { Steps = [.. dish.Steps.Select(one => one.Id == step.Id ? step : one)] })],
    };
}
