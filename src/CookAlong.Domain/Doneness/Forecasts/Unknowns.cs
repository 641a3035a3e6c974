using CookAlong.Domain.Doneness.Heat;

namespace CookAlong.Domain.Doneness.Forecasts;

/// <summary>
/// What nobody knows of a joint in an oven, each as a number that is normal with mean 0 and deviation 1 before anything is read.
/// Spreads are own estimates; that they are wide enough is tested on simulated joints.
/// </summary>
static class Unknowns
{
    public const int Count = 8;

    public const int Size = 0;
    public const int Coefficient = 1;
    public const int Start = 2;
    public const int Wetness = 3;
    public const int Roundness = 4;
    public const int Probe = 5;
    public const int Oven = 6;
    public const int Crust = 7;

    /// <summary>W/(m² K); with 19.25 a sphere model of whole birds was set up (Chang, Carpenter and Toledo 1998). Textbooks: 5 to 20 without a fan.</summary>
    const double UsualCoefficient = 19.25;

    const double UsualWetness = .06;

    /// <summary>Minutes after which a crust has dried the surface to a third.</summary>
    const double UsualCrust = 150;

    /// <summary>°C; a fridge keeps 0 to 5, a joint that came out of it a little more.</summary>
    const double FromTheFridge = 5.3;

    /// <summary>°C by which ovens' air differs from their programme.</summary>
    public const double OvenSpread = 6;

    /// <summary>What one set of unknowns means for this joint.</summary>
    /// <param name="Crust">Minutes in which the surface dries to a third.</param>
    /// <param name="Probe">Where the probe's tip is: 0 = the very middle, 1 = the surface.</param>
    /// <param name="OvenOff">°C the air is warmer than the programme says.</param>
    public readonly record struct Meaning(Body Body, double Coefficient, double Start, double Wetness, double Crust, double Probe, double OvenOff);

    public static Meaning Of(ReadOnlySpan<double> unknown, Joint joint, SizePrior size) => new(
        new Body(
            Math.Clamp(joint.Roundness + (.15 * unknown[Roundness]), 0, 2.5),
            size.Reach * Math.Exp(size.Spread * unknown[Size])),
        UsualCoefficient * Math.Exp(.18 * unknown[Coefficient]),
        (joint.StartCelsius ?? FromTheFridge) + ((joint.StartCelsius is null ? 2.2 : 1.2) * unknown[Start]),
        UsualWetness * Math.Exp(.33 * unknown[Wetness]),
        UsualCrust * Math.Exp(.4 * unknown[Crust]),
        Math.Min(.9, .07 * Math.Exp(.7 * unknown[Probe])),
        OvenSpread * unknown[Oven]);
}

/// <param name="Reach">Metres from middle to surface, before anything is read.</param>
/// <param name="Spread">How unsure that is, as the deviation of its logarithm.</param>
readonly record struct SizePrior(double Reach, double Spread);
