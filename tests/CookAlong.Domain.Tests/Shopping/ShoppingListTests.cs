using System.Collections.Immutable;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Quantities;
using CookAlong.Domain.Shopping;
using CookAlong.Domain.Tests.Runs;
using CsCheck;

namespace CookAlong.Domain.Tests.Shopping;

public sealed class ShoppingListTests
{
    static readonly Dictionary<DishId, decimal> asWanted = [];

    static Dish DishOf(string name, decimal serves, params Ingredient[] ingredients) => new(new(name), name, SmallMeal.Main, serves, [.. ingredients], [Hold.OnTheTable], []);

    static Ingredient Of(string name, decimal? quantity = null, string? unit = null) => new(name, quantity, unit, null, []);

    static Meal MealOf(params Dish[] dishes) => SmallMeal.Meal with { Dishes = [.. dishes] };

    static ShoppingLine LineOf(Meal meal, string key) => ShoppingList.Of(meal, asWanted, SpoonSizes.Metric).Lines.Single(line => line.Key == key);

    [Fact]
    public void The_same_thing_of_two_dishes_is_bought_once()
    {
        var meal = MealOf(DishOf("soup", 4, Of("onions", 2), Of("salt")), DishOf("tart", 4, Of("Onion", 1), Of("large onions", 3), Of("salt", 1, "tsp")));
        var onions = LineOf(meal, "onion");
        Assert.Equal((new Amount(6, Units.Piece), 3), (onions.Amounts.Single(), onions.Uses.Length));
        var salt = LineOf(meal, "salt");
        Assert.True(salt.HasSome);
        Assert.Equal("tsp", salt.Amounts.Single().Unit.Name);
    }

    // Butter: 227 g a US cup, flour 125 g, an onion 110 g (USDA SR28).
    [Fact]
    public void What_is_measured_in_two_ways_is_weighed_together()
    {
        var list = ShoppingList.Of(
            MealOf(DishOf("cake", 4, Of("butter", 100, "g"), Of("butter", 1, "cup"), Of("onions", 2), Of("onion", 80, "g"), Of("cream", 2, "dl"), Of("cream", 100, "ml"))), asWanted, SpoonSizes.UnitedStates);
        Assert.Equal(327, (double)list.Lines.Single(line => line.Key == "butter").Amounts.Single().In(Units.Gram).Value, 0.5);
        Assert.Equal(300, (double)list.Lines.Single(line => line.Key == "onion").Amounts.Single().In(Units.Gram).Value, 0.5);
        Assert.Equal(new Amount(300, Units.Millilitre), list.Lines.Single(line => line.Key == "cream").Amounts.Single());
    }

    // Armed Forces Recipe Service (2003): 0.814 of a potato is left when it is peeled.
    [Fact]
    public void What_is_weighed_peeled_is_bought_with_its_peel() =>
        Assert.Equal(1000, (double)LineOf(MealOf(DishOf("mash", 4, Of("potatoes", 814, "g") with { Preparation = "peeled weight" })), "potato").Amounts.Single().Value, 0.5);

    [Fact]
    public void What_differs_for_somebody_s_health_is_not_bought_as_one() =>
        Assert.Equal(2, ShoppingList.Of(MealOf(DishOf("bake", 4, Of("rolled oats", 80, "g"), Of("rolled oats, gluten-free", 80, "g"))), asWanted, SpoonSizes.Metric).Lines.Length);

    [Fact]
    public void Measures_that_cannot_be_compared_stand_side_by_side()
    {
        var amounts = LineOf(MealOf(DishOf("stew", 4, Of("mystery", 2, "tins"), Of("mystery", 300, "g"))), "mystery").Amounts;
        Assert.Equal(["2 tin", "300 g"], amounts.Select(amount => $"{amount.Value:0} {amount.Unit}").Order());
    }

    static readonly Gen<Ingredient> anyIngredient =
        from name in Gen.OneOf("flour", "onion", "large onions", "butter", "mystery", "olive oil")
        from unit in Gen.OneOf("g", "kg", "ml", "cup", "tbsp", "", "tin", "lb")
        from quantity in Gen.Int[1, 2_000]
        select Of(name, quantity / 10m, unit);

