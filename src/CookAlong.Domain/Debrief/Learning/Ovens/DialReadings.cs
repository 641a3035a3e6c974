using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Domain.Runs;

namespace CookAlong.Domain.Debrief.Learning.Ovens;

/// <summary>What a run's log says of how far its ovens' dials are out: what a thermometer showed while nothing was heating up or cooling down.</summary>
public static class DialReadings
{
    /// <summary>Minutes after the plan has it hot: a thermostat first overshoots, and few ovens heat as fast as is written.</summary>
    const double Settles = 10;

    /// <summary>Minutes after the door was open; as <see cref="OvenFit"/> has it.</summary>
    const double Recovers = 12;

    /// <summary>What was taken back was never read.</summary>
    public static IEnumerable<(OvenId Oven, DialReading Reading)> Of(IReadOnlyList<Logged> events)
    {
        var standing = new List<(OvenId Oven, OvenShown Shown)>();
        var doors = new List<(OvenId Oven, DateTimeOffset At)>();
        Plan? plan = null;
        foreach (var one in events)
        {
            switch (one.Event)
            {
                case RunEvent.RunStarted e: plan = e.Plan; break;
                case RunEvent.PlanAccepted e: plan = e.Plan; break;
                case RunEvent.PlanTakenBack e: plan = e.Plan; break;
                case RunEvent.StepStarted e: Opened(e.Step, one.At); break;
                case RunEvent.StepFinished e: Opened(e.Step, one.At); break;
                case RunEvent.TendFinished e: Opened(e.Step, one.At); break;
                case RunEvent.OvenRead e: standing.Add((e.Oven, e.Reading)); break;
                case RunEvent.OvenReadTakenBack e: standing.RemoveAt(standing.FindLastIndex(read => read.Oven == e.Oven)); break;
                default: break;
            }
        }

        return standing.Where(read => read.Shown.Dial > 0
                && read.Shown.At >= read.Shown.HotAt.AddMinutes(Settles)
                && !doors.Any(door => door.Oven == read.Oven && read.Shown.At >= door.At && read.Shown.At < door.At.AddMinutes(Recovers)))
            .Select(read => (read.Oven, new DialReading(read.Shown.Dial, (double)read.Shown.Celsius)));

        void Opened(StepId step, DateTimeOffset at)
        {
            if (plan!.Steps.FirstOrDefault(planned => planned.Step == step)?.Oven is { } oven)
            {
                doors.Add((oven, at));
            }
        }
    }
}
