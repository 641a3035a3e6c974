using System.Collections.Immutable;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Domain.Runs;

namespace CookAlong.Domain.Debrief;

/// <summary>One pass over a run's events: what its end state does not tell any more.</summary>
sealed class RunStory
{
    readonly Dictionary<StepId, PlannedStep> told = [];
    readonly HashSet<StepId> saidToHaveBegun = [];
    readonly Dictionary<StepId, List<Sign>> signs = [];

    public RunStory(IEnumerable<Logged> events)
    {
        var calls = new CallNotes();
        foreach (var logged in events)
        {
            Run = Run is null ? Run.Empty(default) : Run;
            calls.Before(Run, logged);
            Note(logged);
            Run = Run.Apply(logged);
        }

        if (Run is not { HasBegun: true })
        {
            throw new ArgumentException("A run begins with its start.", nameof(events));
        }

        Calls = calls.All(Run);
        Moved = Run.Meal.Courses.Where(course => course.TableTime != Meal.Courses.Single(one => one.Id == course.Id).TableTime).ToDictionary(course => course.Id, course => course.TableTime);
    }

    /// <summary>As it is after the last event.</summary>
    public Run Run { get; }

    public Meal Meal { get; private set; } = null!;

    public Plan Plan { get; private set; } = null!;

    public ImmutableArray<CallNote> Calls { get; }

    /// <summary>Courses that are not where they began.</summary>
    public IReadOnlyDictionary<CourseId, Minute> Moved { get; }

    public StepState StateOf(StepId step) =>
        Run.LeftOut.Values.SelectMany(dish => dish.States).Where(entry => entry.Key == step).Select(entry => entry.Value).FirstOrDefault(Run.StateOf(step));

    /// <summary>Begun and finished.</summary>
    public bool IsDone(StepId step) => !WasLeftOut(step) && StateOf(step) is { Started: not null, Finished: not null };

    /// <summary>By the plan that people had when it began.</summary>
    public PlannedStep ToldOf(StepId step) => told.GetValueOrDefault(step, Plan.Step(step));

    /// <summary>Taps that were about it, in order.</summary>
    public IReadOnlyList<Sign> SignsOf(StepId step) => signs.GetValueOrDefault(step, []);

    public bool WasLeftOut(StepId step) => Run.LeftOut.ContainsKey(Meal.DishOf(step).Id);

    public StepLine LineOf(PlannedStep planned)
    {
        var state = StateOf(planned.Step);
        return new(planned.Step, Meal.DishOf(planned.Step).Id, planned.Start, planned.End, state.Started, state.Finished, saidToHaveBegun.Contains(planned.Step), WasLeftOut(planned.Step), HelpersOf(planned.Step));
    }

    /// <summary>Whose work it was; where nobody held it, who tapped.</summary>
    public ImmutableArray<HelperId> HelpersOf(StepId id)
    {
        var (state, planned) = (StateOf(id), ToldOf(id));
        if (Meal.Step(id).WayOf(planned.Option).Attention != Attention.HandsOn)
        {
            return [];
        }

        return state.Holders is { IsEmpty: false } holders ? holders
            : state.Holders is null ? planned.Helpers
            : state.By is { } by && Run.People.GetValueOrDefault(by)?.Helper is { } helper ? [helper]
            : [];
    }

    void Note(Logged logged)
    {
        switch (logged.Event)
        {
            case RunEvent.RunStarted e:
                (Meal, Plan) = (e.Meal, e.Plan);
                break;
            case RunEvent.DishAdded e:
                // Looked back on as if it had been planned from the first, by when it was added.
                (Meal, Plan) = (Meal with { Dishes = Meal.Dishes.Add(e.Dish) }, Run.With(Plan, e.Dish, e.Starts));
                break;
            case RunEvent.StepStarted e:
                told[e.Step] = Run.Plan.Step(e.Step);
                saidToHaveBegun.Add(e.Step);
                Add(e.Step, logged.At, SignKind.Began);
                break;
            case RunEvent.StepFinished e:
                told.TryAdd(e.Step, Run.Plan.Step(e.Step));
                Add(e.Step, logged.At, SignKind.Finished);
                break;
            case RunEvent.StepTakenBack e:
                if (Run.StateOf(e.Step).Finished is null)
                {
                    saidToHaveBegun.Remove(e.Step);
                    told.Remove(e.Step);
                }

                break;
            case RunEvent.TimeAdded e:
                Add(e.Step, logged.At, SignKind.TimeAdded);
                break;
            case RunEvent.CallAcknowledged e:
                foreach (var step in Run.Meal.Steps.Where(step => CallIds.IsAbout(e.Call, step.Id)))
                {
                    Add(step.Id, logged.At, SignKind.CallAnswered);
                }

                break;
            default:
                // Everything else is in the run's end state, or nobody asks afterwards.
                break;
        }
    }

    void Add(StepId step, DateTimeOffset at, SignKind kind)
    {
        if (!signs.TryGetValue(step, out var known))
        {
            signs[step] = known = [];
        }

        known.Add(new Sign(at, kind));
    }
}

/// <summary>That somebody had a step before their eyes.</summary>
public readonly record struct Sign(DateTimeOffset At, SignKind Kind);

public enum SignKind { Began, Finished, TimeAdded, CallAnswered }
