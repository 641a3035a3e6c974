using CookAlong.Domain.FoodSafety;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Runs;
using CookAlong.Domain.Tests.Runs;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Domain.Tests.FoodSafety;

/// <summary>Hours between cold and hot, from what was tapped.</summary>
public sealed class StandingOutTests
{
    static readonly StepId Chill = new("chill"), TakeOut = new("take-out"), Cook = new("cook"), Mash = new("mash");

    static Step Stepped(StepId id, string text, bool isHot = false) =>
        SmallMeal.Meal.Step(Trim) with { Id = id, Text = text, Way = new Way(Durations.Exactly(10), Attention.HandsOn, 1, isHot ? Uses.Nothing with { Rings = 1 } : Uses.Nothing) };

    static Dish DishOf(string ingredient) => SmallMeal.Meal.Dishes[2] with
    {
        Ingredients = [new Ingredient(ingredient, 1, "kg", null, [])],
        Steps = [Stepped(Chill, "Put it in the fridge"), Stepped(TakeOut, "Take it out of the fridge"), Stepped(Cook, "Boil it", isHot: true), Stepped(Mash, "Mash it")],
    };

    static TimeSpan? Out(Dish dish, DateTimeOffset until, params (StepId Step, DateTimeOffset Began, DateTimeOffset? Ended)[] seen) => Standing(dish, until, seen)?.Known;

    static StandingOut? Standing(Dish dish, DateTimeOffset until, (StepId Step, DateTimeOffset Began, DateTimeOffset? Ended)[] seen) => StandingOut.Of(
        dish, id => seen.Where(one => one.Step == id).Select(one => ((DateTimeOffset?)one.Began, one.Ended)).FirstOrDefault(), step => step.Way, [], until);

    [Fact]
    public void What_spoils_counts_from_the_fridge_to_the_heat_and_from_the_heat_on()
    {
        (StepId, DateTimeOffset, DateTimeOffset?)[] day = [(Chill, Clock(8), Clock(8, 5)), (TakeOut, Clock(12), Clock(12, 2)), (Cook, Clock(12, 40), Clock(13, 10)), (Mash, Clock(13, 20), Clock(13, 30))];
        // 40 minutes before the heat; after it 20 to the end of the mashing and 30 more.
        Assert.Equal(TimeSpan.FromMinutes(90), Out(DishOf("pork mince"), Clock(14), day));
        // Raw roots may lie about; cooked they may not.
        Assert.Equal(TimeSpan.FromMinutes(50), Out(DishOf("parsnips"), Clock(14), day));
        Assert.Null(Out(DishOf("parsnips"), Clock(12, 50), day));
    }

    [Fact]
    public void Of_a_long_gap_nobody_has_said_where_it_was()
    {
        (StepId, DateTimeOffset, DateTimeOffset?)[] day = [(TakeOut, Clock(6), Clock(6, 5)), (Cook, Clock(12), Clock(12, 30))];
        Assert.Equal(new StandingOut(TimeSpan.FromMinutes(5), TimeSpan.FromMinutes(355)), Standing(DishOf("pork mince"), Clock(12, 30), day));
    }

    // UK Food Standards Agency, Hot holding: below 63 °C once, for up to two hours. Beans are done at 12:30 and the table is at 15:00.
    [Fact]
    public void The_board_names_what_has_nearly_stood_out_for_as_long_as_it_may()
    {
        var meal = SmallMeal.Meal with { Dishes = [.. SmallMeal.Meal.Dishes.Select(dish => dish.Id.Value == "dumplings" ? dish with { Ingredients = [new Ingredient("eggs", 3, null, null, [])] } : dish)] };
        KitchenStory Rolled(Region? authority) => new KitchenStory()
            .Given([.. Run.Start(meal, SmallMeal.Plan, Host, "Maren", Maren, authority)])
            .At(12, 20).Given(new RunEvent.StepStarted(Roll));
        Assert.Empty(Rolled(Region.UnitedKingdom).At(13, 49).Board().Standing);
        Assert.Equal("dumplings", Assert.Single(Rolled(Region.UnitedKingdom).At(13, 50).Board().Standing).Dish.Name);
        Assert.Empty(Rolled(null).At(13, 50).Board().Standing);
    }
}
