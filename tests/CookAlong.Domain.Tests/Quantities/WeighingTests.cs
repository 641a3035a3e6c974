using CookAlong.Domain.Quantities;

namespace CookAlong.Domain.Tests.Quantities;

public sealed class WeighingTests
{
    // USDA National Nutrient Database SR28, WEIGHT and FOOD_DES, by food number; half a gram for the table's three decimals.
    [Theory]
    [InlineData("plain flour", 1, "cup", 125)]
    [InlineData("granulated sugar", 1, "cup", 200)]
    [InlineData("brown sugar", 1, "cup", 220)]
    [InlineData("butter", 1, "cup", 227)]
    [InlineData("milk", 1, "cup", 244)]
    [InlineData("cream", 1, "cup", 238)]
    [InlineData("olive oil", 1, "cup", 216)]
    [InlineData("salt", 1, "cup", 292)]
    [InlineData("cocoa", 1, "cup", 86)]
    [InlineData("rice", 1, "cup", 185)]
    [InlineData("lentils", 1, "cup", 192)]
    [InlineData("molasses", 1, "cup", 337)]
    [InlineData("soured cream", 1, "cup", 230)]
    [InlineData("cider vinegar", 1, "cup", 239)]
    [InlineData("worcestershire sauce", 1, "cup", 275)]
    [InlineData("breadcrumbs", 1, "cup", 108)]
    [InlineData("baking powder", 1, "tsp", 4.6)]
    [InlineData("eggs", 1, "", 50)]
    [InlineData("onions", 2, "", 220)]
    [InlineData("carrot", 1, "", 61)]
    [InlineData("garlic", 2, "cloves", 6)]
    public void A_measure_weighs_what_was_weighed(string food, double value, string unit, double grams) =>
        Assert.Equal(grams, (double)Weighing.Grams(new Amount((decimal)value, Units.Of(unit, SpoonSizes.UnitedStates)), food)!, 0.2);

    [Fact]
    public void A_name_may_say_which_kind_it_is()
    {
        Assert.Equal("potato", HouseholdMeasures.Find("floury potatoes")!.Food);
        Assert.Equal("salt", HouseholdMeasures.Find("coarse salt")!.Food);
        Assert.Equal("butter", HouseholdMeasures.Find("butter, soft")!.Food);
    }

    [Theory]
    [InlineData("oat milk")]
    [InlineData("cocoa butter")]
    [InlineData("goose")]
    [InlineData("")]
    public void What_was_not_weighed_is_not_guessed(string food) => Assert.Null(HouseholdMeasures.Find(food));

    [Fact]
    public void Grams_in_a_measure_weigh_the_same_again()
    {
        Assert.True(HouseholdMeasures.All.Count > 200);
        Assert.All(HouseholdMeasures.All.Where(food => food.GramsPerMillilitre is not null), food =>
            Assert.Equal(100, (double)Weighing.Grams(Weighing.Of(100, food.Food, Units.Of("cup"))!.Value, food.Food)!, 1e-9));
    }

    // Nothing a kitchen measures is lighter than dill or heavier than syrup; a slip of the table would be.
    [Fact]
    public void Every_food_has_a_source_and_a_density_that_can_be() =>
        Assert.All(HouseholdMeasures.All, food =>
        {
            Assert.Matches("^[0-9]{5}$", food.Source);
            Assert.True((food.GramsPerMillilitre ?? 1) is > 0.03m and < 1.6m, food.Food);
        });

    // Armed Forces Recipe Service (2003), edible portions.
    [Theory]
    [InlineData("potatoes", 814, 1000)]
    [InlineData("floury potatoes", 814, 1000)]
    [InlineData("carrots", 816, 1000)]
    [InlineData("red cabbage", 800, 1000)]
    [InlineData("celery", 731, 1000)]
    public void Peel_and_trimmings_are_bought_too(string food, int trimmed, int bought) => Assert.Equal(bought, Yields.ToBuy(food, new Amount(trimmed, Units.Gram))!.Value.Value, 0);
}
