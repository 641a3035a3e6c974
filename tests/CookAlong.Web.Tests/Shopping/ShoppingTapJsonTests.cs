using System.Text.Json;
using CookAlong.Domain.Shopping;
using CookAlong.Web.Features.Shopping;

namespace CookAlong.Web.Tests.Shopping;

/// <summary>Taps stand in households' files and in phones' outboxes and must be read for ever: these lists only ever grow.</summary>
public sealed class ShoppingTapJsonTests
{
    [Fact]
    public void Aisles_are_stored_as_they_always_were() => Assert.Equal(
        ["atHome", "bread", "dairyAndEggs", "drinks", "dryGoods", "frozen", "household", "meatAndFish", "other", "produce", "spicesAndBaking", "tinsAndJars"],
        Enum.GetValues<Aisle>().Select(ShoppingTapJson.Name).Order(StringComparer.Ordinal));

    [Fact]
    public void Marks_are_stored_as_they_always_were() => Assert.Equal(["bought", "cupboard", "open"], Enum.GetValues<Mark>().Select(ShoppingTapJson.Name).Order(StringComparer.Ordinal));

    [Fact]
    public void Settings_of_the_household_are_stored_as_they_always_were() => Assert.Equal(["aisles", "currency"], ShoppingTapJson.Settings);

    public static TheoryData<string> Frozen =>
    [
        """{"kind":"mark","line":"onion","as":"bought","amount":"3"}""",
        """{"kind":"add","line":"a","text":"candles"}""",
        """{"kind":"remove","line":"a"}""",
        """{"kind":"portions","dish":"soup","portions":4.5}""",
        """{"kind":"aisles","order":["drinks","bread"]}""",
        """{"kind":"price","line":"onion","price":4.20}""",
        """{"kind":"price","line":"onion","price":null}""",
        """{"kind":"currency","code":"CHF"}""",
    ];

    [Theory]
    [MemberData(nameof(Frozen))]
    public void A_frozen_tap_still_loads_and_says_the_same(string tap)
    {
        using var json = JsonDocument.Parse(tap);
        Assert.Equal(tap, ShoppingTapJson.Write(ShoppingTapJson.Read(json.RootElement)!));
    }

    [Fact]
    public void There_is_a_frozen_sample_of_every_tap()
    {
        var all = typeof(ShoppingTap).GetNestedTypes().Where(type => type.IsSubclassOf(typeof(ShoppingTap))).Select(type => type.Name);
        Assert.Equal(all.Order(), Frozen.Select(row => ShoppingTapJson.Read(JsonDocument.Parse(row.Data).RootElement)!.GetType().Name).Distinct().Order());
    }
}
