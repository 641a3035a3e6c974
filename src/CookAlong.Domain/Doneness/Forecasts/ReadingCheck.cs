using System.Collections.Immutable;
using CookAlong.Domain.Quantities;

namespace CookAlong.Domain.Doneness.Forecasts;

/// <summary>Tells readings that can be true from those that cannot.</summary>
static class ReadingCheck
{
    /// <summary>°C a reading may be off by itself; both ends of a change may be.</summary>
    const double Noise = 2.5;

    /// <summary>°C a minute; the middle of any but the smallest rises by less than 2. Own estimate.</summary>
    const double FastestRise = 3;

    /// <summary>
    /// The middle is the last to warm: in a tenth of the time heat needs to get through, or a quarter of an hour, it is still near
    /// where it began.
    /// </summary>
    static readonly TimeSpan Early = TimeSpan.FromMinutes(15);

    const double EarlyPart = .1;

    static readonly TimeSpan Longest = TimeSpan.FromDays(1);

    public static (ImmutableArray<ProbeReading> Good, ImmutableArray<ProbeDoubt> Doubted) Of(Roasting roasting, IEnumerable<ProbeReading> readings, OvenAir air, TimeSpan through)
    {
        var good = ImmutableArray.CreateBuilder<ProbeReading>();
        var doubted = ImmutableArray.CreateBuilder<ProbeDoubt>();
        var latest = roasting.In;
        foreach (var reading in readings)
        {
            var last = good.Count > 0 ? good[^1] : (ProbeReading?)null;
            if (Doubt(roasting, reading, last, latest, air, through) is { } doubt)
            {
                doubted.Add(doubt);
            }
            else
            {
                good.Add(reading);
            }

            // A mistaken date does not make those after it late.
            latest = reading.At > latest && reading.At - roasting.In <= Longest ? reading.At : latest;
        }

        return (good.ToImmutable(), doubted.ToImmutable());
    }

    /// <summary>Whatever it was read from; null where it can be.</summary>
    public static ProbeDoubt.Impossible? Impossible(ProbeReading reading) => reading.Celsius is >= -30 and <= 110
        ? null
        : new ProbeDoubt.Impossible(reading, reading.Celsius is > 110 and < 212 ? OvenScale.Celsius(fahrenheit: reading.Celsius) : null);

    static ProbeDoubt? Doubt(Roasting roasting, ProbeReading reading, ProbeReading? last, DateTimeOffset latest, OvenAir air, TimeSpan through)
    {
        if (Impossible(reading) is { } impossible)
        {
            return impossible;
        }

        if (reading.At < latest || (reading.At == latest && last?.At == latest))
        {
            return new ProbeDoubt.OutOfOrder(reading);
        }

        if (reading.At - roasting.In > Longest)
        {
            return new ProbeDoubt.LongAfter(reading);
        }

        if (last is not { } before)
        {
            var start = roasting.Joint.StartCelsius ?? 5;
            var isFar = reading.Celsius > start + 25 && reading.At - roasting.In <= (Early < EarlyPart * through ? Early : EarlyPart * through);
            return isFar ? new ProbeDoubt.FarFromStart(reading, OvenScale.Celsius(fahrenheit: reading.Celsius) is var inCelsius && Math.Abs(inCelsius - start) < 8 ? inCelsius : null) : null;
        }

        var (by, minutes) = (reading.Celsius - before.Celsius, (reading.At - before.At).TotalMinutes);
        var hotter = air[(int)((reading.At - roasting.In) / air.Step)].Celsius - before.Celsius;
        return by > Noise + (Math.Max(FastestRise, 1.5 * hotter / through.TotalMinutes) * minutes) ? new ProbeDoubt.Leapt(reading, by)
            : by < -Noise && hotter > 10 ? new ProbeDoubt.Fell(reading, -by)
            : null;
    }
}
