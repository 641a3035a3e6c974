using System.Collections.Immutable;

namespace CookAlong.Domain.FoodSafety;

/// <summary>Published dwell times: kept at a temperature for so long, a food has had the reduction the table is made for.</summary>
/// <param name="Logs">The reduction, in powers of ten.</param>
/// <param name="Rows">°C and seconds; hotter is shorter.</param>
public sealed record KillTable(string Id, double Logs, ImmutableArray<(double Celsius, double Seconds)> Rows, Source Source)
{
    /// <summary>
    /// Seconds to be kept at <paramref name="celsius"/>. Each row exactly as printed; between two of them a straight line of the
    /// logarithm, so that z is what the source's own rows say; below the first null, above the last no less than the last. Next to a
    /// row of no time at all, the longer one counts.
    /// </summary>
    public double? Seconds(double celsius)
    {
        // A row in whole °F is met by the same temperature worked out in °C.
        const double same = 1e-9;
        if (celsius < Rows[0].Celsius - same)
        {
            return null;
        }

        var row = Rows.Length - 1;
        while (Rows[row].Celsius > celsius + same)
        {
            row--;
        }

        var from = Rows[row];
        if (row == Rows.Length - 1 || from.Seconds <= 0 || Rows[row + 1].Seconds <= 0)
        {
            return from.Seconds;
        }

        var (to, part) = (Rows[row + 1], Math.Max(0, (celsius - from.Celsius) / (Rows[row + 1].Celsius - from.Celsius)));
        return from.Seconds * Math.Pow(to.Seconds / from.Seconds, part);
    }
}
