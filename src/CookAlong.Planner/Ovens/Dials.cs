namespace CookAlong.Planner.Ovens;

/// <summary>What the cook turns so that the oven follows its curve.</summary>
internal static class Dials
{
    /// <summary>Each time with the temperature to set; 0 = off.</summary>
    /// <param name="off">At or below this an oven that waits is simply off.</param>
    public static List<(int At, int Celsius)> Of(IReadOnlyList<(int At, int Celsius)> points, int off, bool isOn)
    {
        var settings = new List<(int At, int Celsius)>();
        var set = isOn ? points[0].Celsius : 0;
        for (var index = 0; index + 1 < points.Count; index++)
        {
            var (from, to) = (index, index + 1);
            while (to + 1 < points.Count && Way(points, to) != 0 && Way(points, to) == Way(points, from))
            {
                // It goes on the same way: one turn of the dial, to where that ends.
                to++;
            }

            var wanted = points[to].Celsius > off ? points[to].Celsius : 0;
            if (wanted != set)
            {
                settings.Add((points[from].At, wanted));
                set = wanted;
            }

            index = to - 1;
        }

        if (set != 0)
        {
            settings.Add((points[^1].At, 0));
        }

        return settings;
    }

    /// <summary>Up, down or level from a point to the next.</summary>
    private static int Way(IReadOnlyList<(int At, int Celsius)> points, int index) => Math.Sign(points[index + 1].Celsius - points[index].Celsius);

    /// <summary>Turns while something inside depends on the oven, not counting putting in and taking out.</summary>
    public static int Changes(IEnumerable<(int At, int Celsius)> settings, IReadOnlyList<Stay> stays) =>
        settings.Count(setting => stays.Any(stay => stay.Start < setting.At && setting.At < stay.End));
}
