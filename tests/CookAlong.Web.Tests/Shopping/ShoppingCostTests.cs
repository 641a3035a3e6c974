using CookAlong.Domain.Shopping;
using CookAlong.Web.Features.Live.Line;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Features.Shopping;
using CookAlong.Web.Tests.Live;
using static CookAlong.Web.Tests.Shopping.ShoppingTests;

namespace CookAlong.Web.Tests.Shopping;

/// <summary>What the list cost, where somebody writes it down.</summary>
public sealed class ShoppingCostTests
{
    static object Price(string line, object? price) => new { kind = "price", line, price };

    static async Task<ShoppingView> ViewAsync(LiveKitchen kitchen) => new(await ListAsync(kitchen), IsHost: true, default);

    [Fact]
    public async Task Nothing_is_said_of_money_until_a_price_is_written_down()
    {
        await using var kitchen = await KitchenAsync();
        await TapAsync(kitchen.Host, Mark("onion", "bought"));
        Assert.Null((await ViewAsync(kitchen)).Cost);
        Assert.Contains("<p class=\"spent\" hidden>", await kitchen.Host.ReadAsync($"{ShoppingTests.Path}/part"), StringComparison.Ordinal);

        await TapAsync(kitchen.Host, Price("onion", 4.2m));
        var page = await kitchen.Host.ReadAsync($"{ShoppingTests.Path}/part");
        Assert.Contains("<p class=\"spent\">Spent <b>4.20</b>", page, StringComparison.Ordinal);
        Assert.Contains("data-price=\"4.20\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_bought_without_a_price_is_counted_and_what_was_at_home_is_not()
    {
        await using var kitchen = await KitchenAsync();
        await TapAsync(kitchen.Host, new { kind = "add", line = "a", text = "candles" });
        await TapAsync(kitchen.Host, new { kind = "add", line = "b", text = "matches" });
        await TapAsync(kitchen.Host, Mark("onion", "bought"));
        await TapAsync(kitchen.Host, Mark("flour", "cupboard", "500 g"));
        await TapAsync(kitchen.Host, Mark("a", "bought", ""));
        await TapAsync(kitchen.Host, Price("onion", 0.1m));
        await TapAsync(kitchen.Host, Price("b", 0.2m));
        Assert.Equal(new Cost(0.3m, 1, ""), (await ViewAsync(kitchen)).Cost);

        await TapAsync(kitchen.Host, new { kind = "remove", line = "b" });
        Assert.Equal(0.1m, (await ViewAsync(kitchen)).Cost!.Spent);
    }

    [Fact]
    public async Task Of_two_phones_the_last_word_counts_and_a_price_sent_twice_counts_once()
    {
        await using var kitchen = await KitchenAsync();
        var ivo = await kitchen.JoinAsync("Ivo");
        var command = LiveKitchen.NewCommand();
        var first = await TapAsync(ivo, Price("onion", 4.2m), command);
        await TapAsync(kitchen.Host, Price("onion", 3.95m));
        Assert.Equal(first, await TapAsync(ivo, Price("onion", 4.2m), command));
        Assert.Equal(3.95m, (await ViewAsync(kitchen)).Cost!.Spent);

        await TapAsync(ivo, Price("onion", null));
        Assert.Null((await ViewAsync(kitchen)).Cost);
    }

    [Theory]
    [InlineData("-0.01")]
    [InlineData("0.001")]
    [InlineData("10000000")]
    public async Task A_price_that_is_none_is_refused_with_the_reason(string price)
    {
        await using var kitchen = await KitchenAsync();
        var answer = await TapAsync(kitchen.Host, Price("onion", decimal.Parse(price, System.Globalization.CultureInfo.InvariantCulture)));
        Assert.Equal(new TapAnswer(false, 0, "A price is a number from 0 to 9999999.99, with two decimals at most."), answer);
        Assert.Equal(0, (await ListAsync(kitchen)).Sequence);
    }

    [Theory]
    [InlineData("eur")]
    [InlineData("EURO")]
    [InlineData("€")]
    public async Task A_currency_that_is_no_code_is_refused_with_the_reason(string code)
    {
        await using var kitchen = await KitchenAsync();
        Assert.Equal(new TapAnswer(false, 0, ShoppingWords.CurrencyForm), await TapAsync(kitchen.Host, new { kind = "currency", code }));
    }

    [Fact]
    public async Task The_currency_is_the_household_s_and_a_host_sets_it()
    {
        await using var kitchen = await KitchenAsync();
        var ivo = await kitchen.JoinAsync("Ivo");
        Assert.Equal(new TapAnswer(false, 0, ShoppingWords.HostSets), await TapAsync(ivo, new { kind = "currency", code = "NOK" }));
        await TapAsync(kitchen.Host, new { kind = "currency", code = "CHF" });
        await TapAsync(kitchen.Host, new { kind = "aisles", order = new[] { "bread" } });
        await TapAsync(kitchen.Host, Price("onion", 12));
        Assert.Equal(new Cost(12, 0, "CHF"), (await ViewAsync(kitchen)).Cost);

        var copy = Assert.IsType<MealEdit.Kept>(await kitchen.House.Get<MealBook>().CopyAsync((await ListAsync(kitchen)).Meal, TestContext.Current.CancellationToken));
        var other = (await kitchen.House.Get<ShoppingBook>().OfAsync(copy.Meal.Row.Id, TestContext.Current.CancellationToken))!;
        Assert.Equal(("CHF", 0), (other.State.Currency, other.State.Prices.Count));

        await TapAsync(kitchen.Host, new { kind = "currency", code = "" });
        Assert.Equal("", (await ListAsync(kitchen)).State.Currency);
    }
}
