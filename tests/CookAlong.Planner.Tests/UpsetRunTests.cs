using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Domain.Runs;
using CookAlong.Planner.Quick;
using CsCheck;
using static CookAlong.Planner.Tests.PropertyTests;

namespace CookAlong.Planner.Tests;

/// <summary>Random small meals upset at random moments of their run, and planned anew.</summary>
public sealed class UpsetRunTests
{
    private static readonly PersonId Host = new(new Guid(1, 0, 0, new byte[8]));

    private enum Upset { RunsOver, TableLater, TableSooner, DishDropped, OvenSlow, HelperLeaves, ReadyEarly, DishAdded }

    [Theory, InlineData(Who.Solver), InlineData(Who.Quick)]
    public void Every_new_plan_leaves_what_has_begun_and_keeps_every_rule_for_the_rest(Who who)
    {
        var (planned, none) = (0, 0);
        Gen.Int.Sample(
            seed =>
            {
                if (UpsetAt(seed) is not { } story)
                {
                    return;
                }

                var (run, now, upset) = story;
                var request = run.Replan(new PlanLimits(TimeSpan.FromSeconds(10), Workers: 1, Deterministic: 0.5), now.Utc);
                IMealPlanner planner = who == Who.Solver ? new CpSatPlanner() : new QuickPlanner();
                var plan = planner.Plan(request, null, TestContext.Current.CancellationToken);
                if (plan.Status == PlanStatus.None)
                {
                    // Whoever has gone may have been the only one for it; a dish may not fit in twice even before anything has begun, nor
                    // into an oven in which another is kept warm by now.
                    Assert.True(who == Who.Quick || upset == Upset.HelperLeaves || (upset == Upset.DishAdded && (IsOneKeptWarm(run, now) || !HasPlan(run.Meal))), $"no plan after {upset}");
                    none++;
                    return;
                }

                planned++;
                Holds(run, request, plan, now);
            },
            iter: 300, threads: 1, print: seed => $"meal {seed}");

        Assert.True(planned > 20 && none < planned / 10, $"{planned} planned anew, {none} not");
    }

    private static bool IsOneKeptWarm(Run run, Minute now) => run.Plan.Holds.Any(hold => hold.Place == HoldPlace.WarmOven && hold.From <= now);

    private static bool HasPlan(Meal meal) =>
        CpSatPlanner.PlanOnly(new PlanRequest(meal, new PlanLimits(TimeSpan.FromSeconds(3), Workers: 1, Deterministic: 2))).Status != PlanStatus.None;

    private static void Holds(Run run, PlanRequest request, Plan plan, Minute now)
    {
        var facts = request.So!.Facts.ToDictionary(fact => fact.Step);
        Assert.Equal(run.Meal.Steps.Select(step => step.Id), plan.Steps.Select(step => step.Step));
        foreach (var step in plan.Steps)
        {
            if (facts.TryGetValue(step.Step, out var fact))
            {
                Assert.Equal((fact.Start, fact.End, run.Plan.Step(step.Step).Option), (step.Start, step.End, step.Option));
            }
            else
            {
                Assert.True(step.Start >= now, $"{step.Step} starts before now");
                Assert.All(
                    run.Meal.Step(step.Step).After.Where(after => facts.ContainsKey(after.Step)),
                    after => Assert.True(step.Start - facts[after.Step].End >= after.Least, $"{step.Step} does not wait for {after.Step}"));
                Assert.All(
                    plan.Steps.Where(other => facts.ContainsKey(other.Step) && other.Helpers.Intersect(step.Helpers).Any()),
                    other => Assert.True(step.Start >= other.End, $"{step.Step} and {other.Step} want the same hands"));
            }
        }

        // What has begun, and what it forces on the rest, is as the kitchen made it; a fixed time may have passed.
        bool IsMade(DishId? dish) => dish is { } id && run.Meal.Dishes.Single(one => one.Id == id).Steps.All(step => facts.ContainsKey(step.Id));
        bool HasBegun(StepId? step) => step is { } id && facts.ContainsKey(id);
        Assert.DoesNotContain(
            PlanCheck.Check(request.Meal, plan),
            breach => breach.Rule != RuleId.FixedTimes && !(breach.At < now) && !HasBegun(breach.Step) && !HasBegun(breach.Other) && !IsMade(breach.Dish));
    }

