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

        var confidence = Simulation.Run(meal, plan, 100, seed: 1);
        Assert.Equal((1, 0, 0), (confidence.OnTimeWithin10, confidence.ExpectedLateMinutes, confidence.TooLong));
        Assert.Empty(confidence.DecisiveSteps);
        Assert.All(Assert.Single(confidence.Tables).Days, late => Assert.Equal(0, late));
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
    public void The_more_cushion_the_same_plan_has_the_surer_it_is()
    {
        var (meal, plan) = Parallel(60, by1: "sam", by2: "ida", start2: 0);
        Plan Ready(int minutesBefore) => plan with { Steps = [.. plan.Steps.Select(step => step with { Start = step.Start + 40 - minutesBefore, End = step.End + 40 - minutesBefore })] };

        var chances = Enumerable.Range(0, 8).Select(size => Simulation.Run(meal, Ready(5 * size), 20_000, seed: 1).OnTimeWithin10).ToList();

        Assert.Equal(chances.Order(), chances);
        Assert.All(chances.Index(), one => Assert.Equal(Math.Pow(F(Math.Min(1, (10 + (5 * one.Index)) / 40.0)), 2), one.Item, tolerance: 0.012));
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

    [Fact]
    public void The_spread_of_the_table_time_is_that_of_the_longer_of_two()
    {
        var (meal, plan) = Parallel(20, by1: "sam", by2: "ida", start2: 0);

        var spread = Assert.Single(Simulation.Run(meal, plan, Runs, seed: 1).Tables);

        // F(y)^2 = p gives y = 1 - sqrt(1 - sqrt p), in units of 40.
        Assert.Equal(TableSpread.DayCount, spread.Days.Length);
        Assert.All(spread.Days.Index(), day => Assert.Equal(Longer((day.Index + 0.5) / 20), day.Item, tolerance: 0.4));
        Assert.Equal(Longer(0.5), spread.Median, tolerance: 0.4);
        Assert.True(spread.Tenth < spread.Median && spread.Median < spread.Ninetieth);

        static double Longer(double share) => 40 * (1 - Math.Sqrt(1 - Math.Sqrt(share)));
    }

    [Fact]
    public void The_sum_of_two_steps_spreads_as_their_variances_add()
    {
        var (meal, plan) = Series(60, 60);

        var days = Assert.Single(Simulation.Run(meal, plan, Runs, seed: 1).Tables).Days;

        // A triangle's variance is (a² + b² + c² - ab - ac - bc) / 18: 1600 / 18 for 20, 20, 60. Twenty days leave the far ends out.
        var mean = days.Average();
        Assert.Equal(2 * 40 / 3.0, mean, tolerance: 0.3);
        Assert.Equal(2 * 1600 / 18.0, days.Average(day => (day - mean) * (day - mean)), tolerance: 6);
    }

    [Fact]
    public void Five_spare_minutes_buy_what_the_closed_form_says()
    {
        var meal = Single(20, 20, 60, table: 20);
        var plan = new PlanBuilder(meal).Step("one", 0, "sam").Build();

        var decisive = Assert.Single(Simulation.Run(meal, plan, Runs, seed: 1).Decisive);

        Assert.Equal(1, decisive.LateShare);
        Assert.Equal(F(15 / 40.0) - F(10 / 40.0), decisive.Gain, tolerance: 0.04);
    }

    [Fact]
    public void However_many_cooks_share_the_days_the_answer_is_the_same()
    {
        var (meal, plan) = Series(60, 90, least: 5);

        Assert.Equivalent(Simulation.Run(meal, plan, 3001, seed: 3, cores: 1), Simulation.Run(meal, plan, 3001, seed: 3, cores: 4), strict: true);
    }

    [Fact]
    public void With_an_allowance_what_is_ready_begins_early()
    {
        var meal = Single(20, 20, 60, table: 30);
        var plan = new PlanBuilder(meal).Step("one", 10, "sam").Build();

        // Begun 10 minutes early it has 20 until it is too late.
        Assert.Equal(F(20 / 40.0), Simulation.Run(meal, plan, Runs, seed: 1, allowance: 10).OnTimeWithin10, tolerance: 0.005);
    }

    [Fact]
    public void Food_that_the_table_keeps_waiting_is_counted()
    {
        // Two dishes at once. One is ready at 20 and good for 15 minutes; the other keeps the table waiting.
        var meal = new MealBuilder().Course("main", 20).Helper("sam").Helper("ida")
            .Dish("eggs", "main", dish => dish.Step("eggs", 20).Hold(HoldPlace.Table, limit: 15))
            .Dish("two", "main", dish => dish.Step("two", 20, step => step.Lasts(20, 20, 60)))
            .Build();
        var plan = new PlanBuilder(meal).Step("eggs", 0, "sam").Step("two", 0, "ida").Build();

        var confidence = Simulation.Run(meal, plan, Runs, seed: 1);

        // Five minutes beyond a limit are forgiven: 20 in all.
        Assert.Equal(1 - F(20 / 40.0), confidence.TooLong, tolerance: 0.005);
        Assert.Equal("eggs", Assert.Single(confidence.Standing).Step.Value);
    }

    [Fact]
    public void What_cannot_wait_is_held_back_when_the_rest_is_seen_to_be_behind()
    {
        // The eggs take 5 minutes of somebody who is free, and are good for 3. They begin when the roast is out, not by the clock.
        var meal = new MealBuilder().Course("main", 70).Helper("sam").Helper("ida")
            .Dish("roast", "main", dish => dish.Step("roast", 60, step => step.Lasts(60, 60, 100)).Step("carve", 10))
            .Dish("eggs", "main", dish => dish.Step("eggs", 5).Hold(HoldPlace.Table, limit: 3))
            .Build();
        var plan = new PlanBuilder(meal).Step("roast", 0, "sam").Step("carve", 60, "sam").Step("eggs", 65, "ida").Build();

        Assert.Equal(0, Simulation.Run(meal, plan, 1000, seed: 1).TooLong);
    }

    [Fact]
    public void What_must_follow_soon_follows_an_early_end_early()
    {
        var meal = new MealBuilder().Course("main", 40).Helper("sam")
            .Dish("pasta", "main", dish => dish.Step("boil", 20, step => step.Lasts(5, 20, 20).Unattended()).Step("drain", 20, step => step.After("boil", most: 2)).Hold(HoldPlace.Side, limit: 60))
            .Build();
        var plan = new PlanBuilder(meal).Step("boil", 0).Step("drain", 20, "sam").Build();

        Assert.Equal(0, Simulation.Run(meal, plan, 1000, seed: 1).TooLong);
    }

    static Meal Single(int least, int likely, int most, int table) => new MealBuilder().Course("main", table).Helper("sam")
        .Dish("dish", "main", dish => dish.Step("one", likely, step => step.Lasts(least, likely, most)).Hold(HoldPlace.Side, limit: 60))
        .Build();

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
