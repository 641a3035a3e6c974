namespace CookAlong.Domain.Doneness.Forecasts;

/// <summary>
/// Where the readings point: the most probable unknowns, by damped Gauss-Newton steps from what is usual, and how sure they are.
/// Between them and the usual values stands each reading's own error, and the model's.
/// </summary>
sealed class Fit
{
    /// <summary>°C of a reading: the thermometer's own half degree and what an even, simple joint leaves out.</summary>
    public const double Error = .45;

    const int Rounds = 7;
    const double Nudge = .05;
    const double Farthest = 4;

    readonly Joint joint;
    readonly SizePrior size;
    readonly OvenAir air;
    readonly (double Minutes, double Celsius)[] readings;

    public Fit(Joint joint, SizePrior size, OvenAir air, (double Minutes, double Celsius)[] readings)
    {
        (this.joint, this.size, this.air, this.readings) = (joint, size, air, readings);
        Best = new double[Unknowns.Count];
        Precision = Unit();
        Climb();
    }

    public double[] Best { get; }

    /// <summary>The inverse of the covariance around <see cref="Best"/>.</summary>
    public double[,] Precision { get; private set; }

    /// <summary>°C by which the best joint misses the readings, on the quadratic mean; 0 without readings.</summary>
    public double Misses => readings.Length == 0 ? 0 : Math.Sqrt(Off(Best).Sum(off => off * off) / readings.Length) * Error;

    /// <summary>Half of how improbable unknowns are after the readings; smaller is likelier.</summary>
    public double Cost(ReadOnlySpan<double> unknown)
    {
        var cost = 0.0;
        foreach (var one in unknown)
        {
            cost += one * one;
        }

        foreach (var off in Off(unknown))
        {
            cost += off * off;
        }

        return cost / 2;
    }

    public Cooking Cook(ReadOnlySpan<double> unknown) => new(Unknowns.Of(unknown, joint, size), air);

    double[] Off(ReadOnlySpan<double> unknown)
    {
        var cooking = Cook(unknown);
        return Array.ConvertAll(readings, reading => (cooking.ProbeAt(reading.Minutes) - reading.Celsius) / Error);
    }

    void Climb()
    {
        if (readings.Length == 0)
        {
            return;
        }

        var (off, cost, damping) = (Off(Best), Cost(Best), 0.0);
        for (var round = 0; round < Rounds; round++)
        {
            var slopes = Slopes(off);
            var (precision, downhill) = (Unit(), Array.ConvertAll(Best, one => -one));
            for (var one = 0; one < Unknowns.Count; one++)
            {
                for (var reading = 0; reading < off.Length; reading++)
                {
                    downhill[one] -= slopes[one][reading] * off[reading];
                    for (var other = 0; other < Unknowns.Count; other++)
                    {
                        precision[one, other] += slopes[one][reading] * slopes[other][reading];
                    }
                }
            }

            Precision = precision;
            var stiff = (double[,])precision.Clone();
            for (var one = 0; one < Unknowns.Count; one++)
            {
                stiff[one, one] *= 1 + damping;
            }

            var step = new Cholesky(stiff).Solve(downhill);
            var next = Best.Zip(step, (at, by) => Math.Clamp(at + by, -Farthest, Farthest)).ToArray();
            var nextCost = Cost(next);
            if (nextCost > cost)
            {
                damping = Math.Max(.3, damping * 5);
                continue;
            }

            var isThere = cost - nextCost < .02;
            next.CopyTo(Best, 0);
            (off, cost, damping) = (Off(Best), nextCost, damping / 5);
            if (isThere)
            {
                break;
            }
        }
    }

    double[][] Slopes(double[] off)
    {
        var slopes = new double[Unknowns.Count][];
        for (var one = 0; one < Unknowns.Count; one++)
        {
            var nudged = (double[])Best.Clone();
            nudged[one] += Nudge;
            slopes[one] = Off(nudged).Zip(off, (there, here) => (there - here) / Nudge).ToArray();
        }

        return slopes;
    }

    static double[,] Unit()
    {
        var unit = new double[Unknowns.Count, Unknowns.Count];
        for (var one = 0; one < Unknowns.Count; one++)
        {
            unit[one, one] = 1;
        }

        return unit;
    }
}
