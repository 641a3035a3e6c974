using CookAlong.Domain.Doneness;
using static CookAlong.Domain.Tests.Doneness.Roasts;

namespace CookAlong.Domain.Tests.Doneness;

public sealed class ThermometerTests
{
    [Fact]
    public void A_handful_of_readings_names_a_time_and_a_range_around_it()
    {
        var done = Readings(200, every: 1).First(reading => reading.Celsius >= 63).At;
        var expected = Assert.IsType<CoreForecast.Expected>(Thermometer.Forecast(At(165), Readings(60), 63));
        Assert.InRange(done, expected.Earliest, expected.Latest);
        Assert.InRange(expected.Likely, expected.Earliest, expected.Latest);
        Assert.Equal(12, expected.Readings);
        Assert.Empty(expected.LeftOut);
    }

    [Fact]
    public void The_same_readings_give_the_same_forecast() =>
        Assert.Equal(Thermometer.Forecast(At(165), Readings(60), 63).ToString(), Thermometer.Forecast(At(165), Readings(60), 63).ToString());

    [Fact]
    public void Without_readings_there_is_a_range_and_no_time()
    {
        // USDA, beef round of 2.5 to 4 lb at 325 °F to 145 °F: 30 to 35 minutes a pound, so 105 to 123 minutes for 3.5 lb.
        var range = Assert.IsType<CoreForecast.RangeOnly>(Thermometer.Forecast(At(162.8, Beef(1.588)), [], 62.8));
        Assert.InRange(In.AddMinutes(105), range.Earliest, range.Latest!.Value);
        Assert.InRange(In.AddMinutes(123), range.Earliest, range.Latest!.Value);
    }

    [Fact]
    public void A_hotter_programme_later_is_sooner_done()
    {
        Roasting Later(double celsius) => At(165) with { Air = [new(In, 165), new(In.AddMinutes(70), 165), new(In.AddMinutes(78), celsius)] };
        Assert.True(Likely(Later(210)) < Likely(Later(165)).AddMinutes(-2));
        Assert.Equal(Likely(At(165)), Likely(Later(165)));
    }

    [Fact]
    public void Open_doors_and_foil_cost_time()
    {
        var plain = Likely(At(165));
        Assert.True(Likely(At(165) with { Doors = [new(In.AddMinutes(70), TimeSpan.FromMinutes(3)), new(In.AddMinutes(85), TimeSpan.FromMinutes(3))] }) > plain.AddSeconds(30));
        Assert.True(Likely(At(165) with { Foil = [new(In.AddMinutes(62), null)] }) > plain.AddMinutes(2));
    }

    [Fact]
    public void A_reading_at_the_temperature_is_there()
    {
        var readings = Readings(200);
        var until = readings[..(Array.FindIndex(readings, reading => reading.Celsius >= 63) + 1)];
        Assert.Equal(new CoreForecast.Reached(until[^1]), Thermometer.Forecast(At(165), until, 63));
    }

    [Fact]
    public void An_oven_too_cool_for_it_never_gets_there()
    {
        var never = Assert.IsType<CoreForecast.Never>(Thermometer.Forecast(At(55), Readings(100, oven: 55), 63));
        Assert.InRange(never.Highest, 40, 60);
    }

    [Fact]
    public void An_oven_that_does_not_heat_is_noticed_when_it_is_said_to()
    {
        // Set to 180, but at 30: the middle hardly moves.
        var answer = Thermometer.Forecast(At(180), Readings(90, oven: 30), 63);
        Assert.False(Assert.IsType<CoreForecast.DoesNotFit>(answer).Faster);
    }

    [Fact]
    public void A_probe_near_a_bone_or_the_surface_is_not_believed()
    {
        var answer = Thermometer.Forecast(At(165), Readings(60, probe: .85), 63);
        Assert.True(Assert.IsType<CoreForecast.DoesNotFit>(answer).Faster);
    }

    [Theory]
    [InlineData(.1)]
    [InlineData(.2)]
    [InlineData(.3)]
    [InlineData(.4)]
    [InlineData(.5)]
    [InlineData(.6)]
    [InlineData(.7)]
    [InlineData(.8)]
    public void Wherever_the_probe_is_a_time_that_is_named_is_not_far_too_early(double probe)
    {
        var done = Readings(200, every: 1).First(reading => reading.Celsius >= 63).At;
        Assert.All(new[] { 15, 20, 30, 40, 50, 60, 80 }, minutes =>
        {
            if (Thermometer.Forecast(At(165), Readings(minutes, probe: probe), 63) is CoreForecast.Expected expected)
            {
                // A quarter of an hour of two hours; the middle is read again before it is carved.
                Assert.True(expected.Latest > done.AddMinutes(-15), $"{minutes}: {expected}");
            }
        });
    }

    [Fact]
    public void Half_the_joint_is_not_taken_for_the_whole()
    {
        // Somebody typed 6 kg for a joint of 1.
        Assert.True(Assert.IsType<CoreForecast.DoesNotFit>(Thermometer.Forecast(At(165, Beef(6)), Readings(60, reach: .035), 63)).Faster);
    }

    static DateTimeOffset Likely(Roasting roasting) => Assert.IsType<CoreForecast.Expected>(Thermometer.Forecast(roasting, Readings(60), 63)).Likely;
}
