using CookAlong.Web.Features.Dishes.Roasts;

namespace CookAlong.Web.Tests.Dishes;

public sealed class WeightWordsTests
{
    [Theory]
    [InlineData("5.2", 5.2)]
    [InlineData("5,2 kg", 5.2)]
    [InlineData("800 g", .8)]
    [InlineData("4800", 4.8)]
    // One pound is 0.45359237 kg (NIST SP 811).
    [InlineData("11 lb", 4.98951607)]
    [InlineData("11 lb 8 oz", 5.216312255)]
    public void A_weight_is_read_as_cooks_write_it(string words, double kilograms) => Assert.Equal(kilograms, WeightWords.Read(words)!.Value, 1e-9);

    [Theory]
    [InlineData("")]
    [InlineData("heavy")]
    [InlineData("0")]
    [InlineData("-3 kg")]
    [InlineData("5 stone")]
    [InlineData("1e400")]
    public void What_is_no_weight_is_none(string words) => Assert.Null(WeightWords.Read(words));
}
