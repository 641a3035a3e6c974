using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Planner.Encodings;

namespace CookAlong.Planner.Quick;

/// <summary>Lays a meal out for the quick search.</summary>
internal sealed partial class Reading
{
    private const int Far = 1_000_000;

    private readonly Meal meal;
    private readonly Clock clock;
    private readonly Prices prices;
    private readonly Told? told;
    private readonly SoFar? so;
    private readonly Dictionary<StepId, StepFact> facts;
    private readonly Retimed? moved;
    private readonly int margin;
    private readonly int width;
    private readonly Rows rows;
    private readonly Dictionary<StepId, int> positions;
    private readonly List<List<CelsiusRange>> ranges;

    private Reading(Meal meal, Clock clock, Prices prices, Told? told, SoFar? so)
    {
        (this.told, this.so) = (told, so);
        facts = so?.Facts.ToDictionary(fact => fact.Step) ?? [];
        moved = so is null ? null : Retiming.MoveRight(meal, so.Current, [.. so.Facts], clock.At(clock.Earliest));
        (this.meal, this.clock, this.prices) = (meal, clock, prices);
        margin = Math.Max(Clock.MostLateMinutes, meal.Steps.Sum(step => step.Ways.Max(way => way.Way.Minutes.Likely)) / 2);
        width = margin + clock.End(meal) + 1;
        rows = new Rows(meal, clock, margin, width);
        positions = meal.Steps.Select((step, index) => (step.Id, index)).ToDictionary(one => one.Id, one => one.index);
        ranges = [.. meal.Kitchen.Ovens.Select(_ => new List<CelsiusRange>())];
    }

    /// <summary>Null when some step cannot be done at all: no way of it has a place, or hands.</summary>
    public static Work? Of(Meal meal, Clock clock, Told? told, Prices prices, SoFar? so = null) => new Reading(meal, clock, prices, told, so).Read();

    private Work? Read()
    {
        var steps = meal.Dishes.SelectMany((dish, index) => dish.Steps.Select(step => facts.TryGetValue(step.Id, out var fact) ? Begun(dish, index, step, fact) : Step(dish, index, step))).ToArray();
        foreach (var step in steps)
        {
            foreach (var gap in step.Before)
            {
                steps[gap.Step].After.Add(gap with { Step = step.Index });
            }
        }

        var dishes = meal.Dishes.Select(dish => Dish(dish, steps)).ToArray();
        if (steps.Any(step => step.Ways.Length == 0) || dishes.Any(dish => dish.Holds.Length == 0))
        {
            return null;
        }

        var begun = so is null ? null : Begun(steps, dishes);
        return new Work
        {
            Begun = begun,
            Moved = moved is null ? null : Moved(moved, steps, dishes),
            Served = [.. meal.Courses.Select(Served)],
            Meal = meal,
            Clock = clock,
            Steps = steps,
            ToCome = [.. steps.Where(step => step.Begun is null || steps.All(one => one.Begun is not null)).Select(step => step.Index)],
            Dishes = dishes,
            Ovens = [.. meal.Kitchen.Ovens.Select((oven, index) => new QuickOven(Gaps(oven, ranges[index])))],
            Promised = [.. meal.Courses.Select(course => clock.Of(course.TableTime))],
            Told = told is null || so is not null ? null : AsTold(steps, dishes),
            Moving = told?.Price ?? default,
            Prices = prices,
            Crowds = [.. meal.Courses.SelectMany((course, index) => prices.Crowds.Select(crowd => new QuickCrowd(index, crowd.Minutes, crowd.Hands(meal, course), crowd.Price)))],
            HandsOn = [.. meal.Courses.Select((_, course) => steps.Where(step => step.Course == course && step.Ways.Any(way => way.IsHandsOn)).Select(step => step.Index).ToArray())],
            InOven = so is null && Prices.CountsDialChanges(meal) ? [.. steps.Where(step => step.Ways.Any(way => way.Spots.Any(spot => spot.Oven >= 0))).Select(step => step.Index)] : [],
            Margin = margin,
            Width = width,
            Taken = rows.Taken,
        };
    }

