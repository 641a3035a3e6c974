using CookAlong.Domain.Kitchens;
using static CookAlong.Domain.Planning.Checks.PlanInQuestion;

namespace CookAlong.Domain.Planning.Checks;

/// <summary>
/// An oven's temperature, read off its programme: it stands at its starting temperature when the plan begins, goes straight
/// from point to point, and stays as the last point leaves it.
/// </summary>
sealed class OvenCurve
{
    readonly OvenPoint[] points;

    public OvenCurve(Oven oven, Plan plan)
    {
        var programme = Given(plan.Ovens).FirstOrDefault(one => one.Oven == oven.Id);
        points = [new OvenPoint(plan.NotBefore, oven.StartsAt), .. programme is null ? [] : Given(programme.Points)];
    }

    public IEnumerable<(OvenPoint From, OvenPoint To)> Stretches => points.Zip(points.Skip(1));

    /// <summary>
    /// °C at a whole minute. The division comes last: where the true value is a whole number it is hit exactly, so a
    /// comparison with a range's whole degrees is never wrong by a rounding.
    /// </summary>
    public decimal At(Minute minute)
    {
        var next = Array.FindIndex(points, point => point.At > minute);
        if (next < 0)
        {
            return points[^1].Celsius;
        }

        if (next == 0)
        {
            return points[0].Celsius;
        }

        var (from, to) = (points[next - 1], points[next]);
        return from.Celsius + ((to.Celsius - from.Celsius) * (decimal)(minute - from.At) / (to.At - from.At));
    }
}
