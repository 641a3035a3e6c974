using System.Collections.Immutable;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Runs;

/// <summary>The tends of a step: what is still to be done, and what was done late or not at all.</summary>
static class Tending
{
    /// <summary>Sooner, and it is no news. Common practice, no source.</summary>
    const int LateFrom = 5;

    /// <summary>With their minutes after the step's start.</summary>
    public static IEnumerable<(TendTurn Turn, int Minutes, HelperId? Helper)> Left(Run run, Step step) =>
        All(run, step).Where(one => !run.TendsDone.ContainsKey(one.Turn) && !IsPassedOver(run, one.Turn));

    /// <summary>Turns that are not to be done any more: done, or passed over since a later one was.</summary>
    public static IEnumerable<TendTurn> Over(Run run, Step step) =>
        All(run, step).Select(one => one.Turn).Where(turn => IsPassedOver(run, turn))
            .Concat(run.TendsDone.Keys.Where(turn => turn.Step == step.Id))
            .Distinct();

    /// <summary>In order of their time.</summary>
    public static ImmutableArray<TendNote> Notes(Run run, Step step)
    {
        if (run.StateOf(step.Id) is not { Started: { } started } state)
        {
            return [];
        }

        return
        [
            .. from one in All(run, step)
               let due = started.AddMinutes(one.Minutes)
               let late = run.TendsDone.TryGetValue(one.Turn, out var done) ? (int)(done - due).TotalMinutes : 0
               let isSkipped = !run.TendsDone.ContainsKey(one.Turn) && (IsPassedOver(run, one.Turn) || due < state.Finished)
               where isSkipped || late >= LateFrom
               orderby due
               select new TendNote(one.Turn, due, late, isSkipped),
        ];
    }

    static bool IsPassedOver(Run run, TendTurn turn) =>
        !run.TendsDone.ContainsKey(turn) && run.TendsDone.Keys.Any(done => done.Step == turn.Step && done.Tend == turn.Tend && done.Turn > turn.Turn);

    /// <summary>As planned, or at their nominal time where time was added and the plan has none.</summary>
    static IEnumerable<(TendTurn Turn, int Minutes, HelperId? Helper)> All(Run run, Step step)
    {
        var planned = run.Plan.Step(step.Id);
        for (var tend = 0; tend < step.Tends.Length; tend++)
        {
            var turn = 0;
            foreach (var nominal in step.Tends[tend].Times(run.MinutesOf(step.Id)))
            {
                var id = new TendTurn(step.Id, tend, turn);
                var told = run.Plan.Tends.FirstOrDefault(one => one.Step == step.Id && one.Tend == id.Tend && one.Turn == id.Turn);
                yield return (id, told is null ? nominal : told.At - planned.Start, told?.Helper);
                turn++;
            }
        }
    }
}

/// <summary>A tend that was done late, or not at all.</summary>
/// <param name="LateMinutes">0 when skipped.</param>
/// <param name="IsSkipped">A later turn was done, or the step was finished, without it.</param>
public sealed record TendNote(TendTurn Turn, DateTimeOffset Due, int LateMinutes, bool IsSkipped);
