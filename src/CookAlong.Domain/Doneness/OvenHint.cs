using CookAlong.Domain.Doneness.Forecasts;

namespace CookAlong.Domain.Doneness;

/// <summary>What one joint's readings say of the oven it roasted in, apart from what was thought before.</summary>
/// <param name="WarmerBy">°C by which the air was as if warmer than the programme says.</param>
/// <param name="Error">One standard deviation of it, °C; of a single joint it is large, since a smaller joint looks like a hotter oven.</param>
public readonly record struct OvenHint(double WarmerBy, double Error)
{
    /// <summary>Readings that are believed, fewer say nothing.</summary>
    const int Least = 6;

    /// <summary>°C from the first reading to the last: a joint that hardly warmed says nothing of what warmed it.</summary>
    const double LeastRise = 25;

    /// <summary>Of the doubt before, what must be gone at the least.</summary>
    const double LeastKnown = .01;

    /// <summary>°C by which readings point too cold: a tray shades the underside, and the model heats evenly. Measured on simulated joints of a known oven.</summary>
    const double TooCold = 12;

    /// <summary>Null where the readings are too few, are not believed, or say nothing of the oven.</summary>
    /// <remarks>By the fit's own quadratic: what it is sure of beyond its prior is what the readings brought.</remarks>
    public static OvenHint? Of(Roasting roasting, IReadOnlyList<ProbeReading> readings)
    {
        if (Understood.Of(roasting, readings) is not { Problem: null, Known: { Good.Length: >= Least } known } || known.Good[^1].Celsius - known.Good[0].Celsius < LeastRise)
        {
            return null;
        }

        var (best, left) = known.Oven();
        return 1 - left < LeastKnown ? null : new((best / (1 - left) * Unknowns.OvenSpread) + TooCold, Math.Sqrt(left / (1 - left)) * Unknowns.OvenSpread);
    }
}
