using System.Numerics;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Confidence;

/// <summary>A duration that is never under its least nor over its most, and nearest its likely more often than not. Minutes.</summary>
readonly struct Triangular(Durations minutes)
{
    readonly double least = minutes.Least;
    readonly double most = minutes.Most;
    readonly double rise = (double)(minutes.Most - minutes.Least) * (minutes.Likely - minutes.Least);
    readonly double fall = (double)(minutes.Most - minutes.Least) * (minutes.Most - minutes.Likely);
    readonly double turn = minutes.Most == minutes.Least ? 1 : (double)(minutes.Likely - minutes.Least) / (minutes.Most - minutes.Least);

    /// <summary>The durations that a share of <paramref name="fraction"/> (0 to 1) of all durations stays under.</summary>
    public Vector<double> At(Vector<double> fraction)
    {
        var isUnder = Vector.LessThan(fraction, new Vector<double>(turn));
        var root = Vector.SquareRoot(Vector.ConditionalSelect(isUnder, fraction * rise, (Vector<double>.One - fraction) * fall));
        return Vector.ConditionalSelect(isUnder, new Vector<double>(least) + root, new Vector<double>(most) - root);
    }
}
