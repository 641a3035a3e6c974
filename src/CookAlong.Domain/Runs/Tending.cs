using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Runs;

/// <summary>The tends of a step that are still to be done.</summary>
static class Tending
{
    /// <summary>
    /// With their minutes after the step's start: as planned, or at their nominal time where time was added and
    /// the plan has none.
    /// </summary>
    public static IEnumerable<(TendTurn Turn, int Minutes, HelperId? Helper)> Left(Run run, Step step)
    {
        var planned = run.Plan.Step(step.Id);
        for (var tend = 0; tend < step.Tends.Length; tend++)
        {
            var turn = 0;
            foreach (var nominal in step.Tends[tend].Times(run.MinutesOf(step.Id)))
            {
                var id = new TendTurn(step.Id, tend, turn);
                if (!run.TendsDone.ContainsKey(id))
                {
                    var told = run.Plan.Tends.FirstOrDefault(one => one.Step == step.Id && one.Tend == id.Tend && one.Turn == id.Turn);
                    yield return (id, told is null ? nominal : told.At - planned.Start, told?.Helper);
                }

                turn++;
            }
        }
    }
}
