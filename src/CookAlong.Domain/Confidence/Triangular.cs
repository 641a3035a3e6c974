using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Confidence;

/// <summary>A duration that is never under its least nor over its most, and nearest its likely more often than not. Minutes.</summary>
readonly struct Triangular(Durations minutes)
{
    readonly double rise = (double)(minutes.Most - minutes.Least) * (minutes.Likely - minutes.Least);
    readonly double fall = (double)(minutes.Most - minutes.Least) * (minutes.Most - minutes.Likely);
    readonly double turn = minutes.Most == minutes.Least ? 1 : (double)(minutes.Likely - minutes.Least) / (minutes.Most - minutes.Least);

    /// <summary>The duration that a share of <paramref name="fraction"/> (0 to 1) of all durations stays under.</summary>
    public double At(double fraction) => fraction < turn
        ? minutes.Least + Math.Sqrt(fraction * rise)
        : minutes.Most - Math.Sqrt((1 - fraction) * fall);
}
