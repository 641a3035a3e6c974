using System.Collections.Immutable;
using CookAlong.Domain.Doneness.Forecasts;

namespace CookAlong.Domain.Doneness;

/// <summary>The thermometer's word: from a joint, its oven and a handful of readings, when its middle gets to a temperature.</summary>
public static class Thermometer
{
    /// <summary>How far ahead it looks.</summary>
    public static readonly TimeSpan Horizon = TimeSpan.FromHours(16);

    const int Joints = 200;

    /// <summary>Of the time left: what neither readings nor the model tell (a draught, a thermostat, where heat comes from). Own estimate, held by simulated joints.</summary>
    const double Unforeseen = .03;

    /// <summary>Minutes: a thermostat's swing, and half a degree at the end.</summary>
    const double UnforeseenMinutes = .9;

    /// <summary>A range wider than this part of the time left, and than half an hour, names no time.</summary>
    const double TooWide = .7;

    /// <summary>°C by which a joint may miss its readings on the quadratic mean, before it is not believed.</summary>
    const double Misfit = 2;

    /// <summary>Deviations from what is usual, before readings are not believed to be of that joint.</summary>
    const double Unusual = 3.2;

    /// <param name="readings">As they were taken, in that order; none = what the published times say, as a range.</param>
    /// <param name="celsius">Wanted in the middle, 30 to 99.</param>
    public static CoreForecast Forecast(Roasting roasting, IReadOnlyList<ProbeReading> readings, double celsius)
    {
        if (Refusal(roasting, celsius) is { } why)
        {
            return new CoreForecast.Refused(why);
        }

        var (known, left, doubted) = Understood.Of(roasting, readings);
        if (doubted.Length > 0 && doubted[^1].Reading == readings[^1])
        {
            return new CoreForecast.ProbeDoubted(doubted[^1], doubted);
        }

        if (left.FirstOrDefault(reading => reading.Celsius < Joint.FrozenBelow - 1) is { At.Ticks: > 0 } frozen)
        {
            return new CoreForecast.Refused(new CoreRefusal.Frozen(frozen.Celsius));
        }

        // Doubt comes first: a probe at a bone says "done" too.
        return known.Doubt(Misfit, Unusual)
            ?? (left.Length > 0 && left[^1].Celsius >= celsius ? new CoreForecast.Reached(left[^1]) : Range(roasting, known, left, doubted, celsius));
    }

    static CoreForecast Range(Roasting roasting, Understood known, ImmutableArray<ProbeReading> good, ImmutableArray<ProbeDoubt> doubted, double celsius)
    {
        var now = known.Now;
        var reached = known.Joints(Joints).All.Select(one =>
            (one.Cooking.Reaches(celsius, now + Horizon.TotalMinutes) is { } minutes
                ? now + (Math.Max(0, minutes - now) * Math.Exp(Unforeseen * one.Luck)) + (UnforeseenMinutes * one.Luck)
                : double.PositiveInfinity, one.Weight)).ToArray();
        var at = Quantiles.Of(reached, .05, .5, .95);
        if (double.IsInfinity(at[1]))
        {
            return new CoreForecast.Never(Quantiles.Of(known.Joints(Joints).All.Select(one => (one.Cooking.CoreAt(now + Horizon.TotalMinutes), one.Weight)), .5)[0]);
        }

        var isVague = good.Length < 2 || double.IsInfinity(at[2]) || at[2] - at[0] > Math.Max(30, TooWide * (at[1] - now));
        return isVague
            ? new CoreForecast.RangeOnly(Moment(at[0]), double.IsInfinity(at[2]) ? null : Moment(at[2]), good.Length, doubted)
            : new CoreForecast.Expected(Moment(at[0]), Moment(at[1]), Moment(at[2]), good.Length, doubted);

        DateTimeOffset Moment(double minutes) => roasting.In + TimeSpan.FromMinutes(minutes);
    }

    static CoreRefusal? Refusal(Roasting roasting, double celsius)
    {
        var joint = roasting.Joint;
        return !(joint.Kilograms is >= Joint.LeastKilograms and <= Joint.MostKilograms) ? new CoreRefusal.WeightOutOfRange(joint.Kilograms, Joint.LeastKilograms, Joint.MostKilograms)
            : joint.StartCelsius is { } start && start < Joint.FrozenBelow ? new CoreRefusal.Frozen(start)
            : joint.StartCelsius is { } warm && !(warm <= 40) ? new CoreRefusal.StartOutOfRange(warm)
            : !(celsius is >= 30 and <= 99) ? new CoreRefusal.TargetOutOfRange(celsius)
            : roasting.Air.IsDefaultOrEmpty || roasting.Air.Zip(roasting.Air.Skip(1)).Any(pair => pair.First.At >= pair.Second.At) ? new CoreRefusal.OvenOutOfOrder()
            : roasting.Air.Where(point => !(point.Celsius is >= 0 and <= 300)).Select(point => (CoreRefusal?)new CoreRefusal.OvenOutOfRange(point.Celsius)).FirstOrDefault();
    }
}