    /// <summary>Cooked by the plan up to some minute, and then upset; null where the meal has no plan or the upset is refused.</summary>
    private static (Run Run, Minute Now, Upset Upset)? UpsetAt(int seed)
    {
        var meal = new RandomMeals(seed, 6, 5).Next();
        var told = CpSatPlanner.PlanOnly(new PlanRequest(meal, new PlanLimits(TimeSpan.FromSeconds(3), Workers: 1, Deterministic: 0.5)));
        if (told.Status == PlanStatus.None || meal.Helpers.Any(helper => !helper.Available.IsEmpty))
        {
            return null;
        }

        var random = new Random(seed);
        var first = told.Steps.Min(step => step.Start);
        var now = first + random.Next(Math.Max(1, told.Courses.Max(course => course.TableTime) - first));
        var run = Cooked(meal, told, now);
        var upset = (Upset)random.Next(8);
        var running = run.Meal.Steps.FirstOrDefault(step => run.StateOf(step.Id).IsRunning);
        RunCommand command = upset switch
        {
            Upset.RunsOver => new RunCommand.AddTime(running?.Id ?? default, 1 + random.Next(20)),
            Upset.ReadyEarly => new RunCommand.FinishStep(running?.Id ?? default),
            Upset.TableLater => new RunCommand.MoveTable(meal.Courses[0].Id, 1 + random.Next(40)),
            Upset.TableSooner => new RunCommand.MoveTable(meal.Courses[0].Id, -1 - random.Next(20)),
            Upset.DishDropped => new RunCommand.DropDish(meal.Dishes[random.Next(meal.Dishes.Length)].Id),
            Upset.DishAdded => new RunCommand.AddDish(Again(meal.Dishes[random.Next(meal.Dishes.Length)])),
            Upset.OvenSlow => new RunCommand.OvenStillHeats(meal.Kitchen.Ovens[0].Id, 1 + random.Next(20)),
            Upset.HelperLeaves => new RunCommand.HelperLeaves(meal.Helpers[^1].Id, random.Next(30)),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
        var tap = new Tap(new CommandId(new Guid(9, 9, 9, new byte[8])), Host, command);
        return run.Decide(tap, now.Utc) is Decision.Accepted { Events: [var happened] } ? (Told(run, now, happened), now, upset) : null;
    }

    /// <summary>The same dish once more, under ids of its own; what waits for other dishes does not.</summary>
    private static Dish Again(Dish dish)
    {
        static StepId Renamed(StepId id) => new($"again-{id.Value}");
        var own = dish.Steps.Select(step => step.Id).ToHashSet();
        return dish with
        {
            Id = new($"again-{dish.Id.Value}"),
            Steps = [.. dish.Steps.Select(step => step with { Id = Renamed(step.Id), At = null, Window = null, By = [], After = [.. step.After.Where(after => own.Contains(after.Step)).Select(after => after with { Step = Renamed(after.Step) })] })],
        };
    }

    private static Run Cooked(Meal meal, Plan told, Minute now)
    {
        var run = Run.Start(meal, told, Host, "Host", null).Aggregate(Run.Empty(new RunId(Guid.Empty)), (state, happened) => Told(state, told.NotBefore, happened));
        var begun = told.Steps.Where(step => step.Start <= now).SelectMany(step => new (Minute At, RunEvent What)[]
        {
            (step.Start, new RunEvent.StepStarted(step.Step)), (step.End, new RunEvent.StepFinished(step.Step)),
        });
        var tends = told.Tends.Where(tend => tend.End <= now).Select(tend => (At: tend.At, What: (RunEvent)new RunEvent.TendFinished(tend.Step, tend.Tend, tend.Turn)));
        return begun.Concat(tends).Where(one => one.At <= now).OrderBy(one => one.At).ThenBy(one => one.What is RunEvent.StepFinished ? 1 : 0)
            .Aggregate(run, (state, one) => Told(state, one.At, one.What));
    }

    private static Run Told(Run run, Minute at, RunEvent happened) =>
        run.Apply(new Logged(run.Sequence + 1, new CommandId(new Guid((int)run.Sequence, 2, 0, new byte[8])), Host, at.Utc, happened));
}
