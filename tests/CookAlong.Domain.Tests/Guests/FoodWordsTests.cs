using CookAlong.Domain.Guests;
using CsCheck;

namespace CookAlong.Domain.Tests.Guests;

public sealed class FoodWordsTests
{
    // The leaflet on the fourteen allergens that British councils hand out names where they hide.
    [Theory]
    [InlineData("Worcestershire sauce", Trait.Fish)]
    [InlineData("celery salt", Trait.Celery)]
    [InlineData("celeriac", Trait.Celery)]
    [InlineData("couscous", Trait.Gluten)]
    [InlineData("breadcrumbs", Trait.Gluten)]
    [InlineData("stale white bread", Trait.Gluten)]
    [InlineData("filo pastry", Trait.Gluten)]
    [InlineData("mayonnaise", Trait.Egg)]
    [InlineData("mustard powder", Trait.Mustard)]
    [InlineData("oyster sauce", Trait.Molluscs)]
    [InlineData("squid", Trait.Molluscs)]
    [InlineData("mussels", Trait.Molluscs)]
    [InlineData("shrimp paste", Trait.Crustaceans)]
    [InlineData("butter", Trait.Milk)]
    [InlineData("milk powder", Trait.Milk)]
    [InlineData("tahini", Trait.Sesame)]
    [InlineData("houmous", Trait.Sesame)]
    [InlineData("tofu", Trait.Soya)]
    [InlineData("miso", Trait.Soya)]
    [InlineData("red wine", Trait.Sulphites)]
    // Common practice, no source.
    [InlineData("satay sauce", Trait.Peanut)]
    [InlineData("marzipan", Trait.Nuts)]
    [InlineData("malt vinegar", Trait.Gluten)]
    [InlineData("pesto", Trait.Milk)]
    [InlineData("lupin flour", Trait.Lupin)]
    [InlineData("gravy granules", Trait.Gluten)]
    [InlineData("yorkshire puddings", Trait.Egg)]
    [InlineData("batter", Trait.Egg)]
    [InlineData("sponge fingers", Trait.Egg)]
    [InlineData("lemon curd", Trait.Egg)]
    [InlineData("hollandaise", Trait.Milk)]
    [InlineData("dukkah", Trait.Nuts)]
    [InlineData("vegan butter with walnuts", Trait.Nuts)]
    public void An_allergen_is_found_where_it_hides(string ingredient, Trait trait) => Assert.Contains(trait, FoodWords.Read(ingredient).Certain);

    [Theory]
    [InlineData("stock cube", Trait.Celery)]
    [InlineData("baking powder", Trait.Gluten)]
    [InlineData("dried figs", Trait.Sulphites)]
    [InlineData("rolled oats, gluten-free", Trait.Gluten)]
    [InlineData("gluten-free flour", Trait.Gluten)]
    [InlineData("gluten-free flour", Trait.Wheat)]
    [InlineData("gluten-free flour", Trait.Lupin)]
    [InlineData("vegetarian worcestershire sauce", Trait.Fish)]
    [InlineData("vegetarian bacon", Trait.Pork)]
    [InlineData("flour free from gluten", Trait.Gluten)]
    [InlineData("vegan butter", Trait.Milk)]
    [InlineData("lactose-free milk", Trait.Milk)]
    [InlineData("dark chocolate", Trait.Milk)]
    // Common practice, no source: what takes the place of milk and meat is mostly made of soya, nuts or wheat.
    [InlineData("vegan cheese", Trait.Nuts)]
    [InlineData("vegan cheese", Trait.Soya)]
    [InlineData("vegan cream cheese", Trait.Milk)]
    [InlineData("vegetarian mince", Trait.Soya)]
    [InlineData("veggie mince", Trait.Gluten)]
    [InlineData("vegetarian sausages", Trait.Egg)]
    [InlineData("vegetarian sausages", Trait.Celery)]
    [InlineData("vegan chicken pieces", Trait.Soya)]
    [InlineData("dairy-free yoghurt", Trait.Nuts)]
    // Common practice, no source.
    [InlineData("puff pastry", Trait.Milk)]
    [InlineData("bread rolls", Trait.Egg)]
    [InlineData("breadcrumbs", Trait.Milk)]
    [InlineData("cake", Trait.Nuts)]
    [InlineData("ice cream", Trait.Egg)]
    [InlineData("custard", Trait.Egg)]
    [InlineData("curry paste", Trait.Mustard)]
    [InlineData("white wine", Trait.Fish)]
    [InlineData("mince", Trait.Pork)]
    [InlineData("stock cube", Trait.Pork)]
    [InlineData("stuffing", Trait.Pork)]
    public void What_only_the_label_knows_is_asked(string ingredient, Trait trait)
    {
        Assert.Contains(trait, FoodWords.Read(ingredient).Ask);
        Assert.DoesNotContain(trait, FoodWords.Read(ingredient).Certain);
    }

