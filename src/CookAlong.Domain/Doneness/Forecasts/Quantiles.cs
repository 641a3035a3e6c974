namespace CookAlong.Domain.Doneness.Forecasts;

/// <summary>Of weighted figures.</summary>
static class Quantiles
{
    /// <param name="parts">From 0 to 1.</param>
    public static double[] Of(IEnumerable<(double Figure, double Weight)> weighted, params ReadOnlySpan<double> parts)
    {
        var sorted = weighted.OrderBy(one => one.Figure).ToArray();
        var found = new double[parts.Length];
        for (var part = 0; part < parts.Length; part++)
        {
            var below = 0.0;
            found[part] = sorted[^1].Figure;
            foreach (var (figure, weight) in sorted)
            {
                below += weight;
                if (below >= parts[part])
                {
                    found[part] = figure;
                    break;
                }
            }
        }

        return found;
    }
}