    private QuickStep Step(Dish dish, int dishIndex, Step step) => new(
        positions[step.Id],
        step,
        dishIndex,
        Course(dish),
        [.. step.Ways.Select(way => Way(step, way.Option, way.Way)).OfType<QuickWay>()],
        [.. step.After.Where(after => !facts.ContainsKey(after.Step)).Select(after => new QuickGap(positions[after.Step], after.Least, after.Most ?? Far))],
        [],
        Math.Max(step.At is { } at ? clock.Of(at) : -Far, step.Window is { } from ? clock.Of(from.From) : -Far),
        so is null && step.Window is { } to ? clock.Of(to.To) : Far,
        so is null && step.At is { } start ? clock.Of(start) : null,
        !dish.Steps.Any(other => !facts.ContainsKey(other.Id) && other.After.Any(after => after.Step == step.Id && after.Least >= 0)))
    {
        Told = told?.Step(step.Id) is { } was ? clock.Of(told.Carried(dish, was.Start)) : null,
        ToldTo = told?.Step(step.Id) is { } with ? rows.Helpers(helper => with.Helpers.Contains(helper.Id)) : [],
        Floor = Floor(step),
        Overdue = so is null ? [] : [.. Overdue(step)],
    };

    private QuickWay? Way(Step step, int option, Way way)
    {
        var minutes = way.Minutes.Likely;
        var shares = way.Attention == Attention.HandsOn ? Shares(step, way.People) : [];
        var tends = step.Tends.SelectMany((tend, index) => tend.Times(minutes).Select((nominal, turn) => new QuickTend(
            index, turn,
            (int)Math.Max(0, (long)nominal - tend.Give), ToldAt(step, index, turn) ?? nominal, (int)Math.Min(minutes - tend.Minutes, (long)nominal + tend.Give),
            tend.Minutes, ToldFirst(rows.Helpers(helper => helper.MayDo(step, tend)), ToldTo(step, index, turn)))
        {
            ToldTo = ToldTo(step, index, turn),
        })).ToArray();
        var spots = Spots(way.Uses);
        return spots.Length == 0 || shares.Any(share => share.Able.Length < share.Count) || tends.Any(tend => tend.Able.Length == 0 || tend.From > tend.To)
            ? null
            : new QuickWay(option, minutes, way.Attention == Attention.HandsOn, way.People, shares, spots, tends, way.Attention == Attention.Nearby ? rows.Absent : -1);
    }

    private QuickShare[] Shares(Step step, int people)
    {
        var able = ToldFirst(rows.Helpers(helper => helper.MayDo(step)), rows.Helpers(helper => told?.Step(step.Id)?.Helpers.Contains(helper.Id) == true));
        if (step.By.IsEmpty)
        {
            return [new(people, able)];
        }

        var named = rows.Helpers(helper => step.By.Contains(helper.Id));
        return named.Length >= people
            ? [new(people, [.. named.Intersect(able)])]
            : [new(named.Length, [.. named.Intersect(able)]), new(people - named.Length, [.. able.Except(named)])];
    }

    private QuickSpot[] Spots(Uses uses)
    {
        if (RingsAndAppliances(uses) is not { } common)
        {
            return [];
        }

        var spots =
            from oven in uses.Oven is { } use ? OvensFor(use.Oven, use.Shelves, use.Celsius) : [(-1, -1, 0, null)]
            from grill in uses.Grill is { } asked
                ? Enumerable.Range(0, meal.Kitchen.Grills.Length).Where(grill => asked.Grill is null || asked.Grill == meal.Kitchen.Grills[grill].Id)
                : [-1]
            select Spot(oven.Index, oven.Range, oven.Earliest, oven.Id, grill, uses.Oven?.Shelves ?? 0, common);
        return [.. spots.OfType<QuickSpot>()];
    }

