using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Quantities;

namespace CookAlong.Domain.Tests.Quantities;

public sealed class ScalingTests
{
    static readonly Dish cake = new(
        new DishId("cake"), "Seed cake", new CourseId("tea"), 4,
        [new("flour", 200, "g", null, []), new("baking powder", 2, "tsp", null, []), new("salt", 1, "tsp", null, [])],
        [Hold.OnTheTable],
        [
            new Step(
                new StepId("bake"), "Bake", null, null, new Way(Durations.Exactly(40), Attention.Unattended, 1, new Uses(new OvenUse(null, 1, new CelsiusRange(170, 180, 190)), 0, null, [])),
                [], [], false, [], [], null, null, [], null, false),
        ]);

    [Fact]
    public void As_many_as_it_was_written_for_changes_nothing()
    {
        Assert.Equal(1, Scaling.Factor(cake, 4));
        Assert.Empty(Scaling.Cautions(cake, 1));
        Assert.Equal(new Amount(3, Units.Gram), new Amount(3, Units.Gram) * Scaling.Factor(cake, 4));
    }

    // Armed Forces Recipe Service (2003), A-1: a recipe for 100 made for 333 takes 6 gal times 3.33 = 19.98 gal.
    [Fact]
    public void The_worked_example_of_a_large_kitchen_comes_out() =>
        Assert.Equal(19.98m, (new Amount(6, Units.Of("gallon", SpoonSizes.UnitedStates)) * Math.Round(Scaling.Factor(cake with { Serves = 100 }, 333), 2)).Value);

    [Fact]
    public void What_does_not_grow_with_the_dish_is_told() =>
        Assert.Equal([ScalingCaution.OvenTime, ScalingCaution.Seasoning, ScalingCaution.Raising], Scaling.Cautions(cake, 2));
}
