namespace CookAlong.Domain.Tests.Doneness.Synthetic;

/// <summary>
/// A joint cut into small cubes and heated from all sides, more from above than from the tray below; shares no code with the forecast.
/// A quarter of it is kept, the rest is its mirror. Explicit steps, as long as they stay stable.
/// </summary>
sealed class VoxelJoint
{
    readonly int across;
    readonly int deep;
    readonly int high;
    readonly bool[] isMeat;
    readonly double[] faces;
    readonly double[] belowFaces;
    double[] celsius;
    double[] next;

    /// <param name="half">Metres from the middle to the surface along each axis; the last is up.</param>
    /// <param name="power">2 = an ellipsoid, 4 = a pillow, large = a brick.</param>
    /// <param name="cubes">Along the shortest half axis.</param>
    public VoxelJoint((double X, double Y, double Z) half, double power, double start, double heatCapacity, double conductivity, double perDegree, int cubes)
    {
        (HeatCapacity, Conductivity, PerDegree) = (heatCapacity, conductivity, perDegree);
        Edge = Math.Min(half.X, Math.Min(half.Y, half.Z)) / cubes;
        (across, deep, high) = ((int)Math.Ceiling(half.X / Edge), (int)Math.Ceiling(half.Y / Edge), 2 * (int)Math.Ceiling(half.Z / Edge));
        isMeat = new bool[across * deep * high];
        (celsius, next) = (new double[isMeat.Length], new double[isMeat.Length]);
        (faces, belowFaces) = (new double[isMeat.Length], new double[isMeat.Length]);
        Array.Fill(celsius, start);
        foreach (var (x, y, z) in Cubes())
        {
            double Part(double at, double reach) => Math.Pow(Math.Abs(at) * Edge / reach, power);
            isMeat[Index(x, y, z)] = Part(x + .5, half.X) + Part(y + .5, half.Y) + Part(z + .5 - (high / 2), half.Z) <= 1;
        }

        // Cubes have more surface than the round body they stand for; each face counts for its share of it.
        foreach (var (x, y, z) in Cubes().Where(cube => isMeat[Index(cube.X, cube.Y, cube.Z)]))
        {
            double Slope(double at, double reach) => Math.Pow(Math.Abs(at) * Edge / reach, power - 1) / reach;
            var (sx, sy, sz) = (Slope(x + .5, half.X), Slope(y + .5, half.Y), Slope(z + .5 - (high / 2), half.Z));
            var share = Math.Sqrt((sx * sx) + (sy * sy) + (sz * sz)) / (sx + sy + sz);
            var open = new[] { IsMeat(x + 1, y, z), IsMeat(x, y + 1, z), IsMeat(x, y, z + 1), IsMeat(x - 1, y, z), IsMeat(x, y - 1, z), IsMeat(x, y, z - 1) };
            faces[Index(x, y, z)] = share * open.Count(inside => !inside);
            belowFaces[Index(x, y, z)] = open[5] ? 0 : share;
        }

        Kilograms = 4 * isMeat.Count(meat => meat) * Edge * Edge * Edge * 1050;
    }

    public double HeatCapacity { get; }

    public double Conductivity { get; }

    public double PerDegree { get; }

    public double Edge { get; }

    public double Kilograms { get; }

    /// <summary>The longest step that is stable, with a fifth to spare.</summary>
    public double Seconds => .8 * Edge * Edge * HeatCapacity / (6 * (Conductivity + (100 * PerDegree)) + (3 * 40 * Edge));

    public double Coldest => Enumerable.Range(0, celsius.Length).Where(at => isMeat[at]).Min(at => celsius[at]);

    /// <param name="x">Metres from the middle.</param>
    public double At(double x, double y, double z) =>
        celsius[Index(Math.Min(across - 1, (int)(Math.Abs(x) / Edge)), Math.Min(deep - 1, (int)(Math.Abs(y) / Edge)), Math.Clamp((int)Math.Floor((z / Edge) + (high / 2.0)), 0, high - 1))];

    /// <param name="fromBelow">Of the coefficient, what reaches the side on the tray.</param>
    public void Step(double air, double coefficient, double fromBelow, double wetness, double seconds)
    {
        for (var x = 0; x < across; x++)
        {
            for (var y = 0; y < deep; y++)
            {
                for (var z = 0; z < high; z++)
                {
                    var at = Index(x, y, z);
                    if (!isMeat[at])
                    {
                        continue;
                    }

                    var here = celsius[at];
                    var heat = (From(x - 1, y, z, here) + From(x + 1, y, z, here) + From(x, y - 1, z, here) + From(x, y + 1, z, here) + From(x, y, z - 1, here) + From(x, y, z + 1, here)) / Edge;
                    if (faces[at] > 0)
                    {
                        // Half a cube lies between its middle and its face.
                        var through = 1 / ((1 / coefficient) + (Edge / 2 / Conductivity));
                        var open = faces[at] - ((1 - fromBelow) * belowFaces[at]);
                        heat += open * through * (air - here - (wetness * 2700 * (Vapour(here) - .0105)));
                    }

                    next[at] = here + (heat * seconds / (HeatCapacity * Edge));
                }
            }
        }

        (celsius, next) = (next, celsius);
    }

    double From(int x, int y, int z, double here)
    {
        (x, y) = (Math.Max(0, x), Math.Max(0, y));
        return IsMeat(x, y, z) ? (Conductivity + (PerDegree * (celsius[Index(x, y, z)] + here) / 2)) * (celsius[Index(x, y, z)] - here) : 0;
    }

    bool IsMeat(int x, int y, int z) => x < across && y < deep && z >= 0 && z < high && isMeat[Index(Math.Max(0, x), Math.Max(0, y), z)];

    IEnumerable<(int X, int Y, int Z)> Cubes() =>
        from x in Enumerable.Range(0, across) from y in Enumerable.Range(0, deep) from z in Enumerable.Range(0, high) select (x, y, z);

    int Index(int x, int y, int z) => (((x * deep) + y) * high) + z;

    /// <summary>kg/m³ over water: O. Tetens 1930, from memory.</summary>
    static double Vapour(double celsius) => 610.78 * Math.Exp(17.27 * celsius / (celsius + 237.3)) / (461.5 * (celsius + 273.15));
}
