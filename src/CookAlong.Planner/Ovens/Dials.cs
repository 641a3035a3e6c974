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
        foreach (var (point, next) in points.Zip(points.Skip(1)))
        {
            var wanted = next.Celsius > off ? next.Celsius : 0;
            if (wanted != set)
            {
                settings.Add((point.At, wanted));
                set = wanted;
            }
        }

        if (set != 0)
        {
            settings.Add((points[^1].At, 0));
        }

        return settings;
    }

    /// <summary>Turns while something inside depends on the oven, not counting putting in and taking out.</summary>
    public static int Changes(IEnumerable<(int At, int Celsius)> settings, IReadOnlyList<Stay> stays) =>
        settings.Count(setting => stays.Any(stay => stay.Start < setting.At && setting.At < stay.End));
}
