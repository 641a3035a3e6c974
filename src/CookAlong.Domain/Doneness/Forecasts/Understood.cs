using System.Collections.Immutable;

namespace CookAlong.Domain.Doneness.Forecasts;

/// <summary>What the readings say of a joint, before anybody asks when; or why they say nothing.</summary>
sealed class Understood
{
    /// <summary>
    /// Readings that are looked at one by one; more are put together in as many spans of time. Errors of one minute and the next are
    /// the same error, and a thermometer that sends sixty an hour is not sixty times as sure.
    /// </summary>
    const int Most = 14;

    /// <summary>°C by which a joint may miss its readings on the quadratic mean, before they are not believed to be its own.</summary>
    const double Misfit = 2;

    /// <summary>
    /// Squared deviations of all unknowns from what is usual, before the same: of the simulated joints one in fifty lies farther out.
    /// </summary>
    const double Unusual = 11;

    /// <summary>The same, before no time is named: a probe half way to the surface, early on, looks like a strange joint. One in twenty lies farther out.</summary>
    const double Strange = 8;

    const int Count = 200;

    /// <summary>m²/s, of lean meat about to cook (<see cref="Heat.Composition"/>).</summary>
    const double Diffusivity = 1.35e-7;

    readonly Fit fit;

    Understood(Fit fit, double now, double horizon, ImmutableArray<ProbeReading> good, ImmutableArray<ProbeDoubt> doubted) =>
        (this.fit, Now, Horizon, Good, Doubted) = (fit, now, horizon, good, doubted);

    /// <summary>Minutes since the joint went in, at the last reading that is believed; 0 before the first.</summary>
    public double Now { get; }

    /// <summary>Minutes since the joint went in, up to which it is looked ahead: by then its middle is as warm as it will be.</summary>
    public double Horizon { get; }

    /// <summary>Too far from what is usual to name a time.</summary>
    public bool IsStrange => Far(fit) > Strange;

    public ImmutableArray<ProbeReading> Good { get; }

    public ImmutableArray<ProbeDoubt> Doubted { get; }

    /// <summary>Exactly one of the two is there.</summary>
    public readonly record struct Answer(Understood Known, CoreForecast? Problem);

    public static Answer Of(Roasting roasting, IReadOnlyList<ProbeReading> readings)
    {
        if (RoastingCheck.Of(roasting) is { } why)
        {
            return new(null!, new CoreForecast.Refused(why));
        }

        var size = SizeByRule.Of(roasting.Joint);
        // Small joints are done before large ones have begun; a step is a part of the time heat needs to get through.
        var through = TimeSpan.FromSeconds(size.Reach * size.Reach / Diffusivity);
        var air = new OvenAir(roasting, TimeSpan.FromMinutes(Math.Clamp(through.TotalMinutes / 200, .2, 5)));
        var (good, doubted) = ReadingCheck.Of(roasting, readings, air, through);
        if (doubted is [.., var last] && last.Reading == readings[^1])
        {
            return new(null!, new CoreForecast.ProbeDoubted(last, doubted));
        }

        // A thermometer may be off by a degree where water freezes.
        var ice = good.Where(reading => reading.Celsius < Joint.FrozenBelow - 1).Select(reading => (double?)reading.Celsius).FirstOrDefault();
        if (ice is { } celsius)
        {
            return new(null!, new CoreForecast.Refused(new CoreRefusal.Frozen(celsius)));
        }

        var now = good.IsEmpty ? 0 : (good[^1].At - roasting.In).TotalMinutes;
        var fit = new Fit(roasting.Joint, size, air, Thinned([.. good.Select(one => ((one.At - roasting.In).TotalMinutes, one.Celsius))]));
        // Doubt comes before "done": a probe at a bone says "done" too.
        return Doubt(fit) is { } doubt ? new(null!, doubt) : new(new Understood(fit, now, now + Math.Min(Thermometer.Horizon.TotalMinutes, 4 * through.TotalMinutes), good, doubted), null);
    }

    /// <summary>How far the oven is off, most probably, and the variance that is left of it; both where 1 is what is usual.</summary>
    public (double Best, double Left) Oven()
    {
        var one = new double[Unknowns.Count];
        one[Unknowns.Oven] = 1;
        return (fit.Best[Unknowns.Oven], new Cholesky(fit.Precision).Solve(one)[Unknowns.Oven]);
    }

    /// <summary>The joints the readings allow.</summary>
    public Particles Joints() => new(fit, Count);

    static CoreForecast.DoesNotFit? Doubt(Fit fit)
    {
        var (size, oven, probe) = (fit.Best[Unknowns.Size], fit.Best[Unknowns.Oven], fit.Best[Unknowns.Probe]);
        return fit.Misses > Misfit || Far(fit) > Unusual ? new(fit.Misses, oven + probe - size > 0) : null;
    }

    static double Far(Fit fit) => fit.Best.Sum(one => one * one);

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
