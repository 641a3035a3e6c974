namespace CookAlong.Domain.FoodSafety;

/// <summary>A kill that is a tenth as fast for each z °C less.</summary>
public sealed record ZCurve
{
    /// <summary>Published rows are rounded up to the safe side by as much as this; a curve that is shorter by more is not theirs.</summary>
    const double Rounding = .15;

    ZCurve(double celsius, double seconds, double z, Source source) => (Celsius, Seconds, Z, Source) = (celsius, seconds, z, source);

    /// <summary>°C at which <see cref="Seconds"/> are enough.</summary>
    public double Celsius { get; }

    public double Seconds { get; }

    /// <summary>°C, above 0.</summary>
    public double Z { get; }

    public Source Source { get; }

    /// <summary>Listeria, z = 7.5 °C, through 70 °C for 2 minutes.</summary>
    public static ZCurve Listeria { get; } = ((ZAnswer.Accepted)Of(70, 120, 7.5, new("Food Safety Authority of Ireland", "Report on heat inactivation", null, "z of Listeria monocytogenes, 7.5 °C"), KillTables.UnitedKingdom)).Curve;

    public double At(double celsius) => Seconds * Math.Pow(10, (Celsius - celsius) / Z);

    /// <summary>The curve, unless it would call a food safe that a row of <paramref name="against"/> does not.</summary>
    public static ZAnswer Of(double celsius, double seconds, double z, Source source, KillTable against)
    {
        if (!(z > 0) || !double.IsFinite(z))
        {
            return new ZAnswer.NoCurve(z);
        }

        var curve = new ZCurve(celsius, seconds, z, source);
        foreach (var row in against.Rows)
        {
            if (curve.At(row.Celsius) < (1 - Rounding) * row.Seconds)
            {
                return new ZAnswer.Unsafe(row.Celsius, curve.At(row.Celsius), row.Seconds, against);
            }
        }

        return new ZAnswer.Accepted(curve);
    }
}

public abstract record ZAnswer
{
    public sealed record Accepted(ZCurve Curve) : ZAnswer;

    /// <summary>At a published temperature it allows <paramref name="Seconds"/> where <paramref name="Published"/> are asked for.</summary>
    public sealed record Unsafe(double Celsius, double Seconds, double Published, KillTable Table) : ZAnswer;

    public sealed record NoCurve(double Z) : ZAnswer;
}
