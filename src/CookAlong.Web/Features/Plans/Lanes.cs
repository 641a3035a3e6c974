using System.Collections.Immutable;
using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Web.Features.Plans;

/// <summary>A plan sorted into lanes, in the order a kitchen is looked at: what is hot, what is used, who works.</summary>
public sealed class Lanes
{
    readonly Meal meal;
    readonly Plan plan;
    readonly ImmutableDictionary<StepId, (Step Step, Dish Dish)> steps;

    Lanes(Meal meal, Plan plan)
    {
        this.meal = meal;
        this.plan = plan;
        steps = meal.Dishes.SelectMany(dish => dish.Steps.Select(step => (step, dish))).ToImmutableDictionary(one => one.step.Id, one => (one.step, one.dish));
    }

    public static ImmutableArray<Lane> Of(Meal meal, Plan plan)
    {
        var lanes = new Lanes(meal, plan);
        return
        [
            .. meal.Kitchen.Ovens.Select(lanes.OfOven),
            .. lanes.OfRings(),
            .. meal.Kitchen.Grills.Select(lanes.OfGrill).Where(lane => !lane.Bars.IsEmpty),
            .. meal.Kitchen.Appliances.SelectMany(lanes.OfAppliance),
            .. meal.Helpers.Select(lanes.OfHelper),
        ];
    }

    /// <summary>Spans in which the picture has something to show. A wait that takes no place and nobody (a night in the fridge) is none.</summary>
    public static IEnumerable<(Minute From, Minute To)> Busy(Meal meal, Plan plan) =>
    [
        .. Of(meal, plan).SelectMany(lane => lane.Bars).Select(bar => (bar.From, bar.To)),
        .. plan.Ovens.SelectMany(oven => oven.Dial.Where(dial => dial.Celsius > 0).Select(dial => (dial.At, dial.At))),
        .. plan.Courses.Select(course => (course.Promised, course.TableTime)),
    ];

    Lane OfOven(Oven oven)
    {
        var inside = new List<(Bar Bar, int Shelves)>();
        inside.AddRange(plan.Steps.Where(step => step.Oven == oven.Id).Select(step => (BarOf(step, dishFirst: true), UsesOf(step).Oven!.Shelves)));
        inside.AddRange(plan.Holds.Where(hold => hold.Oven == oven.Id).Select(hold => (KeptWarm(hold), HoldOf(hold).Oven!.Shelves)));

        var shelves = Places.Assign([.. inside.Select(one => (one.Bar.From, one.Bar.To, one.Shelves))], oven.Shelves);
        var bars = inside.SelectMany((one, i) => Runs(shelves[i]).Select(run => one.Bar with { Row = run.First, RowSpan = run.Count }));
        return new Lane(
            LaneKind.Oven,
            oven.Name,
            $"{oven.Shelves} {(oven.Shelves == 1 ? "shelf" : "shelves")}{(oven.Fan ? ", fan" : "")}",
            Math.Max(oven.Shelves, shelves.SelectMany(places => places).DefaultIfEmpty(0).Max() + 1),
            [.. bars],
            Programme: plan.Ovens.SingleOrDefault(programme => programme.Oven == oven.Id));
    }

    IEnumerable<Lane> OfRings()
    {
        var bars = plan.Steps.Where(step => UsesOf(step).Rings > 0).Select(step => (Bar: BarOf(step), UsesOf(step).Rings)).ToList();
        return Numbered(LaneKind.Ring, "Ring", meal.Kitchen.Rings, bars);
    }

    Lane OfGrill(Grill grill) => new(
        LaneKind.Grill,
        meal.Kitchen.Grills.Length == 1 ? "Grill" : $"Grill {grill.Id}",
        grill.InsideOven is { } inside ? $"inside {PlaceNames.The(meal.Kitchen.Ovens.Single(oven => oven.Id == inside))}" : null,
        Rows: 1,
        [.. plan.Steps.Where(step => step.Grill == grill.Id).Select(step => BarOf(step))]);

    IEnumerable<Lane> OfAppliance(Appliance appliance)
    {
        var bars = plan.Steps.Where(step => step.Appliances.Contains(appliance.Id)).Select(step => (BarOf(step), 1)).ToList();
        return Numbered(LaneKind.Appliance, PlaceNames.Of(appliance.Id), appliance.Count, bars);
    }

    Lane OfHelper(Helper helper, int mark)
    {
        var bars = plan.Steps.Where(step => step.Helpers.Contains(helper.Id)).Select(step => BarOf(step))
            .Concat(plan.Tends.Where(tend => tend.Helper == helper.Id).Select(TendBar));
        return new Lane(LaneKind.Person, helper.Name, PlaceNames.NoteOf(helper, meal.TimeZone), Rows: 1, [.. bars.OrderBy(bar => bar.From)], mark, Away(helper));
    }

    static IEnumerable<Lane> Numbered(LaneKind kind, string name, int count, List<(Bar Bar, int Count)> bars)
    {
        var places = Places.Assign([.. bars.Select(one => (one.Bar.From, one.Bar.To, one.Count))], count);
        var used = places.SelectMany(each => each).DefaultIfEmpty(-1).Max() + 1;
        return Enumerable.Range(0, used).Select(number => new Lane(
            kind,
            count == 1 ? name : $"{name} {number + 1}",
            Note: null,
            Rows: 1,
            [.. bars.Where((_, i) => places[i].Contains(number)).Select(one => one.Bar).OrderBy(bar => bar.From)]));
    }

    ImmutableArray<(Minute From, Minute To)> Away(Helper helper)
    {
        if (helper.Available.IsEmpty)
        {
            return [];
        }

        var from = new Minute(plan.NotBefore.SinceEpoch - (24 * 60));
        var away = ImmutableArray.CreateBuilder<(Minute, Minute)>();
        foreach (var here in helper.Available)
        {
            away.Add((from, here.From));
            from = here.To;
        }

        away.Add((from, meal.LastTableTime + (24 * 60)));
        return away.ToImmutable();
    }

    /// <summary>Neighbouring shelves are one bar, others one each.</summary>
    static IEnumerable<(int First, int Count)> Runs(ImmutableArray<int> places)
    {
        for (var i = 0; i < places.Length;)
        {
            var count = 1;
            while (i + count < places.Length && places[i + count] == places[i] + count)
            {
                count++;
            }

            yield return (places[i], count);
            i += count;
        }
    }

    Bar BarOf(PlannedStep planned, bool dishFirst = false)
    {
        var (step, dish) = steps[planned.Step];
        return new Bar(BarKind.Step, planned.Step, dishFirst ? dish.Name : step.Text, dish.Name, planned.Start, planned.End);
    }

    Bar TendBar(PlannedTend planned)
    {
        var (step, dish) = steps[planned.Step];
        return new Bar(BarKind.Tend, planned.Step, step.Tends[planned.Tend].Text, dish.Name, planned.At, planned.End);
    }

    Bar KeptWarm(PlannedHold hold)
    {
        var dish = meal.Dishes.Single(one => one.Id == hold.Dish);
        return new Bar(BarKind.KeptWarm, dish.Steps[^1].Id, $"{dish.Name}, kept warm", dish.Name, hold.From, hold.To);
    }

    Hold HoldOf(PlannedHold hold) => meal.Dishes.Single(dish => dish.Id == hold.Dish).Holds[hold.Hold];

    Uses UsesOf(PlannedStep planned) => steps[planned.Step].Step.WayOf(planned.Option).Uses;
}
