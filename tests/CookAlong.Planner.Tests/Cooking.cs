using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Planner.Tests;

/// <summary>Short words for building meals in tests.</summary>
internal static class Cooking
{
    public static readonly Minute Table = Minute.Of(new DateTimeOffset(2031, 2, 8, 13, 0, 0, TimeSpan.Zero));

    public static readonly CourseId Main = new("main");

    public static Meal Meal(int? minutesBefore, Kitchen kitchen, IEnumerable<Helper> helpers, params Dish[] dishes) => new(
        "A test meal",
        TimeZoneInfo.Utc,
        minutesBefore is { } minutes ? Table - minutes : null,
        [new Course(Main, "Main", Table)],
        Guests: [],
        kitchen,
        [.. helpers],
        [.. dishes]);

    public static Kitchen Kitchen(int ovens = 1, int shelves = 3, int rings = 4, decimal heatUp = 12, decimal coolDown = 10) => new(
        [.. Enumerable.Range(1, ovens).Select(number => new Oven(
            new OvenId($"oven-{number}"), $"Oven {number}", shelves, Fan: false, Min: 50, Max: 250, heatUp, coolDown, StartsAt: 20))],
        rings,
        [new Grill(new GrillId("grill"), null)],
        [new Appliance(new ApplianceId("mixer"), 1)]);

    public static Helper Cook(string id, bool isChild = false, params Window[] available) =>
        new(new HelperId(id), id, [.. available], Can: null, isChild);

    public static Dish Dish(string id, Hold hold, params Step[] steps) => Dish(id, [hold], steps);

    /// <summary>Steps that say nothing else follow each other in order.</summary>
    public static Dish Dish(string id, Hold[] holds, params Step[] steps)
    {
        var inOrder = steps.Select((step, index) =>
            step.After.IsDefault ? step with { After = index == 0 ? [] : [new After(steps[index - 1].Id, 0, null)] } : step);
        return new Dish(new DishId(id), id, Main, 4, [], [.. holds], [.. inOrder]);
    }

    public static Step Hands(string id, int minutes, Uses? uses = null, int people = 1, bool childSafe = false) =>
        Step(id, minutes, Attention.HandsOn, uses, people) with { ChildSafe = childSafe };

    public static Step Nearby(string id, int minutes, Uses? uses = null) => Step(id, minutes, Attention.Nearby, uses);

    public static Step Alone(string id, int minutes, Uses? uses = null) => Step(id, minutes, Attention.Unattended, uses);

    public static Way Way(int minutes, Attention attention, Uses? uses = null, int people = 1) =>
        new(Durations.Exactly(minutes), attention, people, uses ?? Uses.Nothing);

    public static Uses InOven(int min, int max, int shelves = 1, OvenId? oven = null) =>
        new(new OvenUse(oven, shelves, new CelsiusRange(min, (min + max) / 2, max)), 0, null, []);

    public static Uses OnRings(int rings = 1) => new(null, rings, null, []);

    public static Uses UnderGrill(GrillId? grill = null) => new(null, 0, new GrillUse(grill), []);

    public static Uses With(params string[] appliances) => new(null, 0, null, [.. appliances.Select(id => new ApplianceId(id))]);

    public static Step Following(this Step step, params After[] after) => step with { After = [.. after] };

    public static After After(string step, int least = 0, int? most = null) => new(new StepId(step), least, most);

    public static Tend Every(int minutes, int length = 1, int give = 3) => new("Baste", length, minutes, null, give, ChildSafe: false);

    public static Hold OnTheSide(int limit, int bestWithin = 5, int least = 0, int cost = 1) =>
        new(HoldPlace.Side, least, bestWithin, Math.Max(bestWithin, limit), limit, cost, null);

    public static Hold KeptWarm(int min, int max, int limit, int standFirst = 20, int least = 0) =>
        new(HoldPlace.WarmOven, least, limit, limit, limit, 1, new WarmOven(new CelsiusRange(min, (min + max) / 2, max), 1, standFirst));

    /// <param name="effort">In the solver's own units, so that a busy machine proves what an idle one does; the clock only stops what has gone astray.</param>
    public static Plan Plan(Meal meal, double effort = 20, int seed = 1) =>
        new CpSatPlanner().Plan(new PlanRequest(meal, new PlanLimits(TimeSpan.FromMinutes(5), Workers: 1, seed, Deterministic: effort)), null, TestContext.Current.CancellationToken);

    private static Step Step(string id, int minutes, Attention attention, Uses? uses, int people = 1) => new(
        new StepId(id), id, null, null, Way(minutes, attention, uses, people), [], [], ChildSafe: false, After: default, [], null, null, [], null, PauseAfter: false);
}
