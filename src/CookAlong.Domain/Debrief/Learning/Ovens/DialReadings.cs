using CookAlong.Domain.Meals;
using CookAlong.Domain.Runs;

namespace CookAlong.Domain.Debrief.Learning.Ovens;

/// <summary>What a run's log says of how far its ovens' dials are out: what a thermometer showed while nothing was heating up or cooling down.</summary>
public static class DialReadings
{
    /// <summary>Minutes after the plan has it hot: a thermostat first overshoots, and few ovens heat as fast as is written.</summary>
    const double Settles = 10;

    /// <summary>What was taken back was never read.</summary>
    public static IEnumerable<(OvenId Oven, DialReading Reading)> Of(RunId id, IReadOnlyList<Logged> events)
    {
        var (run, doors) = (Run.Empty(id), new List<(OvenId Oven, DateTimeOffset At)>());
        foreach (var logged in events)
        {
            run = run.Apply(logged);
            var step = logged.Event switch
            {
                RunEvent.StepStarted e => e.Step,
                RunEvent.StepFinished e => e.Step,
                RunEvent.TendFinished e => e.Step,
                _ => (StepId?)null,
            };
            if (step is not null && run.Plan.Steps.FirstOrDefault(planned => planned.Step == step)?.Oven is { } opened)
            {
                doors.Add((opened, logged.At));
            }
        }

        return from oven in run.OvenReadings
               from shown in oven.Value
               where shown.Dial > 0
                   && shown.At >= shown.HotAt.AddMinutes(Settles)
                   && !doors.Any(door => door.Oven == oven.Key && shown.At >= door.At && shown.At < door.At.AddMinutes(OvenFit.Recovers))
               select (oven.Key, new DialReading(shown.Dial, (double)shown.Celsius));
    }
}
