namespace CookAlong.Domain.Doneness.Forecasts;

/// <summary>Of weighted figures.</summary>
static class Quantiles
{
    /// <summary>Between the two ends lie nine in ten.</summary>
    public static (double Low, double Likely, double High) OfRange(IEnumerable<(double Figure, double Weight)> weighted)
    {
        var sorted = weighted.OrderBy(one => one.Figure).ToArray();
        return (At(.05), At(.5), At(.95));

        double At(double part)
        {
            var below = 0.0;
            foreach (var (figure, weight) in sorted)
            {
                below += weight;
                if (below >= part)
                {
                    return figure;
                }
            }

            return sorted[^1].Figure;
        }
    }
}
