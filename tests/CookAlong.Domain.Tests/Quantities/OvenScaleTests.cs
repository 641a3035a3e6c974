using CookAlong.Domain.Quantities;

namespace CookAlong.Domain.Tests.Quantities;

public sealed class OvenScaleTests
{
    // GNU units 2.22, gasmark table; the °C beside them are NIST SP 811's conversion.
    [Theory]
    [InlineData(0.25, 225, 107.22)]
    [InlineData(0.5, 250, 121.11)]
    [InlineData(1, 275, 135.0)]
    [InlineData(2, 300, 148.89)]
    [InlineData(3, 325, 162.78)]
    [InlineData(4, 350, 176.67)]
    [InlineData(5, 375, 190.56)]
    [InlineData(6, 400, 204.44)]
    [InlineData(8, 450, 232.22)]
    [InlineData(9, 475, 246.11)]
    public void A_gas_mark_has_its_temperature(double mark, double fahrenheit, double celsius)
    {
        Assert.Equal(celsius, OvenScale.CelsiusOfGas(mark)!.Value, 0.01);
        Assert.Equal(celsius, OvenScale.Celsius(fahrenheit), 0.01);
        Assert.Equal(fahrenheit, OvenScale.Fahrenheit(OvenScale.Celsius(fahrenheit)), 1e-9);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(4.5)]
    [InlineData(11)]
    public void A_mark_that_no_dial_has_is_none(double mark) => Assert.Null(OvenScale.CelsiusOfGas(mark));

    // Minus 20 °C: printed on British packs and in butchers' guides. Minus 25 °C: makers' books. Never both, never their mean.
    [Theory]
    [InlineData(FanRule.Minus20, 180, 160)]
    [InlineData(FanRule.Minus25, 180, 155)]
    public void A_fan_oven_is_set_lower_by_one_rule(FanRule rule, int recipe, int dial)
    {
        Assert.Equal(dial, new OvenScale(rule).Dial(recipe, fan: true));
        Assert.Equal(recipe, new OvenScale(rule).Dial(recipe, fan: false));
    }

    [Fact]
    public void An_oven_whose_dial_reads_too_high_is_set_higher_and_back_again()
    {
        var measured = new OvenScale(FanRule.Minus20, ReadsHighBy: 15);
        Assert.Equal(175, measured.Dial(180, fan: true));
        Assert.Equal(180, measured.Conventional(175, fan: true));
    }
}
