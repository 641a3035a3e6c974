using CookAlong.Web.Features.Meals;
using CookAlong.Web.Tests.Plans;

namespace CookAlong.Web.Tests.Meals;

public sealed class AvoidedTests
{
    [Fact]
    public void Each_guest_s_allergens_are_found_in_the_dishes_whose_ingredients_name_them()
    {
        var found = Avoided.In(AlderLane.Meal).Select(one => (one.Guest.Name, one.What, one.Dish.Name, one.Ingredients.Single().Name));

        Assert.Equal([("Ivo", "nuts", "Nut roast", "hazelnuts"), ("Tobi", "milk", "Nut roast", "butter")], found);
    }

    [Fact]
    public void Capital_letters_do_not_hide_an_allergen()
    {
        var loud = AlderLane.Meal with { Guests = [AlderLane.Meal.Guests[1] with { Avoids = ["NUTS"] }] };

        Assert.Single(Avoided.In(loud));
    }
}
