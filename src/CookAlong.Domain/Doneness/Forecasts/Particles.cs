using CookAlong.Domain.Confidence;

namespace CookAlong.Domain.Doneness.Forecasts;

/// <summary>
/// Many joints that the readings allow, each with how probable it is: drawn around the best fit a little wider than it is sure, and
/// weighed by how well they fit (importance sampling). The same readings draw the same joints on every machine.
/// </summary>
sealed class Particles
{
    const double Wider = 1.15;

    /// <summary>Of the particles that should count after weighing; where fewer would, the weights are levelled until they do.</summary>
    const double Effective = .12;

    /// <summary>Cooked up to where each was last asked; weights add up to 1.</summary>
    public IReadOnlyList<(Cooking Cooking, double Weight, double Luck)> All { get; }

    public Particles(Fit fit, int count)
    {
        var (spread, luck) = (new Cholesky(fit.Precision), new Luck(1));
        var drawn = new double[count][];
        var costs = new double[count];
        for (var particle = 0; particle < count; particle++)
        {
            // Each second one lies on the other side of the best, so that the middle is hit exactly.
            var side = particle % 2 == 0 ? Wider : -Wider;
            var normal = Enumerable.Range(0, Unknowns.Count).Select(one => side * Normal(luck, particle / 2, one)).ToArray();
            drawn[particle] = spread.SolveTurned(normal).Zip(fit.Best, (by, at) => at + by).ToArray();
            costs[particle] = fit.Cost(drawn[particle]) - (normal.Sum(one => one * one) / (2 * Wider * Wider));
        }

        var weights = Weights(costs);
        All = [.. drawn.Select((unknown, particle) => (fit.Cook(unknown), weights[particle], Normal(luck, particle, Unknowns.Count)))];
    }

    static double[] Weights(double[] costs)
    {
        var least = costs.Min();
        for (var heat = 1.0; ; heat *= 1.4)
        {
            var weights = Array.ConvertAll(costs, cost => Math.Exp((least - cost) / heat));
            var (sum, squares) = (weights.Sum(), weights.Sum(one => one * one));
            if (sum * sum / squares >= Effective * costs.Length)
            {
                return Array.ConvertAll(weights, one => one / sum);
            }
        }
    }

    /// <summary>Box and Muller, 1958.</summary>
    static double Normal(Luck luck, int particle, int one) =>
        Math.Sqrt(-2 * Math.Log(1 - luck.Fraction(particle, 2 * one))) * Math.Cos(2 * Math.PI * luck.Fraction(particle, (2 * one) + 1));
}
