using System.Collections.Immutable;
using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Planner.Quick;

namespace CookAlong.Planner.Tests;

/// <summary>Job shops of our own, a hundred operations each, in which one takes longer: among all the small prices of a new plan the one for being late is the one that counts.</summary>
public sealed class LessLateFirstTests
{
    private const int Size = 10;

    /// <summary>Minutes of the four together, by counted effort: 274 with less lateness looked for first, 294 when the whole price was looked for at once.</summary>
    private const int MostLate = 280;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public void A_slip_makes_a_running_meal_no_later_than_it_must() =>
        Assert.InRange(Enumerable.Range(1, 4).Sum(LateAfterASlip), 1, MostLate);

    /// <summary>What the solver finds to be less late, with hands only counted, becomes a plan with names that is no later.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void The_quick_search_goes_on_from_what_is_less_late(int shop)
    {
        var request = AfterASlip(shop);
        var clock = Clock.Of(request.So!, request.Now);
        var plan = new CpSatPlanner().Plan(request, null, Stop);
        var sooner = new Draft(
            plan.Steps.ToImmutableDictionary(step => step.Step, step => new DraftStep(clock.Of(step.Start), clock.Of(step.End), step.Option, step.Oven, step.Grill)),
            Tends: [],
            [.. plan.Holds.Select(hold => new DraftHold(hold.Dish, hold.Hold, clock.Of(hold.From), hold.Oven))],
            plan.Courses.ToImmutableDictionary(course => course.Course, course => clock.Of(course.TableTime)),
            Jobs: []);

        var quick = QuickSearch.Of(request.Meal, clock, Told.Of(request), Prices.Usual, seed: 1, request.So)!;
        quick.Run(first: 500, more: 0, () => false);
        Assert.True(plan.Cost.LateMinutes < quick.Late, $"nothing to go on from: {plan.Cost.LateMinutes} and {quick.Late} minutes late");

        quick.GoOnFrom(sooner, layouts: 200, () => false, better: null);

        Assert.InRange(quick.Late, 0, plan.Cost.LateMinutes);
    }

    /// <summary>What has begun stands where it stands: to change it would be a layout for nothing.</summary>
    [Fact]
    public void Only_what_is_still_to_come_is_changed()
    {
        var request = AfterASlip(1);
        var work = Reading.Of(request.Meal, Clock.Of(request.So!, request.Now), Told.Of(request), Prices.Usual, request.So)!;
        var begun = work.Steps.Where(step => step.Begun is not null).Select(step => step.Index).ToArray();
        var (genes, layout, random) = (Genes.FirstGuess(work, longestFirst: false), new Layout(work), new Random(1));
        new Backward(work).Lay(genes, layout);
        Array.Fill(genes.Lead, -1);
        Array.Fill(genes.Person, -1);

        for (var change = 0; change < 10_000; change++)
        {
            Mutation.Change(genes, work, layout, random);
        }

        Assert.NotEmpty(begun);
        Assert.All(begun, step => Assert.Equal((-1, -1), (genes.Lead[step], genes.Person[step])));
        Assert.All(work.ToCome, step => Assert.NotEqual((-1, -1), (genes.Lead[step], genes.Person[step])));
    }

    private static int LateAfterASlip(int seed) => new CpSatPlanner().Plan(AfterASlip(seed), null, Stop).Cost.LateMinutes;

    private static PlanRequest AfterASlip(int seed)
    {
        var meal = Shop(seed);
        var told = new QuickPlanner().Plan(new PlanRequest(meal, new PlanLimits(TimeSpan.FromMinutes(5), Deterministic: 1)), null, Stop);
        var now = told.NotBefore + 20;
        var slips = told.Steps.First(step => step.Start <= now && now < step.End).Step;
        var facts = told.Steps.Where(step => step.Start <= now)
            .Select(step => new StepFact(step.Step, step.Start, step.End + (step.Step == slips ? 15 : 0), step.End <= now, []));
        var limits = new PlanLimits(TimeSpan.FromMinutes(5), Workers: 1, Deterministic: 1);
        return new PlanRequest(meal, limits, now, new SoFar(told, [.. facts], new Dictionary<OvenId, int>()));
    }

    private static Meal Shop(int seed)
    {
        var random = new Random(seed);
        var jobs = Enumerable.Range(0, Size).Select(_ =>
        {
            var order = Enumerable.Range(0, Size).ToArray();
            random.Shuffle(order);
            return order.SelectMany(machine => new[] { machine, random.Next(5, 40) }).ToArray();
        });
        return JobShop.Of([.. jobs], minutes: 300, waits: 600);
    }
}
