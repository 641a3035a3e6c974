using System.Globalization;
using CookAlong.Domain.Runs;
using CsCheck;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Domain.Tests.Runs;

/// <summary>Any taps by anybody, held against a dictionary that knows nothing but "waiting, running, done".</summary>
public sealed class RunProperties
{
    enum Ask { Start, Finish, TakeBack, Claim, LetGo, AddTime, Hold, GoOn }

    static readonly PersonId[] Everybody = [Host, Host, TobiPhone, IvoPhone, Watcher, Stranger];

    static readonly Gen<(PersonId By, Ask Ask, StepId Step)[]> Taps = Gen.Select(
        Gen.OneOf(Everybody), Gen.Enum<Ask>(), Gen.OneOf(Stuff, Roast, Carve, Roll, Boil, Serve, Trim)).Array[0, 100];

    [Fact]
    public void A_run_goes_as_a_naive_dictionary_says() => Taps.Sample(taps =>
    {
        var story = KitchenStory.Begun();
        var naive = new NaiveRun();
        foreach (var (by, ask, step) in taps)
        {
            var before = story.Run.Sequence;
            var isPossible = naive.Allows(ask, step);
            story.When(by, Command(ask, step));
            var isAccepted = story.Run.Sequence > before;
            if (ask is Ask.Claim or Ask.LetGo)
            {
                continue;
            }

            // The host may do everything that is possible; others at most that.
            Assert.True(by == Host ? isAccepted == isPossible : isPossible || !isAccepted, $"{by} {ask} {step}");
            if (isAccepted)
            {
                naive.Do(ask, step);
            }
        }

        Assert.Equal(naive.Describe(), string.Join(' ', Meal.Steps.Select(step => Word(story.Run.StateOf(step.Id)))));
        Assert.Equal(naive.IsPaused, story.Run.Pause is not null);
    }, iter: 2_000);

    [Fact]
    public void A_replayed_log_is_the_live_run() => Taps.Sample(taps =>
    {
        var story = Play(taps);
        var replayed = story.Log.Aggregate(Run.Empty(story.Run.Id), (run, logged) => run.Apply(logged));
        Assert.Equal(Describe(story.Run), Describe(replayed));
    });

    [Fact]
    public void The_same_taps_again_change_nothing() => Taps.Sample(taps =>
    {
        var story = Play(taps);
        var before = story.Run.Sequence;
        foreach (var command in story.Log.Select(logged => logged.Command).Distinct())
        {
            Assert.Equal(Decision.Nothing, story.Run.Decide(new Tap(command, Host, new RunCommand.EndRun()), Clock(13)));
        }

        Assert.Equal(before, story.Run.Sequence);
    });

    [Fact]
    public void Nobody_but_a_grown_up_ever_has_what_is_not_safe_for_children() => Taps.Sample(taps =>
    {
        var run = Play(taps).Run;
        Assert.DoesNotContain(Meal.Steps, step => !step.ChildSafe && run.HoldersOf(step.Id).Contains(Tobi));
    });

    [Fact]
    public void Every_step_is_on_the_board_exactly_once() => Taps.Sample(taps =>
    {
        var board = Play(taps).At(13).Board();
        var shown = board.Now.Concat(board.Next).Concat(board.Done).Where(card => card.Tend is null).Select(card => card.Step.Id.Value);
        Assert.Equal(Meal.Steps.Select(step => step.Id.Value).Order(), shown.Order());
    });

    static KitchenStory Play((PersonId By, Ask Ask, StepId Step)[] taps)
    {
        var story = KitchenStory.Begun();
        foreach (var (by, ask, step) in taps)
        {
            story.When(by, Command(ask, step));
        }

        return story;
    }

    static RunCommand Command(Ask ask, StepId step) => ask switch
    {
        Ask.Start => new RunCommand.StartStep(step),
        Ask.Finish => new RunCommand.FinishStep(step),
        Ask.TakeBack => new RunCommand.TakeBack(step),
        Ask.Claim => new RunCommand.ClaimStep(step),
        Ask.LetGo => new RunCommand.LetGoStep(step),
        Ask.AddTime => new RunCommand.AddTime(step, 5),
        Ask.Hold => new RunCommand.HoldEverything(),
        Ask.GoOn => new RunCommand.GoOn(),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    static string Word(StepState state) => state.Finished is not null ? "done" : state.Started is not null ? "running" : "waiting";

    static string Describe(Run run) => string.Create(CultureInfo.InvariantCulture, $"""
        {run.Sequence} {run.PlanBasis} {run.Pause} {run.Ended}
        {string.Join(';', run.People.Values.Select(person => person.ToString()).Order(StringComparer.Ordinal))}
        {string.Join(';', Meal.Steps.Select(step => $"{run.StateOf(step.Id)} {string.Join(',', run.HoldersOf(step.Id))}"))}
        """);

    sealed class NaiveRun
    {
        readonly Dictionary<StepId, string> steps = Meal.Steps.ToDictionary(step => step.Id, _ => "waiting");
        StepId? pausedAfter;

        public bool IsPaused { get; private set; }

        public bool Allows(Ask ask, StepId step) => ask switch
        {
            Ask.Start => steps[step] == "waiting" && Before(step).All(one => steps[one] == "done") && !IsPaused,
            Ask.Finish => steps[step] != "done" && Before(step).All(one => steps[one] == "done"),
            Ask.TakeBack => steps[step] != "waiting" && After(step).All(one => steps[one] == "waiting"),
            Ask.AddTime => steps[step] != "done",
            Ask.Hold => !IsPaused,
            Ask.GoOn => IsPaused,
            _ => false,
        };

        public void Do(Ask ask, StepId step)
        {
            if (ask == Ask.Start)
            {
                steps[step] = "running";
            }
            else if (ask == Ask.Finish)
            {
                steps[step] = "done";
                if (step == Boil && !IsPaused)
                {
                    (IsPaused, pausedAfter) = (true, Boil);
                }
            }
            else if (ask == Ask.TakeBack)
            {
                if (steps[step] == "done" && pausedAfter == step)
                {
                    (IsPaused, pausedAfter) = (false, null);
                }

                steps[step] = steps[step] == "done" ? "running" : "waiting";
            }
            else if (ask is Ask.Hold or Ask.GoOn)
            {
                (IsPaused, pausedAfter) = (ask == Ask.Hold, null);
            }
        }

        public string Describe() => string.Join(' ', Meal.Steps.Select(step => steps[step.Id]));

        static IEnumerable<StepId> Before(StepId step) => Meal.Step(step).After.Select(after => after.Step);

        static IEnumerable<StepId> After(StepId step) => Meal.Steps.Where(other => other.After.Any(after => after.Step == step)).Select(other => other.Id);
    }
}
