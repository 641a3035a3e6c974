using CookAlong.Domain.Confidence;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Domain.Tests.Confidence;

/// <summary>
/// Against closed forms. X is triangular with least = likely = 20 and most = 60: its distance over 20, in units of 40,
/// has the distribution F(y) = 1 - (1 - y)^2 and the mean 1/3 (the mean of a triangle is the mean of its corners).
/// </summary>
public sealed class SimulationTests
{
    const int Runs = 100_000;

    [Fact]
    public void Without_uncertainty_a_plan_is_kept()
    {
        var (meal, plan) = Series(20, 20);

        Assert.Equal(new(1, 0, []), Simulation.Run(meal, plan, 100, seed: 1) with { DecisiveSteps = [] });
        Assert.Empty(Simulation.Run(meal, plan, 100, seed: 1).DecisiveSteps);
    }

    [Fact]
    public void Two_steps_in_series_are_late_by_the_sum()
    {
        var (meal, plan) = Series(60, 60);

        var confidence = Simulation.Run(meal, plan, Runs, seed: 1);

        Assert.Equal(2 * 40 / 3.0, confidence.ExpectedLateMinutes, tolerance: 0.15);
        // P(X + Y <= z) = integral of 2(1 - x) F(z - x) from 0 to z; a cubic, so Simpson's rule is exact. z = 10 / 40.
        Assert.Equal(Simpson(x => 2 * (1 - x) * F(0.25 - x), 0, 0.25), confidence.OnTimeWithin10, tolerance: 0.005);
    }

    [Fact]
    public void Two_dishes_side_by_side_are_late_by_the_longer()
    {
        var (meal, plan) = Parallel(20, by1: "sam", by2: "ida", start2: 0);

        var confidence = Simulation.Run(meal, plan, Runs, seed: 1);

        // E max = integral of 1 - F^2 = 2/3 - 1/5; P(max <= y) = F(y)^2.
        Assert.Equal(40 * 7 / 15.0, confidence.ExpectedLateMinutes, tolerance: 0.15);
        Assert.Equal(F(0.25) * F(0.25), confidence.OnTimeWithin10, tolerance: 0.005);
    }

    [Fact]
    public void Two_dishes_by_one_pair_of_hands_are_a_series()
    {
        var (meal, plan) = Parallel(40, by1: "sam", by2: "sam", start2: 20);

        Assert.Equal(2 * 40 / 3.0, Simulation.Run(meal, plan, Runs, seed: 1).ExpectedLateMinutes, tolerance: 0.15);
    }

    [Fact]
    public void Nothing_begins_before_its_planned_start()
    {
        // The first step mostly ends early, which nobody uses: the second begins as planned and takes its 20 minutes.
        var (meal, plan) = Series(20, 20, least: 5);

        Assert.Equal(0, Simulation.Run(meal, plan, 1000, seed: 1).ExpectedLateMinutes);
    }

    [Fact]
    public void Ten_minutes_to_spare_are_never_worse()
    {
        var (tight, plan) = Series(60, 60);
        var spare = plan with { Courses = [plan.Courses[0] with { TableTime = MealBuilder.At(50), Promised = MealBuilder.At(50) }] };

        var before = Simulation.Run(tight, plan, 5000, seed: 1);
        var after = Simulation.Run(tight, spare, 5000, seed: 1);

        Assert.True(after.OnTimeWithin10 > before.OnTimeWithin10 && after.ExpectedLateMinutes < before.ExpectedLateMinutes);
    }

    [Fact]
    public void The_latest_of_two_courses_counts()
    {
        var meal = new MealBuilder().Course("main", 20).Course("pudding", 100).Helper("sam")
            .Dish("one", "main", dish => dish.Step("one", 20, step => step.Lasts(20, 20, 60)))
            .Dish("two", "pudding", dish => dish.Step("two", 20))
            .Build();
        var plan = new PlanBuilder(meal).Step("one", 0, "sam").Step("two", 80, "sam").Build();

        Assert.Equal(40 / 3.0, Simulation.Run(meal, plan, Runs, seed: 1).ExpectedLateMinutes, tolerance: 0.15);
    }

    [Fact]
    public void The_step_that_decides_it_is_named_first()
    {
        var (meal, plan) = Series(most1: 25, most2: 90);

        Assert.Equal(["dish-2", "dish-1"], Simulation.Run(meal, plan, 1000, seed: 1).DecisiveSteps.Select(step => step.Value));
    }

    [Fact]
    public void The_same_seed_gives_the_same_answer_and_another_seed_another()
    {
        var (meal, plan) = Series(60, 60);

        Assert.Equal(Simulation.Run(meal, plan, 500, seed: 7).ExpectedLateMinutes, Simulation.Run(meal, plan, 500, seed: 7).ExpectedLateMinutes);
        Assert.NotEqual(Simulation.Run(meal, plan, 500, seed: 7).ExpectedLateMinutes, Simulation.Run(meal, plan, 500, seed: 8).ExpectedLateMinutes);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1_000_001)]
    public void Too_few_or_too_many_runs_are_a_mistake_of_the_caller(int runs)
    {
        var (meal, plan) = Series(60, 60);

        Assert.Throws<ArgumentOutOfRangeException>(() => Simulation.Run(meal, plan, runs, seed: 1));
    }

    /// <summary>One step after the other, 20 minutes each if all goes well, table at 40.</summary>
    static (Meal, Plan) Series(int most1, int most2, int? least = null)
    {
        var meal = new MealBuilder().Course("main", 40).Helper("sam")
            .Dish("dish", "main", dish => dish
                .Step("dish-1", 20, step => step.Lasts(least ?? 20, 20, most1))
                .Step("dish-2", 20, step => step.Lasts(20, 20, most2)))
            .Build();
        return (meal, new PlanBuilder(meal).Step("dish-1", 0, "sam").Step("dish-2", 20, "sam").Build());
    }

    static (Meal, Plan) Parallel(int table, string by1, string by2, int start2)
    {
        var meal = new MealBuilder().Course("main", table).Helper("sam").Helper("ida")
            .Dish("one", "main", dish => dish.Step("one", 20, step => step.Lasts(20, 20, 60)))
            .Dish("two", "main", dish => dish.Step("two", 20, step => step.Lasts(20, 20, 60)))
            .Build();
        return (meal, new PlanBuilder(meal).Step("one", 0, by1).Step("two", start2, by2).Build());
    }

    static double F(double y) => 1 - ((1 - y) * (1 - y));

    static double Simpson(Func<double, double> f, double from, double to) => (to - from) / 6 * (f(from) + (4 * f((from + to) / 2)) + f(to));
}
