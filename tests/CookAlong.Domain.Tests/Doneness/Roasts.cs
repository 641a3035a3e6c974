using CookAlong.Domain.Doneness;
using CookAlong.Domain.Doneness.Heat;

namespace CookAlong.Domain.Tests.Doneness;

/// <summary>A joint of two kilograms for the Alder Lane midwinter lunch, and what a probe in its middle would read.</summary>
static class Roasts
{
    public static readonly DateTimeOffset In = new(2026, 2, 7, 10, 0, 0, TimeSpan.Zero);

    public static Joint Beef(double kilograms = 2) => new(Cut.BeefRound, kilograms);

    public static Roasting At(double oven, Joint? joint = null) => Roasting.At(joint ?? Beef(), In, oven);

    /// <summary>Every so many minutes, to a tenth of a degree, of a plain ball of meat.</summary>
    /// <param name="reach">Metres.</param>
    public static ProbeReading[] Readings(int minutes, double oven = 165, double reach = .062, double start = 5, int every = 5, double probe = .05)
    {
        var meat = new Conduction(new Body(1.5, reach), Substance.Of(Composition.LeanMeat), start, 20);
        var readings = new List<ProbeReading>();
        for (var minute = 1; minute <= minutes; minute++)
        {
            meat.Step(new Surface(oven, 19, .06 * Math.Exp(-minute / 150.0)), 60);
            if (minute % every == 0)
            {
                readings.Add(new(In.AddMinutes(minute), Math.Round(meat.At(probe), 1)));
            }
        }

        return [.. readings];
    }

    public static ProbeReading[] Then(this ProbeReading[] readings, int minutes, double celsius) => [.. readings, new(In.AddMinutes(minutes), celsius)];
}
