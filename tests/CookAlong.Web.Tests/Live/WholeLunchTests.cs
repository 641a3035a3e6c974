using CookAlong.Domain;
using CookAlong.Domain.Debrief;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Domain.Runs;
using CookAlong.Intake.MealFiles;
using CookAlong.Planner;

namespace CookAlong.Web.Tests.Live;

/// <summary>The demo lunch cooked through, a few minutes at a time, by people who are now and then late.</summary>
public sealed class WholeLunchTests
{
    static readonly Lazy<(Meal Meal, Plan Plan)> Lunch = new(() =>
    {
        var meal = MealFile.Read(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "seed-data", "meals", "midwinter-lunch.json"))).Meal!;
        return (meal, new CpSatPlanner().Plan(new PlanRequest(meal, new PlanLimits(TimeSpan.FromSeconds(5)))));
    });

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Everything_gets_cooked_and_work_is_called_for_at_one_time(int seed)
    {
        var (meal, plan) = Lunch.Value;
        var random = new Random(seed);
        var host = new PersonId(new Guid(1, 0, 0, new byte[8]));
        var commands = 0;
        var now = plan.NotBefore.Utc;
        var log = new List<Logged>();
        var run = Run.Start(meal, plan, host, "Host", meal.Helpers[0].Id).Aggregate(Run.Empty(new RunId(host.Value)), (state, happened) => After(state, NewCommand(), happened));
        var due = new Dictionary<CallId, DateTimeOffset>();

        // A late lunch is allowed for; one that never ends is not.
        var last = (plan.Courses.Max(course => course.TableTime) + 600).Utc;
        while (meal.Steps.Any(step => run.StateOf(step.Id).Finished is null))
        {
            Assert.True(now < last, "Nothing goes on any more.");
            var board = Board.Of(run, now);
            Assert.Equal(meal.Steps.Count(), board.Now.Concat(board.Next).Concat(board.Done).Count(card => card.Tend is null));
            foreach (var call in board.Calls.Where(call => call.Due <= now))
            {
                // Table time and the dial move with the kitchen for as long as it is behind; work is called for at one time.
                Assert.True(call.Step is null || due.GetValueOrDefault(call.Id, call.Due) == call.Due, $"{call.Id} moved after it had come.");
                due[call.Id] = call.Due;
            }

            if (board.Pause is not null)
            {
                Tap(new RunCommand.GoOn());
            }

            foreach (var card in board.Now.Where(_ => random.Next(10) < 7))
            {
                if (card.Tend is { } tend)
                {
                    Tap(new RunCommand.FinishTend(card.Step.Id, tend.Tend, tend.Turn));
                }
                else if (card.State == CardState.Due && random.Next(20) > 0)
                {
                    Tap(new RunCommand.StartStep(card.Step.Id));
                }
                else if (card.State == CardState.Due || card.Ends <= now)
                {
                    if (card.Core is { } core && core.Step == card.Step.Id)
                    {
                        // Nobody has looked before, so the host goes by something else.
                        Tap(new RunCommand.VouchFor(core.Step, "three other thermometers"));
                    }

                    Tap(new RunCommand.FinishStep(card.Step.Id));
                }
            }

            // Nights and long roasts are skipped: on to the next minute in which anything can happen.
            var next = board.Next.Select(card => card.Starts).Concat(board.Now.Select(card => card.Ends)).Where(at => at > now).DefaultIfEmpty(now).Min();
            now = next > now.AddMinutes(5) && board.Now.All(card => card.State == CardState.Running) ? next : now.AddMinutes(random.Next(1, 4));
        }

        var served = Board.Of(run, now);
        Assert.Empty(served.Now);
        Assert.Empty(served.Next);
        Assert.All(served.Courses, course => Assert.True(course.Expected >= course.Promised));
        Assert.Contains(due.Keys, call => call.Value.StartsWith("tend:", StringComparison.Ordinal));

        // Looked back on, every table was ready no sooner than its last dish, and nothing cost it more than it was late.
        var debrief = RunDebrief.Of(log);
        Assert.All(debrief.Courses, course => Assert.True(course.Ready >= Minute.Of(debrief.Waits.Where(wait => meal.Dishes.Single(dish => dish.Id == wait.Dish).Course == course.Course).Max(wait => wait.Since))));
        Assert.NotEmpty(debrief.Slips);
        Assert.All(debrief.Slips, slip => Assert.InRange(slip.TableMinutes, 0, debrief.Courses.Max(course => course.LateMinutes!.Value)));

        Run After(Run before, CommandId command, RunEvent happened)
        {
            log.Add(new Logged(before.Sequence + 1, command, host, now, happened));
            return before.Apply(log[^1]);
        }

        CommandId NewCommand() => new(new Guid(++commands, 3, 0, new byte[8]));

        void Tap(RunCommand command)
        {
            var tap = new Tap(NewCommand(), host, command);
            if (run.Decide(tap, now) is Decision.Accepted accepted)
            {
                run = accepted.Events.Aggregate(run, (state, happened) => After(state, tap.Id, happened));
            }
        }
    }
}
