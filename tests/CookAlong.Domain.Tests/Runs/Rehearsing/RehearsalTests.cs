using System.Collections.Immutable;
using CookAlong.Domain.Runs;
using CookAlong.Domain.Runs.Rehearsing;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Domain.Tests.Runs.Rehearsing;

public sealed class RehearsalTests
{
    static Domain.Meals.Meal Lunch => SmallMeal.Meal;

    /// <summary>The small lunch, but nothing takes exactly as long as planned.</summary>
    static readonly Domain.Meals.Meal Uncertain = Lunch with
    {
        Dishes = [.. Lunch.Dishes.Select(dish => dish with { Steps = [.. dish.Steps.Select(step => step with { Way = step.Way with { Minutes = Spread(step.Way.Minutes.Likely) } })] })],
    };

    [Fact]
    public void Its_clock_runs_faster_from_the_moment_it_began() =>
        Assert.Equal(Clock(13), new RunClock(Clock(9), Clock(12), 60).At(Clock(9, 1)));

    [Fact]
    public void It_begins_a_minute_before_the_first_step() => Assert.Equal(Clock(12, 19), Rehearsal.Begins(Plan));

    [Fact]
    public void What_is_to_be_done_the_night_before_is_done_already()
    {
        var night = Plan with { Steps = [.. Plan.Steps.Select(step => step.Step == Stuff ? step with { Start = At(1), End = At(1, 20) } : step)] };
        var run = Begin(1, night);
        Assert.Equal((Clock(1, 20), null), (run.StateOf(Stuff).Finished, run.StateOf(Trim).Started));
        Assert.Equal(Clock(12, 39), Rehearsal.Begins(night));
    }

    [Fact]
    public void Everybody_of_the_plan_is_in_it() =>
        Assert.Equal(["Ivo", "Maren", "Tobi"], Begin(1, Plan).People.Values.Select(person => person.Name).Order());

    [Fact]
    public void Simulated_hands_do_every_step_and_end_it() =>
        Assert.All(Enumerable.Range(1, 40), number =>
        {
            var (run, _) = Play(number);
            Assert.All(Lunch.Steps, step => Assert.NotNull(run.StateOf(step.Id).Finished));
            Assert.InRange(run.Ended!.Value, Clock(15), Clock(18));
        });

    [Fact]
    public void They_slip_and_answer_calls_and_tend()
    {
        var events = Enumerable.Range(1, 40).SelectMany(number => Play(number).Events).Select(happened => happened.GetType()).ToHashSet();
        Assert.Superset(
            (HashSet<Type>)[typeof(RunEvent.StepTakenBack), typeof(RunEvent.TimeAdded), typeof(RunEvent.TendFinished), typeof(RunEvent.CallAcknowledged), typeof(RunEvent.KitchenWentOn)],
            events);
    }

    [Fact]
    public void A_phone_that_has_dropped_out_taps_nothing()
    {
        var silent = 0;
        for (var number = 1; number <= 20; number++)
        {
            var hands = new SimulatedHands(new RunId(new Guid(number, 0, 0, new byte[8])));
            Play(number, (tap, now) =>
            {
                var isHosting = tap.Command is RunCommand.GoOn or RunCommand.EndRun;
                Assert.True(isHosting || hands.DroppedSince(tap.By!.Value, now) is null);
            });
            silent += Enumerable.Range(0, 160).Count(minute => hands.DroppedSince(Host, Clock(12, 20).AddMinutes(minute)) is not null);
        }

        // 30 % of the spans of 40 minutes have a drop of three to eight; far from none and far from always.
        Assert.InRange(silent, 40, 400);
    }

    [Fact]
    public void A_job_a_guest_has_taken_is_left_to_the_guest()
    {
        var run = Begin(1, Plan);
        var guest = Person(77);
        run = Apply(run, guest, Clock(13), run.Decide(new Tap(Command(1), guest, new RunCommand.Join(guest, "Ada", Role.Helper, null)), Clock(13)));
        run = Apply(run, Host, Clock(13), run.Decide(new Tap(Command(2), Host, new RunCommand.GiveStep(Trim, run.People[guest].Helper!.Value)), Clock(13)));
        var taps = new SimulatedHands(run.Id).Taps(run, Board.Of(run, Clock(14, 50)));
        Assert.DoesNotContain(taps, tap => tap.Command is RunCommand.StartStep start && start.Step == Trim);
    }

    static (Run Run, List<RunEvent> Events) Play(int number, Action<Tap, DateTimeOffset>? look = null)
    {
        var run = Begin(number, Plan);
        var hands = new SimulatedHands(run.Id);
        var events = new List<RunEvent>();
        for (var now = Rehearsal.Begins(Plan); run.Ended is null && now < Clock(20); now = now.AddSeconds(20))
        {
            foreach (var tap in hands.Taps(run, Board.Of(run, now)).ToList())
            {
                look?.Invoke(tap, now);
                var decision = run.Decide(tap, now);
                run = Apply(run, tap.By, now, decision, tap.Id);
                events.AddRange(decision is Decision.Accepted accepted ? accepted.Events : []);
            }
        }

        return (run, events);
    }

    static Run Begin(int number, Domain.Planning.Plan plan)
    {
        var person = 100;
        return Rehearsal.Start(Uncertain, plan, Host, "Maren", Maren, null, () => Person(person++))
            .Aggregate(Run.Empty(new RunId(new Guid(number, 0, 0, new byte[8]))), (run, one) => run.Apply(new Logged(run.Sequence + 1, Command(0), one.By, one.At, one.Event)));
    }

    static Run Apply(Run run, PersonId? by, DateTimeOffset now, Decision decision, CommandId? id = null) =>
        decision is Decision.Accepted accepted
            ? accepted.Events.Aggregate(run, (state, happened) => state.Apply(new Logged(state.Sequence + 1, id ?? Command(500), by, now, happened)))
            : run;

    static Domain.Meals.Durations Spread(int likely) => new(Math.Max(1, likely * 3 / 4), likely, likely * 3 / 2);
}
