using System.Collections.Immutable;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using static CookAlong.Domain.Tests.MealBuilder;

namespace CookAlong.Domain.Tests.Planning;

/// <summary>
/// A small meal and a plan of it that holds, made the easy way round: steps are put where there is room, minute by minute,
/// and only then are limits drawn around them. Ovens have ranges but no programme.
/// </summary>
sealed class RandomPlan
{
    static readonly CelsiusRange[] Ranges = [new(170, 180, 190), new(185, 190, 200), new(215, 220, 230)];
    static readonly Oven TheOven = new(new("oven"), "oven", 2, false, 50, 250, 10, 5, 180);

    readonly Random random;
    readonly Helper[] helpers;
    readonly List<PlannedStep> steps = [];
    readonly List<PlannedTend> tends = [];
    readonly List<Step> asked = [];

    public RandomPlan(int seed)
    {
        random = new Random(seed);
        helpers = [.. Enumerable.Range(0, random.Next(1, 4)).Select(index => new Helper(new($"h{index}"), $"h{index}", HereOf(index), null, index == 2))];
        var dishes = Enumerable.Range(0, random.Next(1, 5)).Select(AddDish).ToArray();
        var table = steps.Max(step => step.End) + random.Next(0, 30);
        Meal = new("Random", TimeZoneInfo.Utc, Zero, [new(new("main"), "main", table)], [],
            new([TheOven], 2, [new(new("grill"), random.Next(2) == 0 ? TheOven.Id : null)], [new(new("mixer"), 1)]), [.. helpers],
            [.. dishes.Select(dish => dish with { Holds = [Around(table - End(dish))], Steps = [.. dish.Steps.Select(Around)] })]);
        Plan = new(PlanStatus.Feasible, 1, 0, Zero, [new(new("main"), table, table)], [.. steps], [.. tends],
            [.. dishes.Select(dish => new PlannedHold(dish.Id, 0, HoldPlace.Side, End(dish), table, null))], [], new(0, 0, 0, 0, 0), null, []);
    }

    public Meal Meal { get; }

    public Plan Plan { get; }

    /// <summary>Whether a plan holds when its oven's curve and its late tends are left aside; ovens are held pair by pair instead.</summary>
    /// <param name="begun">Steps that outlast their helper's time, which no plan can mend any more.</param>
    public static bool Holds(Meal meal, Plan plan, IEnumerable<StepId>? begun = null) => PlanCheck.Check(meal, plan).All(breach =>
        breach.Rule is RuleId.OvenTemperature or RuleId.OvenLimits or RuleId.Tends
        || (breach is { Rule: RuleId.Availability, Step: { } step } && begun?.Contains(step) == true)) && OvenHolds(meal, plan);

    static bool OvenHolds(Meal meal, Plan plan)
    {
        var inside = plan.Steps.Where(step => step.Oven is not null)
            .Select(step => (step.Start, step.End, meal.Step(step.Step).WayOf(step.Option).Uses.Oven!.Celsius)).OrderBy(use => use.Start).ToArray();
        return inside.Index().All(later => inside.Take(later.Index).All(earlier =>
            earlier.Celsius.Meets(later.Item.Celsius) || later.Item.Start - earlier.End >= TheOven.MinutesBetween(earlier.Celsius, later.Item.Celsius)));
    }

    // Sometimes gone for a quarter of an hour, sometimes for hours.
    ImmutableArray<Window> HereOf(int index) => index == 0 || random.Next(2) == 0 ? [] : [new(At(20), At(120)), new(At(random.Next(2) == 0 ? 135 : 300), At(600))];

    Minute End(Dish dish) => steps.Where(step => dish.Steps.Any(one => one.Id == step.Step)).Max(step => step.End);

    Hold Around(int wait) => new(HoldPlace.Side, Least: Math.Max(0, wait - random.Next(0, 20)), 5, 10, Limit: wait + random.Next(0, 30), 1, null);

