using CookAlong.Intake.MealFiles;

namespace CookAlong.Intake.Tests.MealFiles;

public sealed class SeedMealTests
{
    public static TheoryData<string> Names => [.. SeedData.Names];

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_demo_meal_is_read_without_an_error(string name) =>
        Assert.Empty(MealFile.Read(SeedData.Text(name)).Errors);

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
