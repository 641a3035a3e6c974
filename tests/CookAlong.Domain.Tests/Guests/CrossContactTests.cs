using CookAlong.Domain.Guests;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Domain.Tests.Runs;

namespace CookAlong.Domain.Tests.Guests;

public sealed class CrossContactTests
{
    static readonly Guest noor = new("Noor", 1, ["vegetarian"], []);

    /// <summary>The goose roasts from 12:40 to 14:10; the dumplings go into the same oven then.</summary>
    static (Meal Meal, Plan Plan) Lunch(int dumplingsAt, string inTheGoose = "goose")
    {
        var meal = SmallMeal.Meal with
        {
            Guests = [noor],
            Dishes = [.. SmallMeal.Meal.Dishes.Select(dish => dish with { Ingredients = [new(dish.Id.Value == "goose" ? inTheGoose : "parsley", null, null, null, [])] })],
        };
        var plan = SmallMeal.Plan with
        {
            Steps = [.. SmallMeal.Plan.Steps.Select(step => step.Step == SmallMeal.Boil ? step with { Oven = SmallMeal.Oven, Start = SmallMeal.At(dumplingsAt), End = SmallMeal.At(dumplingsAt, 20) } : step)],
        };
        return (meal, plan);
    }

    [Fact]
    public void A_dish_beside_one_that_holds_what_its_guest_avoids_is_told()
    {
        var (meal, plan) = Lunch(dumplingsAt: 13);
        var contact = Assert.Single(CrossContact.In(meal, plan));
        Assert.Equal((MeetingPlace.Oven, "goose", "dumplings", "Noor", "vegetarian"), (contact.Place, contact.Holds.Name, contact.Clean.Name, contact.Guests.Single().Name, contact.Why.Single()));
    }

    [Fact]
    public void One_after_the_other_in_an_oven_do_not_meet() => Assert.Empty(Lunch(dumplingsAt: 15) is var (meal, plan) ? CrossContact.In(meal, plan) : []);

    [Fact]
    public void Nothing_is_told_when_nobody_avoids_anything_there() => Assert.Empty(Lunch(13, "apples") is var (meal, plan) ? CrossContact.In(meal, plan) : []);

    [Fact]
    public void What_may_hold_it_is_told_as_such_where_the_other_is_free_of_it()
    {
        // Marzipan is made of almonds, and a guest's "almonds" asks about all nuts.
        var (meal, plan) = Lunch(dumplingsAt: 13, "marzipan");
        var contact = Assert.Single(CrossContact.In(meal with { Guests = [new("Noor", 1, [], ["almonds"])] }, plan));
        Assert.Equal(("goose", "dumplings", "almonds", false), (contact.Holds.Name, contact.Clean.Name, contact.Why.Single(), contact.IsCertain));
    }

    [Fact]
    public void A_dish_of_which_nothing_is_known_is_no_neighbour_to_warn_of() =>
        Assert.Empty(Lunch(13, "grandmother's secret") is var (meal, plan) ? CrossContact.In(meal, plan) : []);

    /// <summary>Fat that has fried one thing fries the next.</summary>
    [Fact]
    public void In_a_fryer_what_comes_first_stays_in_the_fat()
    {
        var (meal, plan) = Lunch(dumplingsAt: 15);
        Plan Fried(bool gooseFirst) => plan with
        {
            Steps =
            [
                .. plan.Steps.Select(step => step.Step == SmallMeal.Roast || step.Step == SmallMeal.Boil
                    ? step with { Oven = null, Appliances = [new("fryer")], Start = SmallMeal.At((step.Step == SmallMeal.Roast) == gooseFirst ? 13 : 14), End = SmallMeal.At((step.Step == SmallMeal.Roast) == gooseFirst ? 13 : 14, 20) }
                    : step),
            ],
        };
        Assert.Equal((MeetingPlace.Appliance, true), Assert.Single(CrossContact.In(meal, Fried(gooseFirst: true))) is var contact ? (contact.Place, contact.IsCertain) : default);
        Assert.Empty(CrossContact.In(meal, Fried(gooseFirst: false)));
    }

    [Theory]
    [InlineData("Lay them around the goose in its tray", 1)]
    [InlineData("Fry them in the fat of the goose", 1)]
    [InlineData("Fry them in a pan of their own", 0)]
    [InlineData("Carry them to the table with the goose", 0)]
    [InlineData("Boil them. The goose has a tray to itself; use another pan", 1)]
    public void In_one_tray_or_its_fat_dishes_meet_by_the_words_of_a_step(string text, int told)
    {
        var (meal, plan) = Lunch(dumplingsAt: 15);
        var said = meal with { Dishes = [.. meal.Dishes.Select(dish => dish with { Steps = [.. dish.Steps.Select(step => step.Id == SmallMeal.Boil ? step with { Text = text } : step)] })] };
        var contacts = CrossContact.In(said, plan);
        Assert.Equal(told, contacts.Length);
        Assert.All(contacts, contact => Assert.Equal((MeetingPlace.Vessel, "goose", "dumplings", true), (contact.Place, contact.Holds.Name, contact.Clean.Name, contact.IsCertain)));
    }

    [Fact]
    public void Under_a_grill_what_comes_first_stays_for_what_comes_after()
    {
        var (meal, plan) = Lunch(dumplingsAt: 15);
        Plan Grilled(bool gooseFirst) => plan with
        {
            Steps =
            [
                .. plan.Steps.Select(step => step.Step == SmallMeal.Roast || step.Step == SmallMeal.Boil
                    ? step with { Oven = null, Grill = new GrillId("grill"), Start = SmallMeal.At((step.Step == SmallMeal.Roast) == gooseFirst ? 13 : 14), End = SmallMeal.At((step.Step == SmallMeal.Roast) == gooseFirst ? 13 : 14, 20) }
                    : step),
            ],
        };
        Assert.Equal(MeetingPlace.Grill, Assert.Single(CrossContact.In(meal, Grilled(gooseFirst: true))).Place);
        Assert.Empty(CrossContact.In(meal, Grilled(gooseFirst: false)));
    }
}