    /// <summary>Null where the kitchen never has so many.</summary>
    private List<QuickTake>? RingsAndAppliances(Uses uses)
    {
        var takes = new List<QuickTake>();
        return (uses.Rings == 0 || rows.Take(takes, rows.Rings, uses.Rings))
            && uses.Appliances.GroupBy(id => id).All(appliance => rows.Appliance(appliance.Key) is { } row && rows.Take(takes, row, appliance.Count()))
            ? takes
            : null;
    }

    private QuickSpot? Spot(int oven, int range, int earliest, OvenId? id, int grill, int shelves, List<QuickTake> common)
    {
        var takes = new List<QuickTake>(common);
        var inside = grill < 0 ? null : meal.Kitchen.Grills[grill].InsideOven;
        var cavity = inside is null ? -1 : meal.Kitchen.Ovens.ToList().FindIndex(one => one.Id == inside);
        // A grill in the cavity takes the whole of it.
        var fits = (oven < 0 || rows.Take(takes, rows.Oven(oven), shelves))
            && (grill < 0 || rows.Take(takes, rows.Grill(grill), 1))
            && (cavity < 0 || (cavity != oven && rows.Take(takes, rows.Oven(cavity), meal.Kitchen.Ovens[cavity].Shelves)));
        return fits ? new QuickSpot(oven, range, earliest, id, grill < 0 ? null : meal.Kitchen.Grills[grill].Id, [.. takes]) : null;
    }

    private IEnumerable<(int Index, int Range, int Earliest, OvenId? Id)> OvensFor(OvenId? asked, int shelves, CelsiusRange celsius)
    {
        foreach (var (index, oven) in meal.Kitchen.Ovens.Index())
        {
            if ((asked ?? oven.Id) == oven.Id && oven.Shelves >= shelves && Places.Within(oven, celsius) is { } kept)
            {
                var now = so?.OvensNow.GetValueOrDefault(oven.Id, oven.StartsAt) ?? oven.StartsAt;
                var cold = new CelsiusRange(now, now, now);
                yield return (index, Range(index, kept), clock.Earliest + oven.MinutesBetween(cold, kept), oven.Id);
            }
        }
    }

    private int Range(int oven, CelsiusRange celsius)
    {
        if (!ranges[oven].Contains(celsius))
        {
            ranges[oven].Add(celsius);
        }

        return ranges[oven].IndexOf(celsius);
    }

    private QuickDish Dish(Dish dish, QuickStep[] steps)
    {
        var own = dish.Steps.Select(step => positions[step.Id]).ToArray();
        // The first that fits is taken, and another might be in the way of what was told beside it.
        var toldIn = told?.Plan.Holds.FirstOrDefault(held => held.Dish == dish.Id)?.Oven;
        var holds = dish.Holds.Select((hold, index) => new QuickHold(
            index, hold, prices.CushionOf(hold),
            hold.Oven is { } warm
                ? [.. OvensFor(null, warm.Shelves, warm.Celsius).OrderBy(oven => oven.Id == toldIn ? 0 : 1).Select(oven => Spot(oven.Index, oven.Range, oven.Earliest, oven.Id, -1, warm.Shelves, [])).OfType<QuickSpot>()]
                : []));
        return new QuickDish(dish, Course(dish), [.. holds.Where(hold => (hold.Hold.Oven is null || hold.Spots.Length > 0) && (IsIn(dish) is not { } held || held.Hold == hold.Index))], own, own.Count(step => steps[step].IsLast));
    }

    private int Course(Dish dish) => meal.Courses.ToList().FindIndex(course => course.Id == dish.Course);

    private static int[,] Gaps(Oven oven, List<CelsiusRange> ranges)
    {
        var gaps = new int[ranges.Count, ranges.Count];
        foreach (var (from, before) in ranges.Index())
        {
            foreach (var (to, after) in ranges.Index())
            {
                gaps[from, to] = oven.MinutesBetween(before, after);
            }
        }

        return gaps;
    }
}
