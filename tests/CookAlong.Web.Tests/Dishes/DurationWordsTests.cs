using CookAlong.Domain.Meals;
using CookAlong.Web.Features.Dishes;
using CsCheck;

namespace CookAlong.Web.Tests.Dishes;

/// <summary>How cooks write times; common practice, no source.</summary>
public sealed class DurationWordsTests
{
    [Theory]
    [InlineData("20", 20, 20, 20)]
    [InlineData("20 min", 20, 20, 20)]
    [InlineData("25-30 min", 25, 28, 30)]
    [InlineData("25 to 30 minutes", 25, 28, 30)]
    [InlineData("25–30", 25, 28, 30)]
    [InlineData("1 h 10", 70, 70, 70)]
    [InlineData("1h10", 70, 70, 70)]
    [InlineData("1-2 h", 60, 90, 120)]
    [InlineData("1 h - 1 h 20", 60, 70, 80)]
    [InlineData("1.5 h", 90, 90, 90)]
    [InlineData("1½ h", 90, 90, 90)]
    [InlineData("½ h", 30, 30, 30)]
    [InlineData("20-25-40", 20, 25, 40)]
    [InlineData("2 days", 2880, 2880, 2880)]
    [InlineData("1-2 days", 1440, 2160, 2880)]
    [InlineData("Overnight", 480, 600, 720)]
    public void A_time_is_read_as_a_cook_means_it(string words, int least, int likely, int most) =>
        Assert.Equal(new Durations(least, likely, most), DurationWords.Read(words));

    [Theory]
    [InlineData("")]
    [InlineData("soon")]
    [InlineData("0")]
    [InlineData("-5")]
    [InlineData("30-20")]
    [InlineData("1-2-3-4")]
    [InlineData("8 days")]
    [InlineData("99999999999")]
    [InlineData("20 min or so")]
    public void What_is_no_time_is_none(string words) => Assert.Null(DurationWords.Read(words));

    [Fact]
    public void What_is_written_is_read_back_the_same() =>
        Gen.Select(Gen.Int[1, 10_080], Gen.Int[0, 600], Gen.Int[0, 600], (least, more, most) => new Durations(least, least + more, least + more + most))
            .Where(minutes => minutes.Most <= 10_080)
            .Sample(minutes => DurationWords.Read(DurationWords.Write(minutes)) == minutes);

    [Theory]
    [InlineData("180", 170, 180, 190)]
    [InlineData("170-190 °C", 170, 180, 190)]
    [InlineData("200 C", 190, 200, 210)]
    public void An_oven_s_temperature_is_read(string words, int min, int ideal, int max) =>
        Assert.Equal(new Domain.CelsiusRange(min, ideal, max), CelsiusWords.Read(words));

    [Theory]
    [InlineData("hot")]
    [InlineData("190-170")]
    [InlineData("900")]
    public void What_is_no_temperature_is_none(string words) => Assert.Null(CelsiusWords.Read(words));
}
