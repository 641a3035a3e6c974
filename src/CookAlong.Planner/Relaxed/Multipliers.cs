namespace CookAlong.Planner.Relaxed;

/// <summary>What breaking a rule that was given up costs, at each of its places: 0 to <paramref name="most"/>, moved along a deflected subgradient.</summary>
internal sealed class Multipliers(int count, double most = double.PositiveInfinity)
{
    /// <summary>Of the direction before: without it the prices of neighbouring minutes swing against each other.</summary>
    private const double Kept = 0.5;

    private readonly double[] direction = new double[count];

    public double[] Values { get; } = new double[count];

    /// <summary>By how much each rule is broken now; below 0 where there is room.</summary>
    public double[] Slopes { get; } = new double[count];

    /// <returns>The square of the way's length.</returns>
    public double Turn()
    {
        var square = 0.0;
        for (var at = 0; at < direction.Length; at++)
        {
            var turned = (Kept * direction[at]) + ((1 - Kept) * Slopes[at]);
            turned = Values[at] <= 0 && turned < 0 ? 0 : turned;
            direction[at] = turned;
            square += turned * turned;
        }

        return square;
    }

    public void Move(double size)
    {
        for (var at = 0; at < direction.Length; at++)
        {
            Values[at] = Math.Clamp(Values[at] + (size * direction[at]), 0, most);
        }

        Array.Clear(Slopes);
    }
}
