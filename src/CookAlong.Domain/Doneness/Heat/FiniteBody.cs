using System.Collections.Immutable;

namespace CookAlong.Domain.Doneness.Heat;

/// <summary>
/// A body with ends: what several endless bodies have in common. A brick is three slabs, a short cylinder a cylinder and a slab. What
/// is left of the temperature difference is the product of what is left in each; air that changes is the sum of its jumps, each
/// answered since it came. Holds for dry surfaces and properties that do not change with temperature.
/// Source: Carslaw and Jaeger, "Conduction of Heat in Solids", 2nd ed. 1959, sections 1.14 and 1.15 (from memory).
/// </summary>
/// <param name="Parts">1 to 3, each at right angles to the others.</param>
public sealed record FiniteBody(ImmutableArray<Body> Parts)
{
    /// <summary>W/(m² K) is <paramref name="coefficient"/>; what is left of the difference in the very middle after 0, 1, 2... steps.</summary>
    /// <param name="seconds">Length of a step, above 0.</param>
    public double[] Left(Substance substance, double coefficient, double seconds, int steps)
    {
        var left = new double[steps + 1];
        Array.Fill(left, 1);
        var still = substance with { PerDegree = 0 };
        foreach (var part in Parts)
        {
            var heat = new Conduction(part, still, 1, 40);
            for (var step = 1; step <= steps; step++)
            {
                heat.Step(new Surface(0, coefficient, 0), seconds);
                left[step] *= heat.Core;
            }
        }

        return left;
    }

    /// <summary>°C in the very middle after each step.</summary>
    /// <param name="celsius">At the start, all through.</param>
    /// <param name="air">°C during each step.</param>
    public double[] Core(Substance substance, double coefficient, double celsius, IReadOnlyList<double> air, double seconds)
    {
        var left = Left(substance, coefficient, seconds, air.Count);
        var core = new double[air.Count];
        for (var now = 0; now < core.Length; now++)
        {
            core[now] = celsius;
            for (var jump = 0; jump <= now; jump++)
            {
                core[now] += (air[jump] - (jump == 0 ? celsius : air[jump - 1])) * (1 - left[now + 1 - jump]);
            }
        }

        return core;
    }
}
