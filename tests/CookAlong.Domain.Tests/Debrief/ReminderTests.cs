using CookAlong.Domain.Debrief;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Tests.Debrief;

/// <summary>Days before which a shop wants to know: common practice, no source.</summary>
public sealed class ReminderTests
{
    static Meal With(string name, decimal? quantity, string? unit) => Runs.SmallMeal.Meal with
    {
        Dishes = [Runs.SmallMeal.Meal.Dishes[0] with { Ingredients = [new Ingredient(name, quantity, unit, null, [])] }],
    };

    [Theory]
    [InlineData("goose, oven-ready", 4.8, "kg", 14)]
    [InlineData("pork shoulder on the bone", 1900, "g", 7)]
    [InlineData("side of salmon", 1.2, "kg", 3)]
    public void A_main_joint_is_ordered_ahead(string name, double quantity, string unit, int days)
    {
        var meal = With(name, (decimal)quantity, unit);
        var order = Reminder.Of(meal, plan: null).First(one => one.Order is not null);
        Assert.Equal(days, (LocalTime.Show(meal.FirstTableTime, meal.TimeZone).Date - LocalTime.Show(order.At, meal.TimeZone).Date).Days);
    }

    [Theory]
    [InlineData("goose fat", 200, "g")]
    [InlineData("gooseberries", 2, "kg")]
    [InlineData("minced beef", 500, "g")]
    [InlineData("ham", null, null)]
    public void What_any_shop_has_is_not(string name, int? quantity, string? unit) =>
        Assert.DoesNotContain(Reminder.Of(With(name, quantity, unit), plan: null), one => one.Order is not null);

    [Fact]
    public void Work_of_the_day_itself_is_no_reminder() =>
        Assert.DoesNotContain(Reminder.Of(Runs.SmallMeal.Meal, Runs.SmallMeal.Plan), one => one.Step is not null);

    [Fact]
    public void Work_that_must_begin_the_day_before_is()
    {
        var dish = Runs.SmallMeal.Meal.Dishes[0];
        var meal = Runs.SmallMeal.Meal with { Dishes = [dish with { Steps = [.. dish.Steps.Select((step, index) => index == 0 ? step : step with { After = [.. step.After.Select(after => after with { Least = 900 })] })] }] };
        Assert.Contains(Reminder.Of(meal, plan: null), one => one.Step?.Id == dish.Steps[0].Id);
    }
}
