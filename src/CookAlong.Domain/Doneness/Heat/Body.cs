namespace CookAlong.Domain.Doneness.Heat;

/// <summary>A body heated evenly from outside, so that its temperature depends on the way from its middle alone.</summary>
/// <param name="Roundness">
/// 0 = slab, 1 = long cylinder, 2 = sphere; between them a joint that is neither: the area a layer has grows with that power of its
/// way from the middle. From 0 to 2.5.
/// </param>
/// <param name="Reach">Metres from the middle to the surface: half a slab's thickness, or a radius. Above 0.</param>
public readonly record struct Body(double Roundness, double Reach)
{
    public static Body Slab(double halfThickness) => new(0, halfThickness);

    public static Body Cylinder(double radius) => new(1, radius);

    public static Body Sphere(double radius) => new(2, radius);
}

/// <summary>What a body is made of, as the solver takes it.</summary>
/// <param name="HeatCapacity">J/(m³ K), above 0. Taken as constant: of meat it changes by 1 % between 5 and 75 °C.</param>
/// <param name="Conductivity">W/(m K) at 0 °C, above 0.</param>
/// <param name="PerDegree">Its change a °C; of meat it grows by an eighth between 5 and 75 °C.</param>
public readonly record struct Substance(double HeatCapacity, double Conductivity, double PerDegree)
{
    public static Substance Of(Composition food)
    {
        var (cold, warm, done) = (food.At(5), food.At(40), food.At(75));
        var slope = (done.Conductivity - cold.Conductivity) / 70;
        return new(warm.HeatCapacity, cold.Conductivity - (5 * slope), slope);
    }

    public double ConductivityAt(double celsius) => Conductivity + (PerDegree * celsius);
}
