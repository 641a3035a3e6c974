namespace CookAlong.Domain.Doneness.Heat;

/// <summary>
/// Heat going into and through a body, layer by layer. Implicit, so no step is too long for it to stay stable: two stages a step,
/// second order, and nothing swings when the air changes at once (the L-stable method of R. Alexander, "Diagonally implicit
/// Runge-Kutta methods for stiff O.D.E.'s", SIAM J. Numer. Anal. 14, 1977). What leaves one layer enters the next, so energy is
/// conserved to rounding. The surface's own balance is the last unknown of each stage and may be as curved as evaporation makes it.
/// </summary>
public sealed class Conduction
{
    static readonly double Gamma = 1 - Math.Sqrt(.5);

    readonly Substance substance;
    readonly double[] volumes;
    readonly double[] areas;
    readonly double thickness;
    readonly double[] layers;
    readonly double[] stage;
    readonly double[] right;
    readonly double[] down;
    readonly double[] up;
    readonly double[] diagonal;

    /// <param name="celsius">The same all through, at the start.</param>
    /// <param name="count">Layers, 3 or more; 40 are right to 0.1 % of the temperature difference, 12 to 0.5 %.</param>
    public Conduction(Body body, Substance substance, double celsius, int count)
    {
        this.substance = substance;
        thickness = body.Reach / count;
        volumes = new double[count];
        areas = new double[count];
        layers = new double[count];
        (stage, right, down, up, diagonal) = (new double[count], new double[count], new double[count], new double[count], new double[count]);
        Array.Fill(layers, celsius);
        Surface = celsius;
        var power = body.Roundness + 1;
        for (var layer = 0; layer < count; layer++)
        {
            // Per unit of the outermost area, which so is 1.
            var (inner, outer) = ((double)layer / count, (double)(layer + 1) / count);
            areas[layer] = Math.Pow(outer, body.Roundness);
            volumes[layer] = body.Reach * (Math.Pow(outer, power) - Math.Pow(inner, power)) / power;
        }
    }

    /// <summary>°C at the surface.</summary>
    public double Surface { get; private set; }

    /// <summary>°C in the very middle: a parabola through the two innermost layers.</summary>
    public double Core => ((9 * layers[0]) - layers[1]) / 8;

    /// <summary>J per m² of surface that it holds above 0 °C.</summary>
    public double Heat => layers.Zip(volumes, (celsius, volume) => celsius * volume).Sum() * substance.HeatCapacity;

    /// <summary>J per m² of surface taken in since the start; negative when it gave heat away.</summary>
    public double TakenIn { get; private set; }

    /// <summary>°C of the whole, were it stirred.</summary>
    public double Mean => Heat / (substance.HeatCapacity * volumes.Sum());

    /// <summary>°C at a part of the way from the middle (0) to the surface (1).</summary>
    public double At(double part)
    {
        var place = (part * layers.Length) - .5;
        if (place <= 0)
        {
            return Core + ((layers[0] - Core) * 4 * (place + .5) * (place + .5));
        }

        var inner = (int)place;
        var (from, to, step) = inner + 1 < layers.Length
            ? (layers[inner], layers[inner + 1], place - inner)
            : (layers[^1], Surface, Math.Min(1, 2 * (place - inner)));
        return from + ((to - from) * step);
    }

    /// <param name="seconds">Above 0.</param>
    public void Step(Surface surface, double seconds)
    {
        var last = layers.Length - 1;
        var weight = Gamma * seconds / substance.HeatCapacity;
        Factor(weight);
        layers.CopyTo(right, 0);
        var first = Solve(surface, weight, stage);
        for (var layer = 0; layer <= last; layer++)
        {
            right[layer] = layers[layer] + ((1 - Gamma) / Gamma * (stage[layer] - layers[layer]));
        }

        var second = Solve(surface, weight, layers);
        TakenIn += seconds * (((1 - Gamma) * first) + (Gamma * second));
    }

    /// <summary>The matrix is the same for both stages: conductivity is taken at the temperatures where the step begins.</summary>
    void Factor(double weight)
    {
        var below = 0.0;
        for (var layer = 0; layer < layers.Length; layer++)
        {
            var scaled = weight / volumes[layer];
            var above = layer + 1 < layers.Length
                ? areas[layer] * substance.ConductivityAt((layers[layer] + layers[layer + 1]) / 2) / thickness
                : 0;
            down[layer] = scaled * below;
            diagonal[layer] = 1 / (1 + (scaled * (below + above)) - (layer > 0 ? down[layer] * up[layer - 1] : 0));
            up[layer] = scaled * above * diagonal[layer];
            below = above;
        }
    }

    /// <returns>W/m² into the surface.</returns>
    double Solve(Surface surface, double weight, double[] into)
    {
        var last = layers.Length - 1;
        into[0] = right[0] * diagonal[0];
        for (var layer = 1; layer <= last; layer++)
        {
            into[layer] = (right[layer] + (down[layer] * into[layer - 1])) * diagonal[layer];
        }

        var warms = weight / volumes[last] * diagonal[last];
        var heat = Balance(surface, into[last], warms);
        into[last] += heat * warms;
        for (var layer = last - 1; layer >= 0; layer--)
        {
            into[layer] += up[layer] * into[layer + 1];
        }

        return heat;
    }

    /// <summary>
    /// The surface temperature at which what the air brings is what the outermost half layer carries on. That layer ends at
    /// <paramref name="without"/> + heat * <paramref name="warms"/>. The balance only rises, and bends one way: Newton's steps
    /// close in.
    /// </summary>
    double Balance(Surface surface, double without, double warms)
    {
        var resistance = (thickness / 2 / substance.ConductivityAt(Surface)) + warms;
        var celsius = Surface;
        var heat = 0.0;
        for (var round = 0; round < 30; round++)
        {
            (heat, var slope) = surface.At(celsius);
            var over = celsius - without - (heat * resistance);
            var correction = over / (1 - (slope * resistance));
            celsius -= correction;
            if (Math.Abs(correction) < 1e-9 || surface.Wetness <= 0)
            {
                break;
            }
        }

        Surface = celsius;
        return (celsius - without) / resistance;
    }
}
