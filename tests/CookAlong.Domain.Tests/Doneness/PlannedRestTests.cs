using CookAlong.Domain.Doneness;
using CookAlong.Domain.FoodSafety;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Tests.Runs;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Domain.Tests.Doneness;

/// <summary>A chicken of 1.6 kg, 90 minutes at 180 °C to 74 °C; UK hot holding 63 °C (The Food Safety and Hygiene (England) Regulations 2013, schedule 4).</summary>
public sealed class PlannedRestTests
{
    static readonly CoreWanted chicken = new(74, new Joint(Cut.WholeChicken, 1.6));

    static Domain.Planning.Plan CarvedAt(Minute carve) => SmallMeal.Plan with
    {
        Steps = [.. SmallMeal.Plan.Steps.Select(step => step.Step == Carve ? step with { Start = carve, End = carve + 15 } : step)],
    };

    [Fact]
    public void A_planned_rest_stands_beside_how_long_the_joint_stays_hot()
    {
        var rest = Assert.Single(PlannedRest.Of(WithCore(chicken), SmallMeal.Plan, Region.UnitedKingdom));
        Assert.Equal((At(14, 10), At(14, 40), 63), (rest.Out, rest.Until, rest.Limit.Celsius));
        Assert.True(TimeSpan.Zero < rest.Hot.Low && rest.Hot.Low < rest.Hot.High);
        Assert.False(PlannedRest.Of(WithCore(chicken), CarvedAt(At(14, 15)), Region.UnitedKingdom).Single().IsTooLong);
        Assert.True(PlannedRest.Of(WithCore(chicken), CarvedAt(At(18)), Region.UnitedKingdom).Single().IsTooLong);
    }

    [Fact]
    public void What_cannot_be_done_by_then_is_left_to_the_thermometer()
    {
        Assert.Empty(PlannedRest.Of(WithCore(chicken with { Joint = new Joint(Cut.WholeGoose, 6) }), SmallMeal.Plan, Region.UnitedKingdom));
        Assert.Empty(PlannedRest.Of(WithCore(chicken), SmallMeal.Plan, Region.Canada));
        Assert.Empty(PlannedRest.Of(WithCore(chicken with { Joint = null }), SmallMeal.Plan, Region.UnitedKingdom));
    }
}
