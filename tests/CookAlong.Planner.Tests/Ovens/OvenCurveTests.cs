using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Planner.Ovens;
using CsCheck;

namespace CookAlong.Planner.Tests.Ovens;

public sealed class OvenCurveTests
{
    [Fact]
    public void Heats_as_late_as_it_can_and_is_there_when_the_food_goes_in()
    {
        var points = OvenCurve.Points(Oven(12, 10), 0, 20, [Stay(60, 100, 175, 185)]);

        Assert.Equal([(0, 20), (46, 20), (60, 180), (100, 180)], points);
        Assert.Equal([(46, 180), (100, 0)], Dials.Of(points, off: 20, isOn: false));
    }

    [Fact]
    public void Is_turned_down_at_once_when_the_next_wants_less()
    {
        var points = OvenCurve.Points(Oven(12, 10), 0, 20, [Stay(20, 40, 195, 205), Stay(60, 80, 90, 100)]);

        Assert.Equal((40, 200), points[^3]);
        Assert.Equal((51, 95), points[^2]);
        Assert.Equal((80, 95), points[^1]);
    }

    [Fact]
    public void Goes_off_when_it_stands_empty_for_hours()
    {
        var points = OvenCurve.Points(Oven(12, 10), 0, 20, [Stay(20, 40, 175, 185), Stay(400, 420, 175, 185)]);

        Assert.Contains(points, point => point.At > 40 && point.At < 100 && point.Celsius == 20);
        Assert.Equal(2, Dials.Of(points, off: 20, isOn: false).Count(dial => dial.Celsius == 0));
    }

    // Oven dials are marked in tens with a stroke at each five: common practice, no source.
    [Theory]
    [InlineData(171, 178, 185, 180)]
    [InlineData(170, 177, 190, 180)]
    [InlineData(173, 177, 179, 175)]
    [InlineData(165, 175, 185, 175)]
    [InlineData(176, 178, 179, 178)]
    public void Is_set_to_the_ideal_or_a_round_number_near_it_where_the_range_has_one(int min, int ideal, int max, int dial)
    {
        var points = OvenCurve.Points(Oven(12, 10), 0, 20, [new Stay(60, 100, new CelsiusRange(min, ideal, max), MayYield: false)]);

        Assert.Equal(dial, Dials.Of(points, off: 20, isOn: false)[0].Celsius);
    }

    [Fact]
    public void Is_set_once_to_a_round_number_that_suits_two_who_share_it()
    {
        var points = OvenCurve.Points(Oven(12, 10), 0, 20, [Stay(60, 150, 170, 178), Stay(80, 110, 172, 184)]);

        Assert.Equal([175, 0], Dials.Of(points, off: 20, isOn: false).Select(one => one.Celsius));
    }

    [Fact]
    public void Is_only_ever_set_to_fives_where_every_range_holds_one_and_time_is_ample()
    {
        Gen.Int.Sample(
            seed =>
            {
                var random = new Random(seed);
                var stays = Enumerable.Range(1, 1 + random.Next(5)).Select(index =>
                {
                    var (start, min) = (index * 100, 50 + random.Next(150));
                    return Stay(start, start + 1 + random.Next(50), min, min + 4 + random.Next(20));
                }).ToList();

                var points = OvenCurve.Points(Oven(12, 10), 0, 21, stays);

                Assert.All(Dials.Of(points, off: 21, isOn: false), one => Assert.Equal(0, one.Celsius % 5));
            },
            iter: 500, threads: 1);
    }

    [Fact]
    public void Passes_a_wide_range_between_whole_degrees_where_the_rates_are_no_whole_number()
    {
        // From 100 up to 125 in two minutes at 12.5 a minute: nothing may be settled at the minute between.
        var points = OvenCurve.Points(Oven(12.5m, 10), 0, 100, [Stay(0, 0, 100, 100), Stay(1, 1, 50, 200), Stay(2, 5, 125, 130)]);

        Assert.Equal([(0, 100), (2, 125), (5, 125)], points);
    }

    [Fact]
    public void What_is_inside_already_gives_way_to_what_can_still_be_kept()
    {
        var yielding = Stay(0, 30, 200, 210) with { MayYield = true };

        var points = OvenCurve.Points(Oven(10, 10), 0, 100, [yielding, Stay(40, 50, 200, 210)]);

        Assert.Equal((10, 200), points[1]);
    }

    [Fact]
    public void Stays_that_allow_a_curve_pair_by_pair_have_one_that_keeps_every_range_and_rate_exactly()
    {
        decimal[] rates = [0.5m, 3, 7.3m, 12.5m, 30];
        Gen.Int.Sample(
            seed =>
            {
                var random = new Random(seed);
                var oven = Oven(rates[random.Next(rates.Length)], rates[random.Next(rates.Length)]);
                var stays = new List<Stay>();
                for (var tries = 0; tries < 12; tries++)
                {
                    var (start, min) = (random.Next(120), 30 + random.Next(150));
                    var stay = Stay(start, start + 1 + random.Next(30), min, min + random.Next(40));
                    if (Allows(oven, new Stay(0, 0, new CelsiusRange(20, 20, 20), false), stay) && stays.All(other => Allows(oven, other, stay)))
                    {
                        stays.Add(stay);
                    }
                }

                var points = OvenCurve.Points(oven, 0, 20, stays);

                Assert.Equal((0, 20), points[0]);
                foreach (var (from, to) in points.Zip(points.Skip(1)))
                {
                    Assert.InRange(to.Celsius - from.Celsius, -oven.CoolDownPerMinute * (to.At - from.At), oven.HeatUpPerMinute * (to.At - from.At));
                }

                foreach (var stay in stays)
                {
                    for (var minute = stay.Start; minute <= stay.End; minute++)
                    {
                        Assert.InRange(At(points, minute), stay.Celsius.Min, stay.Celsius.Max);
                    }
                }
            },
            iter: 2_000, threads: 1);
    }

    private static bool Allows(Oven oven, Stay one, Stay other) =>
        one.Celsius.Meets(other.Celsius)
        || other.Start - one.End >= oven.MinutesBetween(one.Celsius, other.Celsius)
        || one.Start - other.End >= oven.MinutesBetween(other.Celsius, one.Celsius);

    private static decimal At(List<(int At, int Celsius)> points, int minute)
    {
        var last = points.Last(point => point.At <= minute);
        var next = points.FirstOrDefault(point => point.At > minute, last);
        return next == last ? last.Celsius : last.Celsius + ((next.Celsius - last.Celsius) * (decimal)(minute - last.At) / (next.At - last.At));
    }

    private static Oven Oven(decimal up, decimal down) => new(new OvenId("oven"), "Oven", 3, false, 30, 250, up, down, 20);

    private static Stay Stay(int start, int end, int min, int max) => new(start, end, new CelsiusRange(min, (min + max) / 2, max), MayYield: false);
}