    Step Around(Step step) => step with
    {
        After = [.. step.After.Select(after =>
        {
            var gap = Planned(step.Id).Start - Planned(after.Step).End;
            return after with { Least = Math.Max(0, gap - random.Next(0, 30)), Most = random.Next(2) == 0 ? null : gap + random.Next(0, 30) };
        })],
        Window = random.Next(8) == 0 ? new(Planned(step.Id).Start - 5, Planned(step.Id).End + random.Next(0, 40)) : null,
    };

    PlannedStep Planned(StepId id) => steps.Single(step => step.Step == id);

    Dish AddDish(int index) => new(new($"d{index}"), $"d{index}", new("main"), 4, [], [], [.. Enumerable.Range(0, random.Next(1, 5)).Select(step => AddStep(index, step)).ToArray()]);

    Step AddStep(int dish, int index)
    {
        var way = RandomWay();
        var step = new StepBuilder($"d{dish}s{index}", 1).Build() with
        {
            Way = way,
            ChildSafe = true,
            After = [.. asked.Where(other => other.Id == new StepId($"d{dish}s{index - 1}") || random.Next(12) == 0).Select(other => new After(other.Id, 0, null))],
            Tends = way.Attention == Attention.Unattended && random.Next(3) == 0 ? [new("stir", 1, random.Next(4, 12), null, 3, true)] : [],
        };
        var start = step.After.Select(after => Planned(after.Step).End).Append(Zero).Max() + random.Next(0, 15);
        while (!TryPut(step, start))
        {
            start += 1;
        }

        asked.Add(step);
        return step;
    }

    Way RandomWay()
    {
        var uses = random.Next(8) switch
        {
            0 or 1 or 2 => Uses.Nothing with { Oven = new(null, random.Next(1, 3), Ranges[random.Next(Ranges.Length)]) },
            3 => Uses.Nothing with { Rings = random.Next(1, 3) },
            4 => Uses.Nothing with { Grill = new(null) },
            5 => Uses.Nothing with { Appliances = [new("mixer")] },
            _ => Uses.Nothing,
        };
        return new(Durations.Exactly(random.Next(1, 40)), (Attention)random.Next(3), 1, uses);
    }

    /// <summary>Puts it there if the plan so far, asked of the check itself, still holds.</summary>
    bool TryPut(Step step, Minute start)
    {
        var uses = step.Way.Uses;
        var helper = helpers[random.Next(helpers.Length)].Id;
        var planned = new PlannedStep(step.Id, start, start + step.Way.Minutes.Likely, -1, step.Way.Attention == Attention.HandsOn ? [helper] : [],
            uses.Oven is null ? null : TheOven.Id, uses.Grill is null ? null : new GrillId("grill"), uses.Appliances, 0);
        var own = step.Tends.SelectMany((tend, index) => tend.Times(planned.Minutes).Select((time, turn) =>
            new PlannedTend(step.Id, index, turn, start + time, tend.Minutes, helpers[random.Next(helpers.Length)].Id)));
        var dish = new Dish(new("all"), "all", new("main"), 4, [], [Hold.OnTheTable], [.. asked, step]);
        var table = start + 10_000;
        var meal = new Meal("Random", TimeZoneInfo.Utc, Zero, [new(new("main"), "main", table)], [],
            new([TheOven], 2, [new(new("grill"), TheOven.Id)], [new(new("mixer"), 1)]), [.. helpers], [dish]);
        var plan = new Plan(PlanStatus.Feasible, 1, 0, Zero, [new(new("main"), table, table)], [.. steps, planned], [.. tends, .. own], [], [], new(0, 0, 0, 0, 0), null, []);
        var broken = PlanCheck.Check(meal, plan).Any(breach => breach.Rule is not (RuleId.HoldLimits or RuleId.OvenTemperature or RuleId.OvenLimits));
        if (broken || !OvenHolds(meal, plan))
        {
            return false;
        }

        steps.Add(planned);
        tends.AddRange(plan.Tends[tends.Count..]);
        return true;
    }
}
