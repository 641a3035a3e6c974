using System.Collections.Immutable;

namespace CookAlong.Domain.Doneness;

/// <summary>When the middle of a joint gets to a temperature. Only <see cref="Expected"/> names a time to count on.</summary>
public abstract record CoreForecast
{
    /// <summary>The last reading, or the one before it, was there already.</summary>
    public sealed record Reached(ProbeReading Reading) : CoreForecast;

    /// <summary>Nine times in ten it lies between <paramref name="Earliest"/> and <paramref name="Latest"/>.</summary>
    /// <param name="LeftOut">Readings that cannot be true and were not used; each with its reason.</param>
    public sealed record Expected(DateTimeOffset Earliest, DateTimeOffset Likely, DateTimeOffset Latest, int Readings, ImmutableArray<ProbeDoubt> LeftOut) : CoreForecast;

    /// <summary>Too early, or too few readings: a range and no time.</summary>
    /// <param name="Latest">Null = it may never get there in this oven.</param>
    public sealed record RangeOnly(DateTimeOffset Earliest, DateTimeOffset? Latest, int Readings, ImmutableArray<ProbeDoubt> LeftOut) : CoreForecast;

    /// <summary>The oven, as it stands in its programme, will most likely not bring it there within <see cref="Thermometer.Horizon"/>.</summary>
    /// <param name="Highest">°C it comes to instead.</param>
    public sealed record Never(double Highest) : CoreForecast;

    /// <summary>The thermometer cannot be believed now: look at the probe.</summary>
    public sealed record ProbeDoubted(ProbeDoubt Last, ImmutableArray<ProbeDoubt> All) : CoreForecast;

    /// <summary>The readings do not belong to such a joint in such an oven: wrong weight or cut, wrong oven, or a probe that is not in the middle.</summary>
    /// <param name="Misses">°C by which the best joint misses them.</param>
    /// <param name="Faster">True = it warms faster than any such joint: a probe at a bone or near the surface, or a smaller joint.</param>
    public sealed record DoesNotFit(double Misses, bool Faster) : CoreForecast;

    /// <summary>Not asked for something that can be answered.</summary>
    public sealed record Refused(CoreRefusal Why) : CoreForecast;
}

/// <summary>What cannot be forecast at all.</summary>
public abstract record CoreRefusal
{
    public sealed record WeightOutOfRange(double Kilograms, double Least, double Most) : CoreRefusal;

    /// <summary>Ice takes more heat to melt than the whole cooking, and hides how much of it there is: thaw first.</summary>
    public sealed record Frozen(double Celsius) : CoreRefusal;

    /// <summary>°C no core is roasted to; 30 to 99.</summary>
    public sealed record TargetOutOfRange(double Celsius) : CoreRefusal;

    /// <summary>°C of the oven, from 0 to 300 on the conventional scale.</summary>
    public sealed record OvenOutOfRange(double Celsius) : CoreRefusal;

    /// <summary>°C of a joint that is about to go in: above this it was warm already.</summary>
    public sealed record StartOutOfRange(double Celsius) : CoreRefusal;

    /// <summary>The oven has no points, or they are not in order of time.</summary>
    public sealed record OvenOutOfOrder : CoreRefusal;
}

/// <summary>Why a reading is not believed.</summary>
public abstract record ProbeDoubt(ProbeReading Reading)
{
    /// <summary>Nothing in an oven's joint has such a temperature (below -30 or above 110 °C).</summary>
    /// <param name="IfFahrenheit">What it would be in °C, had it been read in °F; null where that is no likelier.</param>
    public sealed record Impossible(ProbeReading Reading, double? IfFahrenheit) : ProbeDoubt(Reading);

    /// <summary>Taken before the one before it, or before the joint went in.</summary>
    public sealed record OutOfOrder(ProbeReading Reading) : ProbeDoubt(Reading);

    /// <summary>More than a day after the joint went in: a date was mistaken.</summary>
    public sealed record LongAfter(ProbeReading Reading) : ProbeDoubt(Reading);

    /// <summary>It fell while the oven was hotter: the probe slipped or was moved.</summary>
    public sealed record Fell(ProbeReading Reading, double By) : ProbeDoubt(Reading);

    /// <summary>It rose faster than heat comes through meat: the probe fell out, or touches metal.</summary>
    public sealed record Leapt(ProbeReading Reading, double By) : ProbeDoubt(Reading);

    /// <summary>The first reading is far from how warm the joint went in.</summary>
    /// <param name="IfFahrenheit">What it would be in °C, had it been read in °F; null where that is no likelier.</param>
    public sealed record FarFromStart(ProbeReading Reading, double? IfFahrenheit) : ProbeDoubt(Reading);
}