    [Fact]
    public void Merging_never_loses_an_amount() => anyIngredient.Array[1, 12].Sample(ingredients =>
    {
        var list = ShoppingList.Of(MealOf(DishOf("all", 4, ingredients)), asWanted, SpoonSizes.Metric);
        foreach (var line in list.Lines)
        {
            Assert.Equal(line.Uses.Sum(use => InGrams(use.Amount!.Value, line.Name)), line.Amounts.Sum(amount => InGrams(amount, line.Name)), 6);
            Assert.Equal(line.Amounts.Length, line.Amounts.DistinctBy(amount => (amount.Unit.Dimension, amount.Unit.Dimension == Dimension.Own ? amount.Unit.Name : "")).Count());
        }

        Assert.Equal(ingredients.Length, list.Lines.Sum(line => line.Uses.Length));

        // What nobody can weigh counts by itself, so that it is missed as well.
        static double InGrams(Amount amount, string food) => (double)(Weighing.Grams(amount, food) ?? amount.Base * 7919);
    });

    [Fact]
    public void For_as_many_as_it_is_written_for_nothing_changes() => anyIngredient.Array[1, 6].Sample(ingredients =>
    {
        var dish = DishOf("all", 4, ingredients);
        var list = ShoppingList.Of(MealOf(dish), new Dictionary<DishId, decimal> { [dish.Id] = 4 }, SpoonSizes.Metric);
        Assert.All(list.Lines.SelectMany(line => line.Uses), use => Assert.Equal(new Amount(use.Ingredient.Quantity!.Value, Units.Of(use.Ingredient.Unit)), use.Amount));
    });

    [Theory]
    [InlineData(1, 1, 2.0)]
    [InlineData(1.2, 0.8, 2.0)]
    [InlineData(2, 2, 4.0)]
    [InlineData(2.2, 2.2, 4.0)]
    public void A_dish_is_bought_for_the_appetites_at_the_table(double one, double other, double portions)
    {
        var meal = MealOf(DishOf("potatoes", 4, Of("potatoes", 1, "kg"))) with { Guests = [new("Maren", (decimal)one, [], []), new("Ivo", (decimal)other, [], [])] };
        Assert.Equal((decimal)portions, ShoppingList.Of(meal, asWanted, SpoonSizes.Metric).Dishes.Single().Portions);
    }

    [Fact]
    public void Of_two_main_dishes_each_guest_takes_the_one_they_can_eat()
    {
        var meal = MealOf(DishOf("goose", 2, Of("goose", 5, "kg")), DishOf("nut roast", 4, Of("walnuts", 300, "g"))) with
        {
            Guests = [new("Maren", 1, [], []), new("Ivo", 2, [], []), new("Noor", 1, ["vegetarian"], [])],
        };
        Assert.Equal([3m, 1m], ShoppingList.Of(meal, asWanted, SpoonSizes.Metric).Dishes.Select(dish => dish.Portions));
        var chosen = ShoppingList.Of(meal, new Dictionary<DishId, decimal> { [new("nut roast")] = 4 }, SpoonSizes.Metric).Dishes[1];
        Assert.Equal((4m, true), (chosen.Portions, chosen.IsChosen));
    }

    [Theory]
    [InlineData("floury potatoes", "kg", Aisle.Produce)]
    [InlineData("lemon", null, Aisle.Produce)]
    [InlineData("lemon juice", "ml", Aisle.Produce)]
    [InlineData("coriander seed, crushed", "tsp", Aisle.SpicesAndBaking)]
    [InlineData("goose, oven-ready, with its giblets", "kg", Aisle.MeatAndFish)]
    [InlineData("venison shoulder", "kg", Aisle.MeatAndFish)]
    [InlineData("hard cheese", "g", Aisle.DairyAndEggs)]
    [InlineData("eggs", null, Aisle.DairyAndEggs)]
    [InlineData("chopped tomatoes", "g", Aisle.TinsAndJars)]
    [InlineData("sweetcorn", "tins", Aisle.TinsAndJars)]
    [InlineData("plain flour", "g", Aisle.DryGoods)]
    [InlineData("kitchen string", "m", Aisle.Household)]
    [InlineData("water", "l", Aisle.AtHome)]
    [InlineData("strong tea", "ml", Aisle.Drinks)]
    [InlineData("mystery", null, Aisle.Other)]
    public void A_thing_stands_in_its_aisle(string name, string? unit, Aisle aisle) => Assert.Equal(aisle, Aisles.Of(name, Units.Of(unit)));
}
