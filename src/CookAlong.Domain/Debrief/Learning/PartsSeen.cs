using CookAlong.Domain.Doneness.Forecasts;

namespace CookAlong.Domain.Debrief.Learning;

/// <param name="Parts">Places of what it shares with many others: the household's, the day's.</param>
/// <param name="Step">Place of its step, among the steps.</param>
/// <param name="Precision">How much it says: one over the square of its chance.</param>
readonly record struct Seen(int[] Parts, int Step, double Precision, double Observed);

/// <summary>
/// Sums of independent normal parts, seen with chance: what each part most likely is, and how sure. Each sum has one step,
/// so steps touch each other only through the shared parts: they are taken out first (Schur's complement), and the work
/// grows with the third power of the shared parts, which are few, and not of the steps.
/// </summary>
sealed class PartsSeen
{
    readonly double[] means;
    readonly double[][] covariance;
    readonly StepSeen[] steps;

    /// <param name="spreads">Of each shared part before anything was seen.</param>
    /// <param name="stepSpreads">Of each step.</param>
    public PartsSeen(IReadOnlyList<double> spreads, IReadOnlyList<double> stepSpreads, IReadOnlyCollection<Seen> seen)
    {
        var (matrix, right) = (new double[spreads.Count, spreads.Count], new double[spreads.Count]);
        for (var part = 0; part < spreads.Count; part++)
        {
            matrix[part, part] = 1 / (spreads[part] * spreads[part]);
        }

        foreach (var one in seen)
        {
            foreach (var part in one.Parts)
            {
                right[part] += one.Precision * one.Observed;
                foreach (var other in one.Parts)
                {
                    matrix[part, other] += one.Precision;
                }
            }
        }

        var ofStep = seen.ToLookup(one => one.Step);
        steps = [.. stepSpreads.Select((spread, step) => StepSeen.Of(spread, ofStep[step]))];
        foreach (var step in steps)
        {
            foreach (var (part, shared) in step.Shared)
            {
                right[part] -= shared * step.Right / step.Precision;
                foreach (var (other, alike) in step.Shared)
                {
                    matrix[part, other] -= shared * alike / step.Precision;
                }
            }
        }

        var solver = new Cholesky(matrix);
        means = solver.Solve(right);
        covariance = [.. Enumerable.Range(0, spreads.Count).Select(part =>
        {
            var one = new double[spreads.Count];
            one[part] = 1;
            return solver.Solve(one);
        })];
    }

    /// <param name="step">Null = one that was never seen, which adds nothing.</param>
    public double Mean(IEnumerable<(int Place, double Weight)> parts, int? step) =>
        parts.Sum(part => part.Weight * means[part.Place])
        + (step is { } at ? (steps[at].Right - steps[at].Shared.Sum(part => part.Weight * means[part.Place])) / steps[at].Precision : 0);

    /// <param name="step">Null = one that was never seen; its own spread is not in the answer.</param>
    public double Variance(IEnumerable<(int Place, double Weight)> parts, int? step)
    {
        var all = step is { } at ? [.. parts, .. steps[at].Shared.Select(part => (part.Place, -part.Weight / steps[at].Precision))] : parts.ToArray();
        return all.Sum(one => all.Sum(other => one.Weight * other.Weight * covariance[one.Place][other.Place])) + (step is { } own ? 1 / steps[own].Precision : 0);
    }

    /// <summary>A step's line of the equations.</summary>
    /// <param name="Shared">What it shares with each part.</param>
    sealed record StepSeen(double Precision, double Right, (int Place, double Weight)[] Shared)
    {
        public static StepSeen Of(double spread, IEnumerable<Seen> seen) => new(
            (1 / (spread * spread)) + seen.Sum(one => one.Precision),
            seen.Sum(one => one.Precision * one.Observed),
            [.. seen.SelectMany(one => one.Parts.Select(part => (part, one.Precision))).GroupBy(one => one.part).Select(same => (same.Key, same.Sum(one => one.Precision)))]);
    }
}
