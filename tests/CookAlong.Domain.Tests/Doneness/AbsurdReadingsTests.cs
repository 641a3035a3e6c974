using CookAlong.Domain.Doneness;
using CsCheck;
using static CookAlong.Domain.Tests.Doneness.Roasts;

namespace CookAlong.Domain.Tests.Doneness;

/// <summary>Whatever is typed, the answer is honest or a refusal, and never a time to count on.</summary>
public sealed class AbsurdReadingsTests
{
    [Fact]
    public void Five_hundred_degrees_is_no_core() =>
        Assert.Null(Assert.IsType<ProbeDoubt.Impossible>(Doubt(Readings(60).Then(65, 500))).IfFahrenheit);

    [Fact]
    public void A_core_in_Fahrenheit_is_asked_about()
    {
        Assert.Equal(60, Assert.IsType<ProbeDoubt.Impossible>(Doubt(Readings(60).Then(65, 140))).IfFahrenheit!.Value, 0.01);
        Assert.Equal(5, Assert.IsType<ProbeDoubt.FarFromStart>(Doubt([new(In.AddMinutes(5), 41)])).IfFahrenheit!.Value, 0.01);
    }

    [Fact]
    public void A_probe_that_fell_out_reads_the_oven() => Assert.IsType<ProbeDoubt.Leapt>(Doubt(Readings(60).Then(63, 95)));

    [Fact]
    public void A_core_does_not_fall_in_a_hot_oven() => Assert.InRange(Assert.IsType<ProbeDoubt.Fell>(Doubt(Readings(60).Then(65, 12))).By, 5, 40);

    [Fact]
    public void Time_does_not_go_backward()
    {
        Assert.IsType<ProbeDoubt.OutOfOrder>(Doubt(Readings(60).Then(50, 26)));
        Assert.IsType<ProbeDoubt.OutOfOrder>(Doubt([new(In.AddMinutes(-5), 5)]));
    }

    [Fact]
    public void A_mistaken_date_is_noticed_and_does_not_spoil_what_follows()
    {
        var sound = Readings(70);
        ProbeReading mistaken = new(In.AddYears(10), 30);
        Assert.IsType<ProbeDoubt.LongAfter>(Doubt([.. sound, mistaken]));
        Assert.IsType<ProbeDoubt.LongAfter>(Assert.Single(Assert.IsType<CoreForecast.Expected>(Thermometer.Forecast(At(165), [.. sound[..^1], mistaken, sound[^1]], 63)).LeftOut));
    }

    [Theory]
    [InlineData(30)]
    [InlineData(45)]
    [InlineData(60)]
    [InlineData(90)]
    public void Readings_all_in_Fahrenheit_name_no_time_and_are_not_done(int minutes)
    {
        ProbeReading[] readings = [.. Readings(minutes).Select(reading => reading with { Celsius = (reading.Celsius * 1.8) + 32 })];
        Assert.True(Thermometer.Forecast(At(165), readings, 63) is CoreForecast.ProbeDoubted or CoreForecast.DoesNotFit);
    }

    [Fact]
    public void No_number_is_no_reading() => Assert.IsType<ProbeDoubt.Impossible>(Doubt(Readings(60).Then(65, double.NaN)));

    [Fact]
    public void One_wild_reading_is_left_out_once_the_next_is_sound()
    {
        var sound = Readings(70);
        ProbeReading[] readings = [.. sound[..^1], new(sound[^1].At.AddMinutes(-2), 99), sound[^1]];
        var expected = Assert.IsType<CoreForecast.Expected>(Thermometer.Forecast(At(165), readings, 63));
        Assert.IsType<ProbeDoubt.Leapt>(Assert.Single(expected.LeftOut));
        Assert.Equal(Assert.IsType<CoreForecast.Expected>(Thermometer.Forecast(At(165), sound, 63)).Likely, expected.Likely);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(0)]
    [InlineData(.02)]
    [InlineData(400)]
    public void Weights_beyond_reason_are_refused(double kilograms) =>
        Assert.IsType<CoreRefusal.WeightOutOfRange>(Refusal(At(165, Beef(kilograms))));

    [Fact]
    public void A_frozen_joint_is_refused()
    {
        Assert.IsType<CoreRefusal.Frozen>(Refusal(At(165, Beef() with { StartCelsius = -12 })));
        var answer = Thermometer.Forecast(At(165), [new(In.AddMinutes(10), -4), new(In.AddMinutes(20), -3)], 63);
        Assert.IsType<CoreRefusal.Frozen>(Assert.IsType<CoreForecast.Refused>(answer).Why);
    }

    [Theory]
    [InlineData(-40)]
    [InlineData(900)]
    [InlineData(double.NaN)]
    public void Ovens_beyond_reason_are_refused(double celsius) => Assert.IsType<CoreRefusal.OvenOutOfRange>(Refusal(At(celsius)));

    [Fact]
    public void An_oven_without_points_or_out_of_order_is_refused()
    {
        Assert.IsType<CoreRefusal.OvenOutOfOrder>(Refusal(At(165) with { Air = [] }));
        Assert.IsType<CoreRefusal.OvenOutOfOrder>(Refusal(At(165) with { Air = [new(In, 180), new(In.AddMinutes(-1), 200)] }));
    }

    [Theory]
    [InlineData(10)]
    [InlineData(165)]
    [InlineData(double.NaN)]
    public void A_core_nobody_roasts_to_is_refused(double celsius) =>
        Assert.IsType<CoreRefusal.TargetOutOfRange>(Assert.IsType<CoreForecast.Refused>(Thermometer.Forecast(At(165), [], celsius)).Why);

    [Fact]
    public void Whatever_the_numbers_are_nothing_is_thrown_and_no_order_of_times_is_broken()
    {
        var any = Gen.Select(
            Gen.Double[-50, 550],
            Gen.Double[0, 30],
            Gen.Double[-20, 320],
            Gen.Select(Gen.Int[-10, 300], Gen.Double[-60, 520]).Array[0, 8],
            Gen.Enum<Cut>());
        any.Sample(one =>
        {
            var (celsius, kilograms, oven, readings, cut) = one;
            var answer = Thermometer.Forecast(At(oven, new Joint(cut, kilograms)), [.. readings.Select(reading => new ProbeReading(In.AddMinutes(reading.Item1), reading.Item2))], celsius);
            return answer is not CoreForecast.Expected expected || (In <= expected.Earliest && expected.Earliest <= expected.Likely && expected.Likely <= expected.Latest);
        }, iter: 150, threads: 1);
    }

    static ProbeDoubt Doubt(ProbeReading[] readings) => Assert.IsType<CoreForecast.ProbeDoubted>(Thermometer.Forecast(At(165), readings, 63)).Last;

    static CoreRefusal Refusal(Roasting roasting) => Assert.IsType<CoreForecast.Refused>(Thermometer.Forecast(roasting, [], 63)).Why;
}
