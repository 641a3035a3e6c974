using CookAlong.Domain.Doneness;
using CookAlong.Domain.Runs;

namespace CookAlong.Domain.Debrief.Learning.Ovens;

/// <summary>What the joints of a run's log say of the ovens they roasted in.</summary>
public static class JointReadings
{
    /// <summary>Of each joint that was taken out, as its oven was programmed and its readings stood then; what was taken back was never read.</summary>
    public static IEnumerable<(OvenId Oven, JointReading Reading)> Of(RunId id, IReadOnlyList<Logged> events)
    {
        var (run, found) = (Run.Empty(id), new Dictionary<StepId, (OvenId, JointReading)>());
        foreach (var logged in events)
        {
            run = run.Apply(logged);
            if (logged.Event is RunEvent.StepTakenBack back)
            {
                found.Remove(back.Step);
            }

            if (logged.Event is RunEvent.StepFinished { Step: var step } && run.Plan.Step(step).Oven is { } oven
                && run.RoastingOf(run.Meal.Step(step)) is { } roasting
                && OvenHint.Of(roasting, [.. run.StateOf(step).Readings.Select(reading => new ProbeReading(reading.At, (double)reading.Celsius))]) is { } hint)
            {
                found[step] = (oven, new(run.Meal.Kitchen.Ovens.Single(one => one.Id == oven).ReadsHighBy - hint.WarmerBy, hint.Error));
            }
        }

        return found.Values;
    }
}
