using CookAlong.Domain.Debrief.Learning;
using CookAlong.Domain.Runs;
using CsCheck;

namespace CookAlong.Domain.Tests.Debrief.Learning;

public sealed class HouseholdPaceTests
{
    static readonly string[] Kinds = ["peel", "chop", "whisk", "roll", "fill", "carve"];

    static readonly string[] People = ["Maren", "Ivo"];

    /// <summary>A household that peels slowly, chops quickly, and in which Ivo is slower than Maren.</summary>
    static IEnumerable<Timing> Simulated(int meals, int seed, Func<string, double> factorOf, double chance = .25)
    {
        var random = new Random(seed);
        for (var meal = 0; meal < meals; meal++)
        {
            var day = .1 * Normal(random);
            for (var step = 0; step < 24; step++)
            {
                var (kind, person) = (Kinds[step % Kinds.Length], People[(step + meal) % 2]);
                var likely = 5 + (step % 7 * 5);
                var written = new WrittenTime(likely * .75, likely, likely * 1.4);
                var slower = person == "Ivo" ? 1.2 : 1;
                yield return TimingOf(meal, $"step {step}", kind, person, written, likely * factorOf(kind) * slower * Math.Exp(day + (chance * Normal(random))));
            }
        }
    }

    static Timing TimingOf(int meal, string step, string kind, string? person, WrittenTime written, double minutes) =>
        new(new RunId(new Guid(meal + 1, 0, 0, new byte[8])), StepKey.Of("dish", step), kind, person, written, minutes);

    static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    static double SlowPeeler(string kind) => kind == "peel" ? 1.5 : kind == "chop" ? .8 : 1.1;

    [Fact]
    public void The_habits_of_simulated_households_are_found()
    {
        // Both people do as much, so a kind of work shows the middle of the two.
        var middle = Math.Sqrt(1.2);
        var off = Enumerable.Range(0, 20).SelectMany(seed =>
        {
            var pace = new HouseholdPace(Simulated(20, seed, SlowPeeler));
            return pace.Kinds.Select(kind => Math.Abs(Math.Log(kind.Factor / (SlowPeeler(kind.Name) * middle))));
        }).ToArray();
        Assert.True(off.Average() < .1, $"off by {off.Average():P1} on average");
    }

    [Fact]
    public void Of_simulated_households_the_range_holds_eight_in_ten_of_the_next_meal()
    {
        var held = Enumerable.Range(0, 40).SelectMany(seed =>
        {
            var all = Simulated(7, 100 + seed, SlowPeeler).ToArray();
            var next = all[^24..];
            var pace = new HouseholdPace(all[..^24]);
            return next.Select(one => pace.Of(one.Step, one.Kind, one.Written).Minutes is var range && range.Least <= one.Minutes && one.Minutes <= range.Most);
        }).ToArray();
        Assert.InRange(held.Average(one => one ? 1 : 0), .75, .92);
    }

    [Fact]
    public void One_meal_changes_little_and_ten_of_the_same_much()
    {
        var one = new HouseholdPace(Simulated(1, 5, _ => 1.6, chance: 0));
        var ten = new HouseholdPace(Simulated(10, 5, _ => 1.6, chance: 0));
        var written = new WrittenTime(15, 20, 28);
        var key = StepKey.Of("dish", "step 3");
        Assert.InRange(one.Of(key, "roll", written).Factor, 1.05, 1.35);
        Assert.InRange(ten.Of(key, "roll", written).Factor, 1.5, 1.85);
    }

    [Fact]
    public void Nothing_seen_leaves_what_is_written_in_the_middle()
    {
        var learned = new HouseholdPace([]).Of(StepKey.Of("dish", "step"), "peel", new WrittenTime(15, 20, 28));
        Assert.Equal(20, learned.Minutes.Likely, 9);
        Assert.Equal(0, learned.Meals);
    }

    [Fact]
    public void The_same_log_read_twice_is_learned_once()
    {
        var meals = Simulated(3, 9, SlowPeeler).ToArray();
        var (once, twice) = (new HouseholdPace(meals), new HouseholdPace([.. meals, .. meals]));
        foreach (var timing in meals)
        {
            Assert.Equal(once.Of(timing.Step, timing.Kind, timing.Written), twice.Of(timing.Step, timing.Kind, timing.Written));
        }
    }

    [Fact]
    public void Of_many_meals_the_latest_count()
    {
        var latest = Simulated(HouseholdPace.MostMeals, 11, SlowPeeler).ToArray();
        var before = Simulated(3, 12, _ => 3).Select(timing => timing with { Run = new RunId(new Guid(1000 + timing.Run.Value.ToByteArray()[0], 0, 0, new byte[8])) });
        Assert.Equal(new HouseholdPace(latest).Kinds, new HouseholdPace([.. latest, .. before]).Kinds);
    }

    [Fact]
    public void Names_are_told_in_the_same_order_on_every_machine()
    {
        // In most cultures' own orders "adam" comes first.
        var written = new WrittenTime(8, 10, 13);
        var pace = new HouseholdPace(new[] { "adam", "Wim", "Zoe" }.Select(name => TimingOf(1, $"step of {name}", "peel", name, written, 10)));
        Assert.Equal(["Wim", "Zoe", "adam"], pace.People.Select(person => person.Name));
    }

    [Fact]
    public void One_time_far_out_moves_the_likely_time_less_than_half_as_far_as_it_would_the_average()
    {
        var written = new WrittenTime(8, 10, 13);
        var usual = Enumerable.Range(0, 6).Select(meal => TimingOf(meal, "peel", "peel", "Maren", written, 10)).ToArray();
        var odd = TimingOf(6, "peel", "peel", "Maren", written, 45);
        double Likely(IEnumerable<Timing> timings) => new HouseholdPace(timings).Of(odd.Step, "peel", written).Minutes.Likely;
        var average = Math.Exp(Math.Log(4.5) / 7);
        Assert.InRange(Likely([.. usual, odd]) / Likely(usual), 1, 1 + ((average - 1) / 2));
    }

    [Fact]
    public void A_step_never_seen_is_thought_slow_where_its_kind_of_work_was()
    {
        var pace = new HouseholdPace(Simulated(6, 3, SlowPeeler));
        var written = new WrittenTime(15, 20, 28);
        var (peel, chop) = (pace.Of(StepKey.Of("new", "peel swedes"), "peel", written), pace.Of(StepKey.Of("new", "chop kale"), "chop", written));
        Assert.True(peel.Factor > 1.15 * chop.Factor, $"{peel.Factor:F2} {chop.Factor:F2}");
    }

    [Fact]
    public void The_likely_time_lies_between_the_written_and_the_seen_and_the_range_around_it()
    {
        (from likely in Gen.Int[2, 120]
         from factor in Gen.Double[.4, 2.5]
         from meals in Gen.Int[1, 8]
         select (likely, factor, meals)).Sample(one =>
        {
            var written = new WrittenTime(one.likely * .8, one.likely, one.likely * 1.3);
            var learned = new HouseholdPace(Enumerable.Range(0, one.meals).Select(meal => TimingOf(meal, "step", "peel", null, written, one.likely * one.factor)))
                .Of(StepKey.Of("dish", "step"), "peel", written);
            var (low, high) = (Math.Min(1, one.factor), Math.Max(1, one.factor));
            return learned.Factor >= low - 1e-9 && learned.Factor <= high + 1e-9
                && learned.Minutes.Least < learned.Minutes.Likely && learned.Minutes.Likely < learned.Minutes.Most
                && learned.Meals == one.meals;
        }, iter: 200);
    }
}
