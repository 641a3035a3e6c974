using CookAlong.Domain.Doneness;

namespace CookAlong.Domain.Runs;

/// <summary>What a core reading came to, as it was understood when it was taken.</summary>
/// <param name="Earliest">With <see cref="CoreVerdict.Expected"/> and <see cref="CoreVerdict.RangeOnly"/>: nine times in ten not before.</param>
/// <param name="Likely">With <see cref="CoreVerdict.Expected"/> only.</param>
/// <param name="Latest">Null with a range that has no end.</param>
/// <param name="Celsius">How warm it comes to be instead, or what the reading would be in °C had it been one in °F; null where that says nothing.</param>
public sealed record CoreWord(CoreVerdict Verdict, DateTimeOffset? Earliest = null, DateTimeOffset? Likely = null, DateTimeOffset? Latest = null, double? Celsius = null)
{
    /// <summary>With <see cref="CoreVerdict.Expected"/> and <see cref="CoreVerdict.Reached"/>, where enough is known.</summary>
    public RestWord? Rest { get; init; }

    public static CoreWord Of(CoreForecast forecast) => forecast switch
    {
        CoreForecast.Reached => new(CoreVerdict.Reached),
        CoreForecast.Expected one => new(CoreVerdict.Expected, one.Earliest, one.Likely, one.Latest),
        CoreForecast.RangeOnly one => new(CoreVerdict.RangeOnly, one.Earliest, null, one.Latest),
        CoreForecast.Never one => new(CoreVerdict.Never, Celsius: one.Highest),
        CoreForecast.ProbeDoubted { Last: ProbeDoubt.Impossible last } => new(CoreVerdict.Impossible, Celsius: last.IfFahrenheit),
        CoreForecast.ProbeDoubted { Last: ProbeDoubt.LongAfter } => new(CoreVerdict.LongAfter),
        CoreForecast.ProbeDoubted { Last: ProbeDoubt.OutOfOrder } => new(CoreVerdict.OutOfOrder),
        CoreForecast.ProbeDoubted { Last: ProbeDoubt.Fell last } => new(CoreVerdict.Fell, Celsius: last.By),
        CoreForecast.ProbeDoubted { Last: ProbeDoubt.Leapt last } => new(CoreVerdict.Leapt, Celsius: last.By),
        CoreForecast.ProbeDoubted { Last: ProbeDoubt.FarFromStart last } => new(CoreVerdict.FarFromStart, Celsius: last.IfFahrenheit),
        CoreForecast.DoesNotFit one => new(one.Faster ? CoreVerdict.TooFast : CoreVerdict.TooSlow),
        CoreForecast.Refused { Why: CoreRefusal.Frozen } => new(CoreVerdict.Frozen),
        CoreForecast.Refused => new(CoreVerdict.NoForecast),
        _ => throw new System.Diagnostics.UnreachableException($"No word for {forecast.GetType().Name}."),
    };
}

public enum CoreVerdict
{
    /// <summary>The reading counts, but nothing is known of when it will be enough.</summary>
    NoForecast,

    /// <summary>It is done.</summary>
    Reached,

    Expected,

    RangeOnly,

    /// <summary>This oven does not bring it there.</summary>
    Never,

    /// <summary>It is there by the only reading of something that nothing is known of: a second one decides.</summary>
    OnceMore,

    // From here on the reading is not believed.

    /// <summary>No joint is that warm, or that cold.</summary>
    Impossible,

    OutOfOrder,

    Fell,

    Leapt,

    FarFromStart,

    /// <summary>Warmer sooner than any such joint: a probe at a bone or near the surface.</summary>
    TooFast,

    TooSlow,

    /// <summary>More than a day after the joint went in: a date was mistaken.</summary>
    LongAfter,

    Frozen,
}

/// <summary>A reading, and the word on it.</summary>
public sealed record CoreReading(DateTimeOffset At, decimal Celsius, CoreWord Word);
