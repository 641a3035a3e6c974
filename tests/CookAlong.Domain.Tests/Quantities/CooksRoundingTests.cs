using CookAlong.Domain.Quantities;
using CsCheck;

namespace CookAlong.Domain.Tests.Quantities;

public sealed class CooksRoundingTests
{
    // Common practice, no source.
    [Theory]
    [InlineData(1.5, "tsp", "1 1/2 tsp")]
    [InlineData(1.54, "tsp", "1 1/2 tsp")]
    [InlineData(0.34, "cup", "1/3 cup")]
    [InlineData(2.7, "tbsp", "2 2/3 tbsp")]
    [InlineData(2.6, "", "2 1/2")]
    [InlineData(2.7, "", "about 2 1/2")]
    [InlineData(3.3, "", "about 3")]
    [InlineData(9, "", "9")]
    [InlineData(0.1, "", "about 1/2")]
    [InlineData(0.02, "tsp", "about 1/8 tsp")]
    [InlineData(1234, "g", "1.23 kg")]
    [InlineData(75, "g", "75 g")]
    [InlineData(375, "g", "375 g")]
    [InlineData(225, "ml", "225 ml")]
    [InlineData(351.2, "g", "350 g")]
    [InlineData(0.35, "l", "350 ml")]
    [InlineData(7.35, "g", "7.4 g")]
    [InlineData(2, "tins", "2 tins")]
    [InlineData(2, "leaf", "2 leaves")]
    [InlineData(2, "bunch", "2 bunches")]
    [InlineData(1, "sprigs", "1 sprig")]
    [InlineData(2.5, "cup", "2 1/2 cups")]
    [InlineData(3, "tsp", "1 tbsp")]
    [InlineData(2.95, "tsp", "1 tbsp")]
    [InlineData(7.5, "tsp", "2 1/2 tbsp")]
    [InlineData(4, "tsp", "4 tsp")]
    public void An_amount_is_told_as_it_is_measured(double value, string unit, string words) =>
        Assert.Equal(words, CooksRounding.Round(new Amount((decimal)value, Units.Of(unit))).ToString());

    [Fact]
    public void Nothing_is_rounded_away_and_what_is_not_about_is_near() =>
        (from word in Gen.OneOf("g", "kg", "ml", "tsp", "cup", "", "sprig") from value in Gen.Decimal[0.01m, 20_000] select (word, value)).Sample(one =>
        {
            var amount = new Amount(one.value, Units.Of(one.word));
            var rounded = CooksRounding.Round(amount);
            return rounded.Amount.Base > 0 && (rounded.IsAbout || Math.Abs(rounded.Amount.Base - amount.Base) <= (amount.Base / 20) + 0.0001m);
        });

    [Fact]
    public void Rounding_twice_changes_nothing_more() =>
        (from word in Gen.OneOf("g", "ml", "tsp", "") from value in Gen.Decimal[0.1m, 900] select (word, value)).Sample(one =>
        {
            var once = CooksRounding.Round(new Amount(one.value, Units.Of(one.word))).Amount;
            return CooksRounding.Round(once).Amount == once;
        });
}
