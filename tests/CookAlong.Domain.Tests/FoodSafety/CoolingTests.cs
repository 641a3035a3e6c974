using CookAlong.Domain.FoodSafety;

namespace CookAlong.Domain.Tests.FoodSafety;

/// <summary>FDA Food Code 3-501.14: from 57 to 21 °C within 2 hours, to 5 °C within 6 hours in all.</summary>
public sealed class CoolingTests
{
    static readonly TwoStageCooling Rule = TwoStageCooling.FoodCode;

    [Fact]
    public void The_rule_is_what_is_printed()
    {
        Assert.Equal((57, 21, 5), (Math.Round(Rule.From), Math.Round(Rule.Middle), Math.Round(Rule.To)));
        Assert.Equal((2, 6), (Rule.FirstWithin.TotalHours, Rule.AllWithin.TotalHours));
    }

    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(5)]
    public void A_whole_wrapped_roast_does_not_pass(double kilograms)
    {
        // Measured from 57 to 21 °C: 6.22 h whole and wrapped, 8.71 h three to a bag (J. Food Prot. 69(1), 2006).
        var cooling = ExpectedCooling.OfPiece(kilograms, Cover.Wrapped, 4, Rule);
        Assert.False(cooling.InTime);
        Assert.True(cooling.First > TimeSpan.FromHours(6), $"{cooling.First}");
    }

    [Fact]
    public void Quarters_cool_sooner_and_still_do_not_pass()
    {
        // Measured quartered: 2.27 h, the fastest of all ways, and over 2 h.
        var whole = ExpectedCooling.OfPiece(3, Cover.Wrapped, 4, Rule);
        var quarter = ExpectedCooling.OfPiece(.75, Cover.Bare, 4, Rule);
        Assert.InRange(quarter.First!.Value, TimeSpan.FromHours(2.27), whole.First!.Value / 2);
        Assert.False(quarter.InTime);
    }

    [Fact]
    public void A_thin_layer_passes() => Assert.True(ExpectedCooling.OfLayer(.02, Cover.Bare, 3, Rule).InTime);

    [Fact]
    public void In_a_warm_place_it_never_gets_cold() => Assert.Null(ExpectedCooling.OfPiece(1, Cover.Bare, 22, Rule).All);
}
