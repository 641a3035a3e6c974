using System.Diagnostics;
using CookAlong.Domain.Doneness;
using CookAlong.Domain.Doneness.Heat;

namespace CookAlong.Benchmarks;

/// <summary>How long a forecast takes, of joints small and large, with few and with many readings.</summary>
static class DonenessFigures
{
    static readonly DateTimeOffset In = new(2026, 2, 7, 10, 0, 0, TimeSpan.Zero);

    public static IEnumerable<(string What, string Figure)> Measure()
    {
        foreach (var (name, joint, reach) in new[] { ("pork fillet, 0.5 kg", new Joint(Cut.PorkFillet, .5), .025), ("beef round, 2 kg", new Joint(Cut.BeefRound, 2), .062), ("raw ham, 8 kg", new Joint(Cut.RawHam, 8), .09) })
        {
            var roasting = Roasting.At(joint, In, 170);
            foreach (var part in new[] { 0, .2, .4, .8 })
            {
                var readings = Readings(reach, part);
                yield return ($"forecast of {name}, after {part:P0} of the cooking, {readings.Length} readings (median of 40)", Milliseconds(() => Thermometer.Forecast(roasting, readings, 63)));
            }

            var before = Readings(reach, .9);
            yield return ($"rest of {name} (median of 40)", Milliseconds(() => Rest.Forecast(roasting, before, before[^1].At, [new(before[^1].At, RestUnder.Foil)], 60)));
        }
    }

    /// <summary>Thirty spread over the cooking, those that came until then.</summary>
    static ProbeReading[] Readings(double reach, double part)
    {
        var meat = new Conduction(new Body(1.5, reach), Substance.Of(Composition.LeanMeat), 5, 20);
        var curve = new List<double>();
        while (meat.Core < 63)
        {
            curve.Add(meat.Core);
            meat.Step(new Surface(170, 19, .06 * Math.Exp(-curve.Count / 150.0)), 60);
        }

        return [.. Enumerable.Range(1, (int)(30 * part)).Select(number => curve.Count * number / 30).Distinct().Select(minute => new ProbeReading(In.AddMinutes(minute), curve[minute]))];
    }

    static string Milliseconds(Action act)
    {
        var times = Enumerable.Range(0, 50).Select(_ =>
        {
            var watch = Stopwatch.StartNew();
            act();
            return watch.Elapsed.TotalMilliseconds;
        }).Skip(10).Order().ToArray();
        return $"{times[times.Length / 2]:F1} ms";
    }
}