    [Theory]
    [InlineData("coconut milk", Trait.Milk)]
    [InlineData("oat milk", Trait.Milk)]
    [InlineData("almond milk", Trait.Milk)]
    [InlineData("peanut butter", Trait.Milk)]
    [InlineData("butter beans", Trait.Milk)]
    [InlineData("butternut squash", Trait.Milk)]
    [InlineData("cocoa butter", Trait.Milk)]
    [InlineData("nutmeg", Trait.Nuts)]
    [InlineData("water chestnuts", Trait.Nuts)]
    [InlineData("oyster mushrooms", Trait.Molluscs)]
    [InlineData("buckwheat flour", Trait.Wheat)]
    [InlineData("rice flour", Trait.Gluten)]
    [InlineData("aubergine", Trait.Egg)]
    [InlineData("duck eggs", Trait.Meat)]
    [InlineData("beef tomatoes", Trait.Meat)]
    [InlineData("lamb's lettuce", Trait.Meat)]
    [InlineData("artichoke hearts", Trait.Meat)]
    [InlineData("tuna steaks", Trait.Meat)]
    [InlineData("crab apples", Trait.Crustaceans)]
    [InlineData("chestnut mushrooms", Trait.Nuts)]
    [InlineData("ginger beer", Trait.Gluten)]
    [InlineData("bean curd", Trait.Milk)]
    public void A_name_that_only_sounds_like_it_is_not_it(string ingredient, Trait trait)
    {
        Assert.DoesNotContain(trait, FoodWords.Read(ingredient).Certain);
        Assert.DoesNotContain(trait, FoodWords.Read(ingredient).Ask);
        Assert.True(FoodWords.Read(ingredient).IsKnown);
    }

    [Theory]
    [InlineData("onion bhaji")]
    [InlineData("ribs")]
    [InlineData("2 fillets")]
    [InlineData("grandmother's secret")]
    [InlineData("")]
    [InlineData("§§§")]
    public void What_is_not_in_the_table_is_not_known(string ingredient) => Assert.False(FoodWords.Read(ingredient).IsKnown);

    [Theory]
    [InlineData("celery ribs")]
    [InlineData("leg of lamb")]
    [InlineData("juice of 1 lemon")]
    public void A_part_is_known_by_what_it_is_of(string ingredient) => Assert.True(FoodWords.Read(ingredient).IsKnown);

    // Regulation (EU) 1169/2011, Annex II: fourteen. FALCPA 2004 with FASTER Act 2021: nine.
    [Fact]
    public void Every_allergen_of_the_law_has_words_that_are_certain()
    {
        Assert.Equal((14, 9), (Traits.OfTheUnion.Count, Traits.OfTheUnitedStates.Count));
        string[] foods = ["flour", "prawns", "eggs", "cod", "peanuts", "tofu", "milk", "walnuts", "celery", "mustard", "sesame seeds", "white wine", "lupin", "squid"];
        Assert.All(Traits.OfTheUnion.Union(Traits.OfTheUnitedStates), trait => Assert.Contains(foods, food => FoodWords.Read(food).Certain.Contains(trait)));
        Assert.True(FoodWords.Count > 500);
    }

    [Fact]
    public void Anything_can_be_read() => Gen.String.Sample(text => FoodWords.Read(text) is not null, iter: 2_000);
}
