using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Planner.Quick;
using static CookAlong.Planner.Tests.Cooking;

namespace CookAlong.Planner.Tests;

/// <summary>A shelf of the fridge is a place like any other: an appliance with a count.</summary>
public sealed class FridgeTests
{
    static Meal Jellies(int shelves) => Meal(
        150,
        Kitchen() with { Appliances = [new Appliance(new ApplianceId("fridge"), shelves)] },
        [Cook("maren")],
        Dish("red", OnTheSide(300), Alone("red-chill", 70, With("fridge"))),
        Dish("green", OnTheSide(300), Alone("green-chill", 70, With("fridge"))));

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Two_dishes_take_turns_where_there_is_room_for_one(bool quick)
    {
        var meal = Jellies(shelves: 1);
        var plan = quick ? new QuickPlanner().Plan(new PlanRequest(meal, new PlanLimits(TimeSpan.FromMinutes(5), Deterministic: 1)), null, TestContext.Current.CancellationToken) : Plan(meal);
        Assert.Empty(PlanCheck.Check(meal, plan));
        var (first, second) = (plan.Steps.MinBy(step => step.Start)!, plan.Steps.MaxBy(step => step.Start)!);
        Assert.True(first.End <= second.Start, $"{first.Start} to {first.End}, {second.Start} to {second.End}");
    }

    [Fact]
    public void Two_at_once_where_there_is_room_for_one_is_no_plan()
    {
        var side = Plan(Jellies(shelves: 2));
        Assert.Empty(PlanCheck.Check(Jellies(shelves: 2), side));
        var together = side with { Steps = [.. side.Steps.Select(step => step with { Start = side.Steps[0].Start, End = side.Steps[0].End })] };
        Assert.NotEmpty(PlanCheck.Check(Jellies(shelves: 1), together));
    }
}
