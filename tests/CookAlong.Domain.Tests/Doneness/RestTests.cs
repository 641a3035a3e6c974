using CookAlong.Domain.Doneness;
using static CookAlong.Domain.Tests.Doneness.Roasts;

namespace CookAlong.Domain.Tests.Doneness;

public sealed class RestTests
{
    static readonly ProbeReading[] Before = [.. Readings(200).TakeWhile(reading => reading.Celsius < 58)];

    static readonly DateTimeOffset Out = Before[^1].At;

    [Fact]
    public void The_middle_rises_as_much_as_the_trade_has_seen()
    {
        // Carry-over within 15 to 30 minutes: 3 °C for small cuts, 6 to 8 as a rule, 14 for very large roasts (a professional cooking
        // textbook).
        var rest = Expected(RestUnder.Foil);
        Assert.InRange(rest.Rise.Likely, 3, 14);
        Assert.InRange(rest.PeakAfter.Likely, TimeSpan.FromMinutes(10), TimeSpan.FromMinutes(45));
        Assert.True(rest.Rise.Low < rest.Rise.Likely && rest.Rise.Likely < rest.Rise.High);
    }

    [Fact]
    public void A_hotter_oven_leaves_more_to_rise()
    {
        var hot = Readings(200, oven: 210);
        ProbeReading[] before = [.. hot.TakeWhile(reading => reading.Celsius < 58)];
        var rest = Assert.IsType<RestForecast.Expected>(Rest.Forecast(At(210), before, before[^1].At, [new(Out, RestUnder.Foil)], 63));
        Assert.True(rest.Rise.Likely > Expected(RestUnder.Foil).Rise.Likely + 1);
    }

    [Fact]
    public void Foil_and_cloths_keep_it_hot_for_longer_and_a_cold_room_for_shorter()
    {
        Assert.True(Expected(RestUnder.Nothing).MiddleHot.Likely < Expected(RestUnder.Foil).MiddleHot.Likely);
        Assert.True(Expected(RestUnder.Foil).MiddleHot.Likely < Expected(RestUnder.FoilAndCloths).MiddleHot.Likely);
        Assert.True(Expected(RestUnder.Foil, room: 5).MiddleHot.Likely < Expected(RestUnder.Foil).MiddleHot.Likely);
    }

    [Fact]
    public void The_outside_is_too_cold_first()
    {
        var rest = Expected(RestUnder.Foil);
        Assert.True(rest.OutsideHot.Likely < rest.MiddleHot.Likely);
    }

    [Fact]
    public void It_is_never_hot_above_what_it_comes_to()
    {
        var rest = Assert.IsType<RestForecast.Expected>(Rest.Forecast(At(165), Before, Out, [new(Out, RestUnder.Foil)], 90));
        Assert.Equal(TimeSpan.Zero, rest.MiddleHot.High);
        Assert.True(rest.Peak.High < 90);
    }

    [Fact]
    public void The_coolest_middle_lies_below_the_likely_one()
    {
        var rest = Expected(RestUnder.Foil);
        Assert.Equal(Out, rest.CoolestMiddle[0].At);
        Assert.True(rest.CoolestMiddle.Max(one => one.Celsius) < rest.Peak.Likely);
        Assert.InRange(rest.CoolestMiddle[0].Celsius, 53, 58.5);
    }

    [Fact]
    public void What_is_still_to_be_cooked_counts_minute_by_minute()
    {
        var rest = Assert.IsType<RestForecast.Expected>(Rest.Forecast(At(165), Before, Out.AddMinutes(12), [new(Out, RestUnder.Foil)], 60));
        Assert.Equal(Out, rest.CoolestMiddle[0].At);
        Assert.All(rest.CoolestMiddle.Zip(rest.CoolestMiddle.Skip(1)), pair => Assert.Equal(TimeSpan.FromMinutes(1), pair.Second.At - pair.First.At));
        Assert.True(rest.Peak.Likely > Expected(RestUnder.Foil).Peak.Likely + 3);
        var done = Domain.FoodSafety.Lethality.Of([.. rest.CoolestMiddle], Domain.FoodSafety.KillTables.WholeMeat);
        Assert.NotNull(done.DoneAt);
        Assert.True(done.DoneAt > Out);
    }

    [Fact]
    public void It_cannot_come_out_before_its_last_reading_or_into_no_room()
    {
        Assert.IsType<RestForecast.Refused>(Rest.Forecast(At(165), Before, Out.AddMinutes(-10), [new(Out, RestUnder.Foil)], 63));
        Assert.IsType<RestForecast.Refused>(Rest.Forecast(At(165) with { RoomCelsius = 80 }, Before, Out, [new(Out, RestUnder.Foil)], 63));
    }

    [Fact]
    public void A_doubted_probe_says_nothing_of_the_rest() =>
        Assert.IsType<CoreForecast.ProbeDoubted>(Assert.IsType<RestForecast.NotKnown>(Rest.Forecast(At(165), [.. Before, new(Out.AddMinutes(1), 150)], Out.AddMinutes(1), [new(Out, RestUnder.Foil)], 63)).Why);

    [Fact]
    public void What_is_covered_late_stays_hot_for_less_than_what_was_covered_from_the_first()
    {
        var late = Assert.IsType<RestForecast.Expected>(Rest.Forecast(At(165), Before, Out, [new(Out, RestUnder.Nothing), new(Out.AddMinutes(30), RestUnder.FoilAndCloths)], 60));
        Assert.True(Expected(RestUnder.Nothing).MiddleHot.Likely < late.MiddleHot.Likely);
        Assert.True(late.MiddleHot.Likely < Expected(RestUnder.FoilAndCloths).MiddleHot.Likely);
    }

    static RestForecast.Expected Expected(RestUnder under, double room = 22) =>
        Assert.IsType<RestForecast.Expected>(Rest.Forecast(At(165) with { RoomCelsius = room }, Before, Out, [new(Out, under)], 60));
}
