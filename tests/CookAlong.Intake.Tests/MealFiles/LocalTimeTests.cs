using CookAlong.Domain;
using CookAlong.Intake.MealFiles;

namespace CookAlong.Intake.Tests.MealFiles;

/// <summary>
/// The clocks of Central Europe change at 01:00 UTC on the last Sundays of March and October (EU directive 2000/84/EC):
/// 28 March and 31 October in 2027.
/// </summary>
public sealed class LocalTimeTests
{
    static Minute Utc(int month, int day, int hour, int minute) => Minute.Of(new DateTimeOffset(2027, month, day, hour, minute, 0, TimeSpan.Zero));

    static MealFileRead Served(string time) => SmallMeal.Read(root => root["courses"]![0]!["tableTime"] = time);

    [Theory]
    [InlineData("2027-10-31T02:30", 0, 30)]
    [InlineData("2027-10-31T02:30+02:00", 0, 30)]
    [InlineData("2027-10-31T02:30+01:00", 1, 30)]
    [InlineData("2027-10-31T03:00", 2, 0)]
    public void An_hour_that_happens_twice_means_its_first_pass_unless_it_carries_an_offset(string local, int hour, int minute) =>
        Assert.Equal(Utc(10, 31, hour, minute), Served(local).Meal!.FirstTableTime);

    [Theory]
    [InlineData("2027-10-31T02:30+02:00", "2027-10-31T02:30\"")]
    [InlineData("2027-10-31T02:30+01:00", "2027-10-31T02:30+01:00\"")]
    public void Only_the_second_pass_is_written_with_its_offset(string local, string written)
    {
        var meal = Served(local).Meal!;
        Assert.Contains(written, MealFile.Write(meal), StringComparison.Ordinal);
        Assert.Equal(meal.FirstTableTime, MealFile.Read(MealFile.Write(meal)).Meal!.FirstTableTime);
    }

    [Theory]
    [InlineData("2027-03-28T02:00", "2027-03-28T03:00")]
    [InlineData("2027-03-28T02:59", "2027-03-28T03:59")]
    public void A_skipped_time_is_refused_with_the_one_meant(string local, string meant) =>
        Assert.Contains(meant, Assert.Single(Served(local).Errors).Remedy, StringComparison.Ordinal);

    [Fact]
    public void The_last_minute_before_the_jump_and_the_first_after_it_are_one_apart()
    {
        var (before, after) = (Served("2027-03-28T01:59").Meal!.FirstTableTime, Served("2027-03-28T03:00").Meal!.FirstTableTime);
        Assert.Equal(1, after - before);
    }
}
