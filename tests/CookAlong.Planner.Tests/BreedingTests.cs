using CookAlong.Benchmarks.Planners;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Planner.Quick;
using CsCheck;
using static CookAlong.Planner.Tests.Cooking;

namespace CookAlong.Planner.Tests;

/// <summary>Double justification: V. Valls, F. Ballestin, S. Quintanilla, "Justification and RCPSP: A technique that pays" (2005), from memory.</summary>
public sealed class BreedingTests
{
    private const int Steps = 12;

    [Fact]
    public void Pushed_to_the_first_minute_and_back_to_the_table_a_meal_takes_no_longer() => Gen.Int.Sample(
        seed =>
        {
            var (work, guess) = Laid(seed);
            var toTable = new Population(work, 1, guess, Length);
            var toStart = new Population(Mirror.Of(work), 1, guess, Length);
            var lengths = new List<long>();
            for (var (push, genes) = (0, guess); push < 5; push++)
            {
                var end = push % 2 == 0 ? toTable : toStart;
                lengths.Add(end.Lay(genes));
                end.Offer(0, genes, lengths[^1], isWelcome: true);
                genes = end.Genes(0, isFromHere: false);
            }

            return lengths.Zip(lengths.Skip(1)).All(pair => pair.Second <= pair.First);
        },
        iter: 300, threads: 1, print: seed => $"meal {seed}");

    [Fact]
    public void Breeding_shortens_what_the_first_guess_makes_long()
    {
        var (guessed, bred) = (0L, 0L);
        for (var seed = 0; seed < 20; seed++)
        {
            var (work, guess) = Laid(seed);
            guessed += new Population(work, 1, guess, Length).Lay(guess);
            var breeding = new Breeding(work, seed: 1, layouts: 300);
            breeding.Run(300, () => false);
            bred += Length(breeding.Best);
        }

        Assert.True(bred < guessed * 0.97, $"{bred}, the first guesses {guessed}");
    }

    /// <summary>By counted layouts: 194 of them where what comes too soon is placed again in its turn.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void A_meal_for_a_hall_has_a_plan_on_time_after_a_few_layouts(int seed)
    {
        var meal = Families.Large(seed);
        var quick = QuickSearch.Of(meal, new Clock(Clock.Origins(meal, null).First(), Earliest: 0, MostLate: 0), told: null, Prices.Usual, seed: 1)!;

        var first = 0;
        quick.Run(first: 500, more: 0, () => false, () => first = first == 0 ? quick.Layouts : first);

        Assert.InRange(first, 1, 10);
    }

    [Fact]
    public void However_many_threads_breed_the_same_comes_out()
    {
        for (var seed = 0; seed < 20; seed++)
        {
            var work = Laid(seed).Work;
            Layout Bred(int workers)
            {
                var breeding = new Breeding(work, seed: 1, layouts: 300, workers);
                breeding.Run(300, () => false);
                return breeding.Best;
            }

            Assert.Equal(Bred(workers: 1).Starts, Bred(workers: 3).Starts);
        }
    }

    [Fact]
    public void Larger_populations_make_meals_less_late_and_never_later()
    {
        var (before, after) = (0, 0);
        for (var seed = 0; seed < 20; seed++)
        {
            var search = new QuickSearch(Laid(seed).Work, seed: 1);
            search.Run(first: 20, more: 0, () => false);
            var late = search.Late;
            search.BreedOn(2000, () => false);
            Assert.InRange(search.Late, 0, late);
            (before, after) = (before + late, after + search.Late);
        }

        Assert.True(after < before, $"{after} minutes late, {before} before");
    }

    private static long Length(Layout layout) => layout.Ends.Max() - layout.Starts.Min();

    /// <summary>Steps without hands on four rings and one mixer, each after some of those before.</summary>
    private static (Work Work, Genes Guess) Laid(int seed)
    {
        var random = new Random(seed);
        var steps = Enumerable.Range(0, Steps).Select(number => Alone($"s{number}", random.Next(1, 20), random.Next(4) == 0 ? With("mixer") : OnRings(random.Next(1, 4)))
            .Following([.. Enumerable.Range(0, number).Where(_ => random.Next(5) == 0).Select(before => After($"s{before}"))]));
        var meal = Meal(30, Kitchen(), [], Dish("all", OnTheSide(1000, bestWithin: 1000), [.. steps]));
        var work = Reading.Of(meal, new Clock(meal.NotBefore!.Value, Earliest: 0, Clock.MostLateMinutes), told: null, Prices.Of(cushion: 0, Leans.None))!;
        return (work, Genes.FirstGuess(work, longestFirst: true));
    }
}
