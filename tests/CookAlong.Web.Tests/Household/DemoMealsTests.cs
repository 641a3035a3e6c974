using CookAlong.Domain;
using CookAlong.Intake.MealFiles;

namespace CookAlong.Web.Tests.Household;

public sealed class DemoMealsTests
{
    [Theory]
    [InlineData("2026-12-20T09:00Z")]
    [InlineData("2026-12-20T23:30Z")]
    [InlineData("2028-02-28T17:45Z")] // tomorrow is a leap day
    [InlineData("2027-03-27T12:00Z")] // tomorrow the clocks go forward in much of Europe
    public async Task A_new_household_finds_the_demo_meals_still_to_be_cooked(string now)
    {
        await using var app = new AppFactory();
        var at = DateTimeOffset.Parse(now, System.Globalization.CultureInfo.InvariantCulture);
        app.Clock.AdjustTime(at);

        await app.HostAsync();

        await using var db = app.NewDb();
        Assert.NotEmpty(db.Meals);
        Assert.All(db.Meals, row =>
        {
            var read = MealFile.Read(row.Document, Minute.Of(at));
            Assert.Empty(read.Errors);
            var tomorrow = LocalTime.Show(Minute.Of(at), read.Meal!.TimeZone).Date.AddDays(1);
            Assert.True(LocalTime.Show(read.Meal.FirstTableTime, read.Meal.TimeZone).Date >= tomorrow);
            Assert.True((read.Meal.NotBefore ?? read.Meal.FirstTableTime).Utc >= at);
        });
    }
}
