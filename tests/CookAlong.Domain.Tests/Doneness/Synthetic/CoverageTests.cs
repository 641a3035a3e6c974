using CookAlong.Domain.Doneness;

namespace CookAlong.Domain.Tests.Doneness.Synthetic;

/// <summary>
/// The promise of a forecast, on joints it was not made with: the range holds nine times in ten, and after two fifths of the cooking the
/// likely time is off by little of what is left. Seeds from 1 to 3 were looked at while the spreads were chosen; these are others.
/// </summary>
public sealed class CoverageTests(ITestOutputHelper output)
{
    const int Roasts = 300;

    static readonly Lazy<SyntheticRoast[]> HeldOut = new(() => [.. Enumerable.Range(0, Roasts).Select(number => new SyntheticRoast(new Random(70_000 + number), cubes: 6))]);

    [Theory]
    [InlineData(.2)]
    [InlineData(.4)]
    [InlineData(.6)]
    [InlineData(.8)]
    public void The_range_holds_nine_times_in_ten(double part)
    {
        var ranges = HeldOut.Value.Select(roast => (roast.Truth, Range: RangeOf(Forecast(roast, part)))).Where(one => one.Range is not null).ToArray();
        var held = ranges.Count(one => one.Range!.Value.From <= one.Truth && one.Truth <= one.Range.Value.To);
        output.WriteLine($"{held} of {ranges.Length}, of {Roasts} joints");
        Assert.True(ranges.Length >= .95 * Roasts);
        Assert.InRange((double)held / ranges.Length, .85, .95);
    }

    [Fact]
    public void After_two_fifths_of_the_cooking_half_of_the_likely_times_are_off_by_no_more_than_six_hundredths_of_what_is_left()
    {
        var off = HeldOut.Value.Select(roast => (roast, Forecast(roast, .4) as CoreForecast.Expected)).Where(one => one.Item2 is not null)
            .Select(one => Math.Abs(SyntheticRoast.MinutesOf(one.Item2!.Likely) - one.roast.Truth) / (.6 * one.roast.Truth)).Order().ToArray();
        output.WriteLine($"{off[off.Length / 2]:P1} of {off.Length} joints");
        Assert.True(off.Length >= .9 * Roasts);
        Assert.True(off[off.Length / 2] <= .06, $"{off[off.Length / 2]:P1}");
    }

    [Fact]
    public void The_range_narrows_as_readings_come()
    {
        double Width(double part) => HeldOut.Value.Select(roast => RangeOf(Forecast(roast, part))).Where(range => range is not null).Average(range => range!.Value.To - range.Value.From);
        var widths = new[] { 0, .2, .4, .6, .8 }.Select(Width).ToArray();
        output.WriteLine(string.Join(", ", widths.Select(width => $"{width:F0} min")));
        Assert.Equal(widths.OrderDescending(), widths);
        Assert.True(widths[^1] < widths[0] / 5);
    }

    static readonly Dictionary<(SyntheticRoast, double), CoreForecast> Asked = [];

    static CoreForecast Forecast(SyntheticRoast roast, double part) =>
        Asked.TryGetValue((roast, part), out var answer) ? answer
        : Asked[(roast, part)] = Thermometer.Forecast(roast.Roasting, roast.Until(part), roast.Celsius);

    static (double From, double To)? RangeOf(CoreForecast answer) => answer switch
    {
        CoreForecast.Expected expected => (SyntheticRoast.MinutesOf(expected.Earliest), SyntheticRoast.MinutesOf(expected.Latest)),
        CoreForecast.RangeOnly range => (SyntheticRoast.MinutesOf(range.Earliest), range.Latest is { } latest ? SyntheticRoast.MinutesOf(latest) : double.MaxValue / 1e6),
        CoreForecast.Never or CoreForecast.Reached or CoreForecast.DoesNotFit or CoreForecast.ProbeDoubted or CoreForecast.Refused => null,
        _ => throw new System.Diagnostics.UnreachableException(answer.ToString()),
    };
}
