using System.Collections.Immutable;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Tests;

/// <summary>Meals for tests, in few words. Times are minutes after <see cref="Zero"/>.</summary>
public sealed class MealBuilder
{
    /// <summary>Minute 0 of every test meal.</summary>
    public static readonly Minute Zero = new(29_700_000);

    readonly List<Course> courses = [];
    readonly List<Oven> ovens = [];
    readonly List<Grill> grills = [];
    readonly List<Appliance> appliances = [];
    readonly List<Helper> helpers = [];
    readonly List<Dish> dishes = [];
    int rings = 4;
    Minute? notBefore = Zero;

    public static Minute At(int minutes) => Zero + minutes;

    public MealBuilder Course(string id, int tableTime) => With(() => courses.Add(new(new(id), id, At(tableTime))));

    public MealBuilder NotBefore(int? minutes) => With(() => notBefore = minutes is { } at ? At(at) : null);

    public MealBuilder Rings(int count) => With(() => rings = count);

    public MealBuilder Oven(string id, int shelves = 3, int min = 50, int max = 250, decimal heatUp = 10, decimal coolDown = 5, int startsAt = 20) =>
        With(() => ovens.Add(new(new(id), id, shelves, Fan: false, min, max, heatUp, coolDown, startsAt)));

    public MealBuilder Grill(string id, string? insideOven = null) => With(() => grills.Add(new(new(id), insideOven is null ? null : new OvenId(insideOven))));

    public MealBuilder Appliance(string id, int count = 1) => With(() => appliances.Add(new(new(id), count)));

    public MealBuilder Helper(string id, bool child = false, string[]? can = null, params (int From, int To)[] available) =>
        With(() => helpers.Add(new(new(id), id, [.. available.Select(span => new Window(At(span.From), At(span.To)))], can?.ToImmutableHashSet(), child)));

    public MealBuilder Dish(string id, string course, Action<DishBuilder> steps)
    {
        var dish = new DishBuilder(id, course);
        steps(dish);
        return With(() => dishes.Add(dish.Build()));
    }

    public Meal Build() =>
        new("Test lunch", TimeZoneInfo.Utc, notBefore, [.. courses], [], new([.. ovens], rings, [.. grills], [.. appliances]), [.. helpers], [.. dishes]);

    MealBuilder With(Action change)
    {
        change();
        return this;
    }
}

public sealed class DishBuilder(string id, string course)
{
    readonly List<Hold> holds = [];
    readonly List<Step> steps = [];

    public DishBuilder Hold(HoldPlace place, int limit, int least = 0, WarmOven? warm = null)
    {
        holds.Add(new(place, least, BestWithin: Math.Min(limit, 5), GoodFor: Math.Min(limit, 10), limit, CostPerMinute: 1, warm));
        return this;
    }

    /// <summary>A step after the one before it, hands-on unless <paramref name="how"/> says otherwise.</summary>
    public DishBuilder Step(string step, int minutes, Func<StepBuilder, StepBuilder>? how = null)
    {
        var built = new StepBuilder(step, minutes);
        if (steps.Count > 0)
        {
            built.After(steps[^1].Id.Value);
        }

        steps.Add((how?.Invoke(built) ?? built).Build());
        return this;
    }

    public Dish Build() => new(new(id), id, new(course), 4, [], holds.Count == 0 ? [Domain.Meals.Hold.OnTheTable] : [.. holds], [.. steps]);
}

public sealed class StepBuilder
{
    Step step;

    public StepBuilder(string id, int minutes) => step = new(
        new(id), id, null, null, new(Durations.Exactly(minutes), Attention.HandsOn, People: 1, Uses.Nothing), [], [], ChildSafe: false, [], [],
        null, null, [], null, PauseAfter: false);

    public StepBuilder Lasts(int least, int likely, int most) => With(step with { Way = step.Way with { Minutes = new(least, likely, most) } });

    public StepBuilder Nearby() => With(step with { Way = step.Way with { Attention = Attention.Nearby } });

    public StepBuilder Unattended() => With(step with { Way = step.Way with { Attention = Attention.Unattended } });

    public StepBuilder People(int count) => With(step with { Way = step.Way with { People = count } });

    public StepBuilder Oven(int shelves, int min, int max, string? oven = null) =>
        Using(step.Way.Uses with { Oven = new(oven is null ? null : new OvenId(oven), shelves, new(min, (min + max) / 2, max)) });

    public StepBuilder Rings(int count) => Using(step.Way.Uses with { Rings = count });

    public StepBuilder Grill(string? grill = null) => Using(step.Way.Uses with { Grill = new(grill is null ? null : new GrillId(grill)) });

    public StepBuilder Appliance(string appliance) => Using(step.Way.Uses with { Appliances = step.Way.Uses.Appliances.Add(new(appliance)) });

    public StepBuilder Needs(params string[] skills) => With(step with { Needs = [.. skills] });

    public StepBuilder ChildSafe() => With(step with { ChildSafe = true });

    /// <summary>Replaces what the step waits for.</summary>
    public StepBuilder After(string other, int least = 0, int? most = null) => With(step with { After = [new(new(other), least, most)] });

    public StepBuilder AlsoAfter(string other, int least = 0, int? most = null) => With(step with { After = step.After.Add(new(new(other), least, most)) });

    public StepBuilder AfterNothing() => With(step with { After = [] });

    public StepBuilder Every(int every, int minutes = 1, int give = 3, bool childSafe = false) =>
        With(step with { Tends = step.Tends.Add(new("baste", minutes, every, null, give, childSafe)) });

    public StepBuilder TendAt(int at, int minutes = 1, int give = 3, bool childSafe = false) =>
        With(step with { Tends = step.Tends.Add(new("turn", minutes, null, at, give, childSafe)) });

    public StepBuilder Option(int minutes, Attention attention = Attention.HandsOn, Uses? uses = null) =>
        With(step with { Options = step.Options.Add(new(Durations.Exactly(minutes), attention, 1, uses ?? Uses.Nothing)) });

    public StepBuilder StartsAt(int at) => With(step with { At = MealBuilder.At(at) });

    public StepBuilder Between(int from, int to) => With(step with { Window = new(MealBuilder.At(from), MealBuilder.At(to)) });

    public StepBuilder By(params string[] helpers) => With(step with { By = [.. helpers.Select(helper => new HelperId(helper))] });

    public StepBuilder Choice(int option) => With(step with { Choice = option });

    public Step Build() => step;

    StepBuilder Using(Uses uses) => With(step with { Way = step.Way with { Uses = uses } });

    StepBuilder With(Step changed)
    {
        step = changed;
        return this;
    }
}
