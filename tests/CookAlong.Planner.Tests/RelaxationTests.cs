using CookAlong.Benchmarks.Planners;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Planner.Quick;
using CookAlong.Planner.Relaxed;
using CookAlong.Planner.Tests.Naive;
using CsCheck;
using static CookAlong.Planner.Tests.Cooking;

namespace CookAlong.Planner.Tests;

/// <summary>Weak duality: M. L. Fisher, "The Lagrangian Relaxation Method for Solving Integer Programming Problems", Management Science 27 (1981), from memory.</summary>
public sealed class RelaxationTests
{
    private const int Rounds = 200;

    private const double Rounding = 1e-6;

    [Theory]
    [InlineData(5, 1, 150)]
    [InlineData(2, 8, 40)]
    public void No_meal_on_time_costs_less_than_its_bound_says(int mostSteps, int scale, int meals)
    {
        var bounded = 0;

        // By chance too few of so many meals may be short of anything; then as many again.
        for (var go = 0; go < 5 && bounded <= meals / 10; go++)
        {
            Gen.Int.Sample(
                seed =>
                {
                    var meal = new RandomMeals(seed, mostSteps, scale).Next();
                    if (new BruteForce(meal).Best(mostLate: 0) is not { } best)
                    {
                        return;
                    }

                    var bound = Bound(meal, Prices.Usual);
                    bounded += bound > 0 ? 1 : 0;
                    Assert.InRange(bound, 0, best + Rounding);
                },
                iter: meals, threads: 1, print: seed => $"meal {seed}");
        }

        Assert.True(bounded > meals / 10, $"only {bounded} of {meals} have a bound: too few to say anything");
    }

    /// <summary>The solver's own bound, of meals too large to try everything, with every wish.</summary>
    [Fact]
    public void No_proven_plan_costs_less_than_the_bound()
    {
        var bounded = 0;
        Gen.Int.Sample(
            seed =>
            {
                var meal = new RandomMeals(seed, mostSteps: 9, scale: 5).Next();
                var leans = (Leans)(seed & (int)(Leans.StartLater | Leans.CalmEnd | Leans.FewerDialTurns | Leans.WashUp));
                var request = new PlanRequest(meal, new PlanLimits(TimeSpan.FromMinutes(5), Workers: 1, Deterministic: 2)) { Leans = leans };
                var plan = CpSatPlanner.PlanOnly(request);
                if (plan is not { Status: PlanStatus.Optimal, Cost.LateMinutes: 0 })
                {
                    return;
                }

                // From the same minute on: a longer clock may have a cheaper plan.
                var bound = Bound(meal with { NotBefore = plan.NotBefore }, Prices.Of(request));
                bounded += bound > 0 ? 1 : 0;
                Assert.InRange(bound, 0, plan.Cost.Objective + Rounding);
            },
            iter: 400, threads: 1, print: seed => $"meal {seed}");

        Assert.True(bounded > 10, $"only {bounded} meals have a bound: too few to say anything");
    }

    /// <summary>Six dishes that wait for nothing, a quarter of an hour of hands each: half of it together with two cooks.</summary>
    [Theory]
    [InlineData(1, 90)]
    [InlineData(2, 45)]
    public void So_many_hands_need_so_long_a_day(int cooks, int day)
    {
        var dishes = Enumerable.Range(0, 6).Select(number => Dish($"salad-{number}", OnTheSide(240, bestWithin: 240), Hands($"cut-{number}", 15)));
        var meal = Meal(600, Kitchen(), [.. Enumerable.Range(0, cooks).Select(number => Cook($"cook-{number}"))], [.. dishes]);
        var search = Relaxed(meal, Prices.Of(cushion: 0, Leans.None))!;
        Assert.InRange(search.Bound, day * 0.95, search.Cost);
    }

    /// <summary>Two bakes of half an hour that no temperature bears together: one has been out half an hour when the other comes out, five minutes of it for nothing.</summary>
    [Fact]
    public void What_cannot_share_an_oven_waits_for_each_other()
    {
        Dish Bake(string id, int heat) => Dish(id, OnTheSide(120), Alone($"{id}-bake", 30, InOven(heat, heat + 10)));
        var search = Relaxed(Meal(180, Kitchen(), [Cook("ann")], Bake("pie", 150), Bake("tart", 200)), Prices.Of(cushion: 0, Leans.None))!;
        var least = 25 + Prices.Usual.DialChange;
        Assert.InRange(search.Bound, least * 0.95, search.Cost);
    }

    /// <summary>The full meals of the benchmarks, cooked by one alone.</summary>
    [Fact]
    public void By_its_orders_a_single_cook_s_meals_are_laid_out_much_cheaper()
    {
        var (before, after) = (0L, 0L);
        for (var seed = 0; seed < 3; seed++)
        {
            var unrelaxed = Searched(Families.Full(seed, helpers: 1))!;
            unrelaxed.Run(first: 500, more: 2 * Rounds, () => false);
            (before, after) = (before + unrelaxed.Cost, after + Relaxed(Families.Full(seed, helpers: 1), Prices.Usual)!.Cost);
        }

        Assert.True(after < before * 0.8, $"{after}, {before} with as many layouts");
    }

    [Fact]
    public void The_same_rounds_give_the_same_answer()
    {
        var (one, other) = (Relaxed(Bakes(cooks: 2), Prices.Usual)!, Relaxed(Bakes(cooks: 2), Prices.Usual)!);
        Assert.Equal((one.Bound, one.Cost), (other.Bound, other.Cost));
        Assert.Equal(one.Found!.Starts, other.Found!.Starts);
    }

    private static Meal Bakes(int cooks)
    {
        var bakes = Enumerable.Range(0, 8).Select(number =>
        {
            var (id, heat) = ($"bake-{number}", 150 + (number % 4 * 20));
            return Dish(id, OnTheSide(240), Hands($"{id}-cut", 8 + number), Alone($"{id}-bake", 25 + (7 * number % 30), InOven(heat, heat + 10)), Hands($"{id}-plate", 4).Following(After($"{id}-bake", most: 10)));
        });
        return Meal(1440, Kitchen(), [.. Enumerable.Range(0, cooks).Select(number => Cook($"cook-{number}"))], [.. bakes]);
    }

    private static double Bound(Meal meal, Prices prices)
    {
        var work = Reading.Of(meal, OnTime(meal), told: null, prices);
        var relaxation = work is null ? null : Relaxation.Of(work);
        relaxation?.Run(Rounds, best: double.PositiveInfinity, () => false, _ => double.PositiveInfinity);
        return relaxation?.Bound ?? 0;
    }

    private static Clock OnTime(Meal meal) => new(meal.NotBefore ?? meal.FirstTableTime - 360, Earliest: 0, MostLate: 0);

    private static QuickSearch? Searched(Meal meal, Prices? prices = null) =>
        QuickSearch.Of(meal, OnTime(meal), told: null, prices ?? Prices.Usual, seed: 1);

    private static QuickSearch? Relaxed(Meal meal, Prices prices)
    {
        var search = Searched(meal, prices);
        search?.Run(first: 100, more: 20, () => false);
        search?.Relax(Rounds, () => false);
        return search;
    }
}
