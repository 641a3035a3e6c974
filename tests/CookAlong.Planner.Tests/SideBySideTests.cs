using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using static CookAlong.Planner.Tests.Cooking;

namespace CookAlong.Planner.Tests;

/// <summary>Three jobs of which each two want a thing that there is once, each pair another one; no thing is wanted by all.</summary>
public sealed class SideBySideTests
{
    static Dish Job(string name, params string[] things) =>
        Dish(name, OnTheSide(300, 300), Alone(name + "-run", 30, Uses.Nothing with { Appliances = [.. things.Select(thing => new ApplianceId(thing))] }));

    [Fact]
    public void What_pairs_of_things_keep_apart_is_done_one_after_the_other_and_no_later_than_must_be()
    {
        var kitchen = Kitchen() with { Appliances = [.. new[] { "mixer", "press", "mill" }.Select(thing => new Appliance(new(thing), 1))] };
        var meal = Meal(30, kitchen, [Cook("cook")], Job("dough", "mixer", "press"), Job("purée", "press", "mill"), Job("spice", "mill", "mixer"));

        var plan = CpSatPlanner.PlanOnly(new PlanRequest(meal, new PlanLimits(TimeSpan.FromMinutes(5), Workers: 1, Deterministic: 2)) { Cushion = 0 });

        Assert.Empty(PlanCheck.Check(meal, plan));
        Assert.Equal((PlanStatus.Optimal, 60), (plan.Status, plan.Cost.LateMinutes));
    }
}
