using System.Collections.Immutable;
using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Intake.PlanFiles;

/// <summary>
/// Which tend of a step, and which of its turns, a file from elsewhere means when it says only when: the nearest
/// that nobody has taken yet, one of the same length before the others.
/// </summary>
internal sealed class TendGuess(Meal meal, ImmutableArray<PlannedStep> steps)
{
    private readonly HashSet<(StepId, int, int)> taken = [];
    private readonly Dictionary<StepId, Step> known = meal.Steps.DistinctBy(step => step.Id).ToDictionary(step => step.Id);
    private readonly Dictionary<StepId, PlannedStep> planned = steps.DistinctBy(step => step.Step).ToDictionary(step => step.Step);

    public (int Tend, int Turn) Of(StepId id, Minute at, int minutes)
    {
        if (!known.TryGetValue(id, out var step) || !planned.TryGetValue(id, out var when))
        {
            return (0, 0);
        }

        var all =
            from tend in step.Tends.Index()
            from turn in tend.Item.Times(when.Minutes).Index()
            where !taken.Contains((id, tend.Index, turn.Index))
            orderby tend.Item.Minutes == minutes descending, Math.Abs(when.Start + turn.Item - at)
            select (tend.Index, turn.Index);
        var (number, nth) = all.FirstOrDefault();
        taken.Add((id, number, nth));
        return (number, nth);
    }
}
