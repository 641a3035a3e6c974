using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Debrief.Learning;

/// <summary>How long a step is written to take; minutes, 0 &lt; least &lt;= likely &lt;= most, not rounded.</summary>
public readonly record struct WrittenTime(double Least, double Likely, double Most)
{
    /// <summary>Nine of ten normal numbers lie below this many spreads over their middle.</summary>
    internal const double Ninth = 1.2815515655446004;

    /// <summary>Who writes one figure does not mean that it is never otherwise. Own estimate.</summary>
    const double LeastSpread = .2;

    public static WrittenTime Of(Durations minutes) => new(minutes.Least, minutes.Likely, minutes.Most);

    /// <summary>Of the logarithm: from least to most lie eight of ten.</summary>
    internal double Spread => Math.Max(LeastSpread, Math.Log(Most / Least) / (2 * Ninth));
}
