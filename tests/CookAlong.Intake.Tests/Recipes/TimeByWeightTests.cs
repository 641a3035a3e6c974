using CookAlong.Domain.Quantities;
using CookAlong.Intake.Recipes;

namespace CookAlong.Intake.Tests.Recipes;

public sealed class TimeByWeightTests
{
    static DishDraft Draft(string ingredients, string step) =>
        DishDraft.Of(RecipeRead.Of($"A roast\nIngredients\n{ingredients}\nMethod\n1. {step}"), 4, SpoonSizes.Metric);

    // A pound is 0.45359237 kg exactly (NIST Handbook 44, appendix C): 2 kg are 4.409 lb.
    [Theory]
    [InlineData("2 kg beef", "Roast at 180 °C, 20 minutes to the pound plus 20 minutes.", 108, 108)]
    [InlineData("2 kg beef", "Roast at 180 °C for 40 minutes per kg, and 20 minutes over.", 100, 100)]
    [InlineData("5 lb beef", "Roast at 180 °C for 20 minutes a pound.", 100, 100)]
    [InlineData("5 lb beef", "Roast at 180 °C, 20 minutes per lb (45 minutes per kg).", 100, 100)]
    [InlineData("2 kg beef", "Roast at 180 °C for 20 to 25 minutes per kilo.", 40, 50)]
    [InlineData("1.5-2 kg beef", "Roast at 180 °C for 40 minutes per kg.", 60, 80)]
    [InlineData("1 kg beef\n3 kg pork\n5 kg potatoes", "Roast at 180 °C for 40 minutes per kg.", 120, 120)]
    [InlineData("1 kg beef\n3 kg pork", "Roast the beef at 180 °C for 40 minutes per kg.", 40, 40)]
    public void Minutes_by_weight_are_counted_by_the_ingredients_weight(string ingredients, string step, int least, int most)
    {
        var draft = Draft(ingredients, step).Steps[0];
        Assert.Equal((least, most, false), (draft.Least, draft.Most, draft.IsGuessed));
        Assert.Equal((CookedOn.Oven, 180), (draft.On, draft.Celsius));
    }

    // 1.5 kg are assumed, and said to be: own estimate.
    [Theory]
    [InlineData("3 leeks", "Roast at 180 °C, 20 minutes per kg plus 20 minutes.", 50)]
    [InlineData("a joint of beef", "Roast at 180 °C for 40 minutes per kg.", 60)]
    [InlineData("900 kg beef", "Roast at 180 °C for 40 minutes per kg.", 60)]
    public void Where_no_weight_is_written_the_time_is_a_guess_and_heat_and_place_are_kept(string ingredients, string step, int minutes)
    {
        var draft = Draft(ingredients, step).Steps[0];
        Assert.Equal((minutes, true), (draft.Likely, draft.IsGuessed));
        Assert.Equal((CookedOn.Oven, 180), (draft.On, draft.Celsius));
    }

    [Fact]
    public void A_time_beyond_all_measure_is_no_trap()
    {
        var draft = StepDraft.Of(StepRead.Of(string.Concat(Enumerable.Repeat("Soak 30 days, ", 60_000))));
        Assert.True(draft is { Least: > 0 } && draft.Least <= draft.Likely && draft.Likely <= draft.Most);
    }
}
