using CookAlong.Domain.Runs;
using CookAlong.Domain.Shopping;
using CookAlong.Web.Features.Live.Line;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Features.Shopping;
using CookAlong.Web.Tests.Live;
using static CookAlong.Web.Tests.Shopping.ShoppingTests;

namespace CookAlong.Web.Tests.Shopping;

/// <summary>The order of the aisles, which is the household's.</summary>
public sealed class ShoppingAislesTests
{
    static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_aisles_are_the_household_s_and_the_ticks_the_meal_s()
    {
        await using var kitchen = await KitchenAsync();
        await TapAsync(kitchen.Host, Order("frozen"));
        await TapAsync(kitchen.Host, Order("drinks", "produce"));
        await TapAsync(kitchen.Host, Mark("onion", "bought"));
        var copy = Assert.IsType<MealEdit.Kept>(await kitchen.House.Get<MealBook>().CopyAsync((await ListAsync(kitchen)).Meal, Stop));
        var other = (await kitchen.House.Get<ShoppingBook>().OfAsync(copy.Meal.Row.Id, Stop))!;
        Assert.Equal([Aisle.Drinks, Aisle.Produce, Aisle.Bread], other.State.Aisles.Take(3));
        Assert.Equal((await ListAsync(kitchen)).State.Aisles, other.State.Aisles);
        Assert.Empty(other.State.Marks);
    }

    [Fact]
    public async Task The_later_order_counts_though_the_server_s_clock_was_put_back()
    {
        await using var kitchen = await KitchenAsync();
        await TapAsync(kitchen.Host, Order("frozen"));
        var copy = Assert.IsType<MealEdit.Kept>(await kitchen.House.Get<MealBook>().CopyAsync((await ListAsync(kitchen)).Meal, Stop));
        kitchen.House.Clock.AdjustTime(kitchen.House.Clock.GetUtcNow().AddMinutes(-1));
        await kitchen.House.Get<ShoppingBook>().KeepAsync(copy.Meal.Row.Id, LiveKitchen.NewCommand(), new PersonId(Guid.Empty), new ShoppingTap.ArrangeAisles([Aisle.Drinks]), Stop);
        Assert.Equal(Aisle.Drinks, (await ListAsync(kitchen)).State.Aisles[0]);
    }

    [Fact]
    public async Task Only_a_host_arranges_the_household_s_aisles()
    {
        await using var kitchen = await KitchenAsync();
        var ivo = await kitchen.JoinAsync("Ivo");
        Assert.Equal(new TapAnswer(false, 0, ShoppingWords.HostSets), await TapAsync(ivo, Order("drinks")));
        Assert.DoesNotContain("id=\"aisles\"", await ivo.ReadAsync(ShoppingTests.Path), StringComparison.Ordinal);
        Assert.Contains("id=\"aisles\"", await kitchen.Host.ReadAsync(ShoppingTests.Path), StringComparison.Ordinal);
        Assert.Equal(Aisle.Produce, (await ListAsync(kitchen)).State.Aisles[0]);
    }
}
