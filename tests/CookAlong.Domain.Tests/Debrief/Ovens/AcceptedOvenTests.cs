using CookAlong.Domain.Debrief.Learning.Ovens;
using CookAlong.Domain.Kitchens;

namespace CookAlong.Domain.Tests.Debrief.Ovens;

public sealed class AcceptedOvenTests
{
    static readonly Oven Written = new(new OvenId("oven"), "The Oven", 3, Fan: false, 50, 250, 12, 6, 18) { ReadsHighBy = 5 };

    [Fact]
    public void What_was_not_learned_stays_as_the_meal_says() =>
        Assert.Equal(Written with { CoolDownPerMinute = 3.5m }, new AcceptedOven("the oven", null, 3.5m, null).Of(Written));

    [Fact]
    public void Figures_are_taken_on_as_fine_as_a_cook_would_note_them()
    {
        var learned = new OvenLearned(new OvenFigure(9.37, 2), new OvenFigure(3.449, 1), new OvenFigure(-12.6, 1), null, []);
        Assert.Equal(new AcceptedOven("the oven", 9.5m, 3.4m, -15), AcceptedOven.Of(" The Oven", learned));
    }

    [Fact]
    public void An_oven_is_known_by_its_name_whatever_its_letters()
    {
        var meal = Runs.SmallMeal.Meal with { Kitchen = Runs.SmallMeal.Meal.Kitchen with { Ovens = [Written] } };
        var accepted = new Dictionary<string, AcceptedOven> { ["the oven"] = new("the oven", 8, null, null) };
        Assert.Equal(8m, AcceptedOven.Apply(meal, accepted).Kitchen.Ovens[0].HeatUpPerMinute);
        Assert.Same(meal, AcceptedOven.Apply(meal, new Dictionary<string, AcceptedOven>()));
    }
}
