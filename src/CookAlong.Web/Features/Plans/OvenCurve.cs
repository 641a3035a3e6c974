using System.Collections.Immutable;
using System.Globalization;
using CookAlong.Domain.Planning;

namespace CookAlong.Web.Features.Plans;

/// <summary>An oven's temperature drawn behind its trays, and what the cook turns the dial to.</summary>
/// <param name="Line">SVG points, from the lane's top.</param>
/// <param name="Area">The same, closed along the bottom.</param>
public sealed record OvenCurve(string Line, string Area, ImmutableArray<DialLabel> Dial)
{
    /// <summary>The height of the lane stands for this many degrees: hotter than any kitchen oven, so that the curve never leaves its box.</summary>
    public const double Full = 300;

    const double LabelWidth = 42;

    public static OvenCurve Of(OvenProgramme programme, TimeScale scale, double height)
    {
        var points = programme.Points.Select(point => (X: scale.X(point.At), Y: height * (1 - (point.Celsius / Full)))).ToList();
        var line = string.Join(' ', points.Select(point => Invariant(point.X, point.Y)));
        var area = points.Count == 0 ? "" : $"{Invariant(points[0].X, height)} {line} {Invariant(points[^1].X, height)}";
        return new OvenCurve(line, area, DialOf(programme, scale));
    }

    static ImmutableArray<DialLabel> DialOf(OvenProgramme programme, TimeScale scale)
    {
        var labels = ImmutableArray.CreateBuilder<DialLabel>();
        double[] freeFrom = [0, 0];
        foreach (var dial in programme.Dial.Where(dial => scale.Shows(dial.At)))
        {
            var at = scale.X(dial.At);
            var row = freeFrom[0] <= at || freeFrom[0] <= freeFrom[1] ? 0 : 1;
            // Two turns of the dial close together stand one below the other; a third moves right, its tick stays where it belongs.
            var left = Math.Min(Math.Max(at, freeFrom[row]), scale.Width - LabelWidth);
            labels.Add(new DialLabel(dial.Celsius == 0 ? "off" : $"{dial.Celsius}°", at, left, row));
            freeFrom[row] = left + LabelWidth;
        }

        return labels.ToImmutable();
    }

    static string Invariant(double x, double y) => string.Create(CultureInfo.InvariantCulture, $"{x:0.#},{y:0.#}");
}

public sealed record DialLabel(string Words, double At, double Left, int Row);
