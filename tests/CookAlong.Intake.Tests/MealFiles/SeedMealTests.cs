using CookAlong.Intake.MealFiles;

namespace CookAlong.Intake.Tests.MealFiles;

public sealed class SeedMealTests
{
    public static TheoryData<string> Names => [.. SeedData.Names];

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_demo_meal_is_read_without_an_error(string name) =>
        Assert.Empty(MealFile.Read(SeedData.Text(name)).Errors);

    [Fact]
    public void The_midwinter_lunch_is_a_big_meal_for_nine_out_of_one_ordinary_kitchen()
    {
        var meal = SeedData.Meal("midwinter-lunch.json");
        Assert.InRange(meal.Dishes.Length, 11, 12);
        Assert.True(meal.Steps.Count() >= 80);
        Assert.Equal(2, meal.Courses.Length);
        Assert.Equal(9, meal.Guests.Length);
        Assert.Equal(3, Assert.Single(meal.Kitchen.Ovens).Shelves);
        Assert.Equal(4, meal.Kitchen.Rings);
        Assert.Null(Assert.Single(meal.Kitchen.Grills).InsideOven);
        Assert.Single(meal.Helpers, helper => helper.IsChild);
        Assert.All(meal.Dishes, dish => Assert.NotEmpty(dish.Ingredients));
    }

    /// <summary>Common practice, no source: who handles raw poultry, hot fat or a knife is told so at the step.</summary>
    [Fact]
    public void In_the_midwinter_lunch_every_knife_and_every_hot_tray_carries_a_caution()
    {
        var steps = SeedData.Meal("midwinter-lunch.json").Steps.Where(step => step.Needs.Contains("knife") || (step.Needs.Contains("hot") && step.Way.Uses.Oven is not null));
        Assert.All(steps, step => Assert.False(string.IsNullOrEmpty(step.Caution), step.Id.Value));
    }

    [Fact]
    public void Every_allergen_a_guest_avoids_is_named_by_some_ingredient()
    {
        var meal = SeedData.Meal("midwinter-lunch.json");
        var contained = meal.Dishes.SelectMany(dish => dish.Ingredients).SelectMany(ingredient => ingredient.Contains).ToHashSet();
        Assert.All(meal.Guests.SelectMany(guest => guest.Avoids), avoided => Assert.Contains(avoided, contained));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_demo_meal_written_and_read_again_is_the_same(string name)
    {
        var written = MealFile.Write(SeedData.Meal(name));
        var again = MealFile.Read(written);
        Assert.Empty(again.Errors);
        Assert.Equal(written, MealFile.Write(again.Meal!));
        Same.As(SeedData.Meal(name), again.Meal);
    }
}
