using CookAlong.Domain.Quantities;

namespace CookAlong.Domain.FoodSafety;

/// <summary>A cooling limit in two stages, for the middle of the food.</summary>
/// <param name="FirstWithin">From <paramref name="From"/> to <paramref name="Middle"/> °C.</param>
/// <param name="AllWithin">From <paramref name="From"/> to <paramref name="To"/> °C, both stages together.</param>
public sealed record TwoStageCooling(string Id, double From, double Middle, double To, TimeSpan FirstWithin, TimeSpan AllWithin, Source Source)
{
    public static TwoStageCooling FoodCode { get; } = new("us-cooling", OvenScale.Celsius(fahrenheit: 135), OvenScale.Celsius(fahrenheit: 70), OvenScale.Celsius(fahrenheit: 41), TimeSpan.FromHours(2), TimeSpan.FromHours(6), Sources.FoodCode);

    /// <summary>Only the United States print one that a home can measure; elsewhere the time until the fridge counts (<see cref="Leftovers"/>).</summary>
    public static Published<TwoStageCooling> Of(Region region) => region switch
    {
        Region.UnitedStates => new Published<TwoStageCooling>.Is(FoodCode),
        Region.UnitedKingdom or Region.Scotland or Region.Canada => new Published<TwoStageCooling>.None(region),
        _ => throw new System.Diagnostics.UnreachableException(region.ToString()),
    };

    /// <summary>
    /// What readings of the middle, in order of time, say. The clock runs from the last one that was still hot, and stops at the first
    /// that is surely cold: what lies between is never taken for faster than it may have been.
    /// </summary>
    public CoolingVerdict Judge(IReadOnlyList<(DateTimeOffset At, double Celsius)> middle, DateTimeOffset now)
    {
        if (middle.Any(one => !double.IsFinite(one.Celsius) || one.Celsius is < -40 or > 110) || middle.Zip(middle.Skip(1)).Any(pair => pair.Second.At < pair.First.At))
        {
            return new CoolingVerdict.ReadingsNotBelieved();
        }

        var hot = middle.Where(one => one.Celsius >= From).Select(one => (DateTimeOffset?)one.At).LastOrDefault();
        if (hot is not { } start)
        {
            return new CoolingVerdict.StartNotSeen();
        }

        // The hottest reading after the start decides: food that warmed up again was not cold.
        var reached = (double celsius) => middle.Reverse().TakeWhile(one => one.At > start && one.Celsius <= celsius).Select(one => (DateTimeOffset?)one.At).LastOrDefault();
        return (reached(Middle), reached(To)) switch
        {
            ({ } first, _) when first - start > FirstWithin => new CoolingVerdict.TooSlow(First: true, first - start),
            (null, _) when now - start > FirstWithin => new CoolingVerdict.TooSlow(First: true, now - start),
            (_, { } all) when all - start > AllWithin => new CoolingVerdict.TooSlow(First: false, all - start),
            (_, null) when now - start > AllWithin => new CoolingVerdict.TooSlow(First: false, now - start),
            ({ } first, { } all) => new CoolingVerdict.InTime(first - start, all - start),
            (null, _) => new CoolingVerdict.Cooling(Middle, start + FirstWithin),
            (_, null) => new CoolingVerdict.Cooling(To, start + AllWithin),
        };
    }
}

public abstract record CoolingVerdict
{
    public sealed record InTime(TimeSpan First, TimeSpan All) : CoolingVerdict;

    /// <param name="First">Which stage.</param>
    /// <param name="Took">At the least.</param>
    public sealed record TooSlow(bool First, TimeSpan Took) : CoolingVerdict;

    /// <summary>Not over yet: the middle is to be at <paramref name="Celsius"/> by then.</summary>
    public sealed record Cooling(double Celsius, DateTimeOffset By) : CoolingVerdict;

    /// <summary>No reading while it was hot: since when it cools nobody knows.</summary>
    public sealed record StartNotSeen : CoolingVerdict;

    public sealed record ReadingsNotBelieved : CoolingVerdict;
}
