using System.Collections.Immutable;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Runs;

namespace CookAlong.Domain.Debrief;

/// <summary>A call that was answered late, by a tap on it or by what it asked for, or not at all.</summary>
/// <param name="Due">When it came.</param>
/// <param name="LateMinutes">0 when missed.</param>
public sealed record CallNote(CallKind Kind, StepId Step, string? Tend, DateTimeOffset Due, int LateMinutes, bool IsMissed);

/// <summary>Gathers them while a run's events go by.</summary>
sealed class CallNotes
{
    /// <summary>Sooner, and it is no news; the same as for tends.</summary>
    const int LateFrom = 5;

    readonly List<CallNote> notes = [];

    /// <param name="run">Before the event.</param>
    public void Before(Run run, Logged logged)
    {
        switch (logged.Event)
        {
            case RunEvent.StepStarted e when run.StateOf(e.Step) is var state:
                var step = run.Meal.Step(e.Step);
                var isHot = run.WayOf(step).Uses.IsOnTheHeat;
                if (isHot || run.WayOf(step).Attention == Attention.HandsOn)
                {
                    Add(run, isHot ? CallKind.In : CallKind.Begin, isHot ? CallIds.In(e.Step, state) : CallIds.Begin(e.Step, state), e.Step, logged.At, () => new Expectation(run, logged.At).CalledAt(step));
                }

                break;
            case RunEvent.StepFinished e when run.StateOf(e.Step) is { Started: { } started } state && run.WayOf(run.Meal.Step(e.Step)).Uses.IsOnTheHeat:
                Add(run, CallKind.Out, CallIds.Out(e.Step, state), e.Step, logged.At, () => started.AddMinutes(run.MinutesOf(e.Step)));
                break;
            case RunEvent.RunEnded:
                // What rang when it ended, and nobody had answered.
                notes.AddRange(CallSchedule.Of(run, logged.At)
                    .Where(call => call is { IsAcknowledged: false, Step: not null, Kind: CallKind.In or CallKind.Begin or CallKind.Out } && call.Due <= logged.At)
                    .Select(call => new CallNote(call.Kind, call.Step!.Value, null, call.Due, 0, IsMissed: true)));
                break;
            default:
                // No other event settles a call that can be late.
                break;
        }
    }

    /// <param name="run">At its end.</param>
    public ImmutableArray<CallNote> All(Run run)
    {
        var tends = run.Meal.Steps.SelectMany(step => run.TendNotesOf(step.Id).Select(note =>
            new CallNote(CallKind.Tend, step.Id, step.Tends[note.Turn.Tend].Text, note.Due, note.LateMinutes, note.IsSkipped)));
        return [.. notes.Concat(tends).OrderBy(note => note.Due)];
    }

    void Add(Run run, CallKind kind, CallId id, StepId step, DateTimeOffset at, Func<DateTimeOffset> dueAt)
    {
        var answered = run.Acknowledged.TryGetValue(id, out var said) && said < at ? said : at;
        var due = dueAt();
        if ((int)(answered - due).TotalMinutes is >= LateFrom and var late)
        {
            notes.Add(new CallNote(kind, step, null, due, late, IsMissed: false));
        }
    }
}
