using CookAlong.Domain.Quantities;
using CsCheck;
using UnitsNet;
using Mass = UnitsNet.Mass;

namespace CookAlong.Domain.Tests.Quantities;

public sealed class UnitsTests
{
    // NIST SP 811 (2008), appendix B, and NIST Handbook 44 (2014), appendix C: exact. Spoons and cups outside the USA:
    // GNU units 2.22 (cup 250, Australian tablespoon 20, British tablespoon 15, dessertspoon 10 mL).
    [Theory]
    [InlineData("lb", SpoonSizes.Metric, 453.59237)]
    [InlineData("oz", SpoonSizes.Metric, 28.349523125)]
    [InlineData("cup", SpoonSizes.UnitedStates, 236.5882365)]
    [InlineData("tbsp", SpoonSizes.UnitedStates, 14.78676478125)]
    [InlineData("tsp", SpoonSizes.UnitedStates, 4.92892159375)]
    [InlineData("pint", SpoonSizes.UnitedStates, 473.176473)]
    [InlineData("quart", SpoonSizes.UnitedStates, 946.352946)]
    [InlineData("gallon", SpoonSizes.UnitedStates, 3785.411784)]
    [InlineData("pint", SpoonSizes.UnitedKingdom, 568.26125)]
    [InlineData("gallon", SpoonSizes.UnitedKingdom, 4546.09)]
    [InlineData("fl oz", SpoonSizes.UnitedKingdom, 28.4130625)]
    [InlineData("tbsp", SpoonSizes.UnitedKingdom, 15)]
    [InlineData("dessertspoon", SpoonSizes.UnitedKingdom, 10)]
    [InlineData("tbsp", SpoonSizes.Australia, 20)]
    [InlineData("cup", SpoonSizes.Australia, 250)]
    [InlineData("teaspoons", SpoonSizes.Metric, 5)]
    [InlineData("inch", SpoonSizes.Metric, 25.4)]
    public void A_unit_has_its_published_size(string word, SpoonSizes spoons, double size) =>
        Assert.Equal((decimal)size, Units.Find(word, spoons)!.Size);

    /// <summary>A library that nobody here wrote says the same.</summary>
    [Fact]
    public void Another_library_agrees()
    {
        var one = new[]
        {
            (Units.Pound.Size, (decimal)Mass.FromPounds(1).Grams),
            (Units.Ounce.Size, (decimal)Mass.FromOunces(1).Grams),
            (Units.Find("cup", SpoonSizes.UnitedStates)!.Size, (decimal)Volume.FromUsCustomaryCups(1).Milliliters),
            (Units.Find("tbsp", SpoonSizes.UnitedStates)!.Size, (decimal)Volume.FromUsTablespoons(1).Milliliters),
            (Units.Find("tsp", SpoonSizes.UnitedStates)!.Size, (decimal)Volume.FromUsTeaspoons(1).Milliliters),
            (Units.Find("tbsp", SpoonSizes.UnitedKingdom)!.Size, (decimal)Volume.FromMetricTeaspoons(3).Milliliters),
            (Units.Find("tbsp", SpoonSizes.Australia)!.Size, (decimal)Volume.FromAuTablespoons(1).Milliliters),
            (Units.Find("cup")!.Size, (decimal)Volume.FromMetricCups(1).Milliliters),
            (Units.Find("pint", SpoonSizes.UnitedKingdom)!.Size, (decimal)Volume.FromImperialPints(1).Milliliters),
            (Units.Find("fl oz", SpoonSizes.UnitedStates)!.Size, (decimal)Volume.FromUsOunces(1).Milliliters),
            (Units.Inch.Size, (decimal)Length.FromInches(1).Millimeters),
        };
        Assert.All(one, pair => Assert.Equal((double)pair.Item2, (double)pair.Item1, 1e-6 * (double)pair.Item2));
    }

    static readonly Gen<Unit> anyUnit = Gen.OneOf<Unit>([.. new[] { "g", "kg", "oz", "lb", "ml", "l", "tsp", "tbsp", "cup", "pint", "dozen", "cm", "in" }.Select(word => Units.Find(word)!)]);

    [Fact]
    public void There_and_back_is_the_same() =>
        (from unit in anyUnit from other in anyUnit from value in Gen.Decimal[0, 10_000] where unit.Dimension == other.Dimension select (unit, other, value))
            .Sample(one => Math.Abs(new Amount(one.value, one.unit).In(one.other).In(one.unit).Value - one.value) < 0.000001m);

    [Fact]
    public void What_measures_something_else_is_refused()
    {
        Assert.Throws<ArgumentException>(() => new Amount(1, Units.Gram).In(Units.Litre));
        Assert.Throws<ArgumentException>(() => new Amount(1, Units.Of("tin")).In(Units.Of("sprig")));
    }

    [Fact]
    public void A_capital_T_is_the_larger_spoon() => Assert.Equal((15m, 5m), (Units.Find("T")!.Size, Units.Find("t")!.Size));
}
