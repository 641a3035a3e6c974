using CookAlong.Domain.FoodSafety;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Tests.FoodSafety;

public sealed class LeftoverKindsTests
{
    static readonly DateTimeOffset Noon = new(2026, 2, 7, 12, 0, 0, TimeSpan.Zero);

    static Dish Of(string name, params string[] ingredients) =>
        new(new("dish"), name, new("main"), 4, [.. ingredients.Select(one => new Ingredient(one, null, null, null, []))], [Hold.OnTheTable], []);

    [Theory]
    [InlineData("Layered chicken biryani", "basmati rice,chicken thighs", "MeatPoultryOrFish,Rice")]
    [InlineData("Roast goose", "goose,salt", "MeatPoultryOrFish")]
    [InlineData("Braised red cabbage", "red cabbage,apples,rice vinegar", "Vegetables")]
    [InlineData("Pea soup with gammon", "split peas,gammon", "MeatPoultryOrFish,SoupOrStew,Ham")]
    [InlineData("Sweet pudding", "rice cooked in milk", "Rice")]
    [InlineData("Bowls", "rice (cooked);rice vinegar", "Rice")]
    [InlineData("Baked ham", "ham in milk,rice wine", "MeatPoultryOrFish,Ham")]
    [InlineData("Onion gravy", "onions,butter", "Gravy")]
    public void A_dish_is_of_every_kind_that_its_words_name(string name, string ingredients, string kinds) =>
        Assert.Equal(kinds, string.Join(',', LeftoverKinds.In(Of(name, ingredients.Split(',')))));

    [Fact]
    public void A_dish_left_the_heat_when_its_last_hot_step_was_done()
    {
        var dish = Of("Roast goose") with { Steps = [Step("roast", new OvenUse(null, 1, new(170, 180, 190))), Step("carve", null)] };
        var hot = HotTimes.Of(dish, step => step.Value == "roast" ? Noon : Noon.AddHours(1));
        Assert.Equal(new HotTimes(Noon, Noon), hot);
        Assert.False(hot!.WasReheated);
    }

    [Fact]
    public void A_dish_made_the_day_before_was_cooked_then()
    {
        var oven = new OvenUse(null, 1, new(170, 180, 190));
        var dish = Of("Braised red cabbage") with { Steps = [Step("brown", oven), Step("braise", oven), Step("heat", oven)] };
        var hot = HotTimes.Of(dish, step => step.Value switch { "brown" => Noon.AddHours(-22), "braise" => Noon.AddHours(-20), _ => Noon });
        Assert.Equal(new HotTimes(Noon.AddHours(-20), Noon), hot);
    }

    [Fact]
    public void Of_what_nobody_ticked_off_nothing_is_known() =>
        Assert.Null(HotTimes.Of(Of("Roast goose") with { Steps = [Step("roast", null)] }, _ => null));

    static Step Step(string id, OvenUse? oven) => new(
        new(id), id, null, null, new(Durations.Exactly(30), Attention.Unattended, 1, Uses.Nothing with { Oven = oven }),
        [], [], false, [], [], null, null, [], null, false);
}
