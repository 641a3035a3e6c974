using System.Collections.Immutable;

namespace CookAlong.Domain.Doneness.Forecasts;

/// <summary>What the readings say of a joint, before anybody asks when.</summary>
sealed class Understood
{
    /// <summary>
    /// Readings that are looked at one by one; more are put together in as many spans of time. Errors of one minute and the next are
    /// the same error, and a thermometer that sends sixty an hour is not sixty times as sure.
    /// </summary>
    const int Most = 14;

    readonly Fit fit;

    Understood(Fit fit, double now) => (this.fit, Now) = (fit, now);

    /// <summary>Minutes since the joint went in, at the last reading; 0 before the first.</summary>
    public double Now { get; }

    public static (Understood Known, ImmutableArray<ProbeReading> Good, ImmutableArray<ProbeDoubt> Doubted) Of(Roasting roasting, IReadOnlyList<ProbeReading> readings)
    {
        var size = SizeByRule.Of(roasting.Joint);
        // Small joints are done before large ones have begun; a step is a part of the time heat needs to get through.
        var through = size.Reach * size.Reach / 1.35e-7 / 60;
        var air = new OvenAir(roasting, TimeSpan.FromMinutes(Math.Clamp(through / 200, .2, 5)));
        var (good, doubted) = ReadingCheck.Of(roasting, readings, air);
        var now = good.IsEmpty ? 0 : (good[^1].At - roasting.In).TotalMinutes;
        return (new Understood(new Fit(roasting.Joint, size, air, Thinned([.. good.Select(one => ((one.At - roasting.In).TotalMinutes, one.Celsius))])), now), good, doubted);
    }

    /// <summary>The joints the readings allow, each cooked to now.</summary>
    public Particles Joints(int count) => new(fit, count);

    public CoreForecast? Doubt(double misfit, double unusual)
    {
        var (size, oven, probe) = (fit.Best[Unknowns.Size], fit.Best[Unknowns.Oven], fit.Best[Unknowns.Probe]);
        var farthest = fit.Best.Max(Math.Abs);
        return fit.Misses > misfit || farthest > unusual ? new CoreForecast.DoesNotFit(fit.Misses, oven + probe - size > 0) : null;
    }

    static (double Minutes, double Celsius)[] Thinned(ImmutableArray<(double Minutes, double Celsius)> readings)
    {
        if (readings.Length <= Most)
        {
            return [.. readings];
        }

        var (from, span) = (readings[0].Minutes, (readings[^1].Minutes - readings[0].Minutes) / Most);
        return [.. readings
            .GroupBy(reading => Math.Min(Most - 1, (int)((reading.Minutes - from) / span)))
            .Select(group => (group.Average(one => one.Minutes), group.Average(one => one.Celsius)))];
    }
}
