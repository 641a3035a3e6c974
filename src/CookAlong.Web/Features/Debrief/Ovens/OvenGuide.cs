using System.Collections.Immutable;
using CookAlong.Web.Data;

namespace CookAlong.Web.Features.Debrief.Ovens;

public enum OvenGuidePart { Heating, Hot, OpenDoor, Recovering, TurnOff, Cooling, Enough, Done }

/// <summary>Where the guided half hour stands, from what was noted so far; minutes between readings are common practice, no source.</summary>
/// <param name="NextReading">When the thermometer is to be read; null = not now. Milliseconds since the Unix epoch, UTC.</param>
public sealed record OvenGuide(OvenGuidePart Part, long? NextReading)
{
    const int Minute = 60_000;

    /// <summary>Minutes until it has settled by most ovens' pace, and readings on the level and after the door.</summary>
    const int Heats = 14, Settled = 20, ReadingsAfterDoor = 5, ReadingsCooling = 5;

    /// <summary>Minutes until a thermometer in the oven shows what the air did.</summary>
    const int CoolingBegins = 3;

    /// <summary>Minutes after which one that still climbs is taken as it is.</summary>
    const int LongestHeatUp = 40;

    /// <summary>°C between the last three readings of one that has settled.</summary>
    const double Settles = 8;

    static bool HasSettled(ImmutableArray<(long At, double Celsius)> readings) =>
        readings.TakeLast(3).Select(one => one.Celsius).ToArray() is [_, _, _] last && last.Max() - last.Min() <= Settles;

    public static OvenGuide Of(OvenTrialRow row, long now)
    {
        var readings = row.Readings();
        var last = readings.IsEmpty ? (long?)null : readings[^1].At;
        int Since(long from) => readings.Count(one => one.At > from);
        if (row.Ended is not null)
        {
            return new(OvenGuidePart.Done, null);
        }

        if (row.Off is { } off)
        {
            return Since(off) >= ReadingsCooling
                ? new(OvenGuidePart.Enough, null)
                : new(OvenGuidePart.Cooling, Since(off) == 0 ? off + (CoolingBegins * Minute) : last + (2 * Minute));
        }

        if (row.DoorShut is { } shut)
        {
            return Since(shut) >= ReadingsAfterDoor ? new(OvenGuidePart.TurnOff, null) : new(OvenGuidePart.Recovering, Math.Max(shut, last ?? 0) + Minute);
        }

        var (heats, settled) = (row.Began + (Heats * Minute), row.Began + (Settled * Minute));
        return now < heats ? new(OvenGuidePart.Heating, last is null ? row.Began : last + (2 * Minute))
            : now < settled || Since(heats) < 3 || (!HasSettled(readings) && now < row.Began + (LongestHeatUp * Minute)) ? new(OvenGuidePart.Hot, (last ?? now) + (2 * Minute))
            : new(OvenGuidePart.OpenDoor, null);
    }
}
