using System.Collections.Immutable;
using CookAlong.Domain.Doneness.Forecasts;

namespace CookAlong.Domain.Doneness;

/// <summary>The thermometer's word: from a joint, its oven and a handful of readings, when its middle gets to a temperature.</summary>
public static class Thermometer
{
    /// <summary>How far ahead it looks at the most.</summary>
    public static readonly TimeSpan Horizon = TimeSpan.FromHours(16);

    /// <summary>Of the time left: what neither readings nor the model tell. Own estimate, held by simulated joints.</summary>
    const double Unforeseen = .035;

    /// <summary>Minutes: a thermostat's swing, and half a degree at the end.</summary>
    const double UnforeseenMinutes = .9;

    /// <summary>A range wider than this part of the time left, and than half an hour, names no time.</summary>
    const double TooWide = .7;

    /// <summary>Part of the cooking before which no time is named: a probe half way to the surface looks like a smaller joint until then.</summary>
    const double TooEarly = .25;

    /// <summary>No time lies before the last reading that is believed; how old that is, the caller knows.</summary>
    /// <param name="readings">Taken in the oven, in that order; none = what the published times say, as a range.</param>
    /// <param name="celsius">Wanted in the middle, 30 to 99.</param>
    public static CoreForecast Forecast(Roasting roasting, IReadOnlyList<ProbeReading> readings, double celsius)
    {
        if (!(celsius is >= 30 and <= 99))
        {
            return new CoreForecast.Refused(new CoreRefusal.TargetOutOfRange(celsius));
        }

        return Understood.Of(roasting, readings) switch
        {
            { Problem: { } problem } => problem,
            { Known: var known } when known.Good is [.., var last] && last.Celsius >= celsius => new CoreForecast.Reached(last),
            { Known: var known } => Range(roasting, known, celsius),
        };
    }

    static CoreForecast Range(Roasting roasting, Understood known, double celsius)
    {
        var (now, joints) = (known.Now, known.Joints().All);
        var reached = joints.Select(one => (At: one.Cooking.Reaches(celsius, known.Horizon) is { } minutes
            ? now + (Math.Max(0, minutes - now) * Math.Exp(Unforeseen * one.Luck)) + (UnforeseenMinutes * one.Luck)
            : double.PositiveInfinity, one.Weight)).ToArray();
        var (earliest, likely, latest) = Quantiles.OfRange(reached);
        if (double.IsInfinity(likely))
        {
            return new CoreForecast.Never(Quantiles.OfRange(joints.Select(one => (one.Cooking.CoreAt(known.Horizon), one.Weight))).Likely);
        }

        var isVague = known.Good.Length < 2 || known.IsStrange || now < TooEarly * likely || double.IsInfinity(latest) || latest - earliest > Math.Max(30, TooWide * (likely - now));
        return isVague
            ? new CoreForecast.RangeOnly(Moment(earliest), double.IsInfinity(latest) ? null : Moment(latest), known.Good.Length, known.Doubted)
            : new CoreForecast.Expected(Moment(earliest), Moment(likely), Moment(latest), known.Good.Length, known.Doubted);

        // Nothing that is still to come comes before the last reading.
        DateTimeOffset Moment(double minutes) => roasting.In + TimeSpan.FromMinutes(Math.Max(now, minutes));
    }
}
