using System.Collections.Immutable;
using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Planner.Ovens;

namespace CookAlong.Planner;

/// <summary>Writes a draft and its names out as a plan: places, people, holds, the ovens' programmes and what it costs.</summary>
internal static class PlanWriting
{
    /// <param name="doers">Who does each step that has not begun (no tend), and each tend.</param>
    public static Plan Write(Meal meal, Clock clock, SoFar? so, Draft draft, ILookup<(StepId Step, (int Tend, int Turn)? Tend), HelperId> doers, Prices prices)
    {
        var told = so?.Current;
        var begun = so?.Facts.Select(fact => fact.Step).ToHashSet() ?? [];
        var stays = meal.Kitchen.Ovens.ToDictionary(oven => oven.Id, oven => Stays(meal, clock, begun, draft, oven).ToList());
        var ovens = meal.Kitchen.Ovens.Select(oven => Programme(clock, so, oven, stays[oven.Id], prices.DialTurnOf(meal))).ToImmutableArray();
        var plan = new Plan(
            PlanStatus.Feasible,
            Gap: 1,
            SolveMilliseconds: 0,
            clock.Origin,
            [.. meal.Courses.Select(course => new PlannedCourse(course.Id, clock.At(draft.Tables[course.Id]), course.TableTime))],
            [.. meal.Steps.Select(step => Step(step))],
            [.. draft.Tends.OrderBy(tend => tend.Start).Select(Tend)],
            [.. draft.Holds.Select(Hold)],
            ovens,
            new PlanCost(0, 0, 0, 0, 0),
            Confidence: null,
            Conflicts: []);
        var measures = new PlanMeasures(meal, plan);
        return plan with
        {
            Cost = new PlanCost(
                plan.Courses.Max(course => course.LateMinutes),
                measures.Waiting,
                measures.KitchenMinutes,
                ovens.Sum(oven => Dials.Changes(oven.Dial.Select(dial => (clock.Of(dial.At), dial.Celsius)), stays[oven.Oven])),
                prices.Sum(meal, plan))
            {
                Cushion = prices.Cushion,
                Leans = prices.Leans,
            },
        };

        PlannedStep Step(Step step)
        {
            var drafted = draft.Steps[step.Id];
            var way = step.WayOf(drafted.Option);
            var helpers = begun.Contains(step.Id) ? told!.Step(step.Id).Helpers : [.. doers[(step.Id, null)]];
            return new PlannedStep(
                step.Id, clock.At(drafted.Start), clock.At(drafted.End), drafted.Option, helpers, drafted.Oven, drafted.Grill, way.Uses.Appliances, Slack: 0);
        }

        PlannedTend Tend(DraftTend tend)
        {
            var helper = tend.Done
                ? told!.Tends.Where(one => (one.Step, one.Tend, one.Turn) == (tend.Step, tend.Tend, tend.Turn)).Select(one => one.Helper).FirstOrDefault()
                : doers[(tend.Step, (tend.Tend, tend.Turn))].Single();
            return new PlannedTend(tend.Step, tend.Tend, tend.Turn, clock.At(tend.Start), tend.Minutes, helper);
        }

        PlannedHold Hold(DraftHold hold)
        {
            var dish = meal.Dishes.Single(dish => dish.Id == hold.Dish);
            return new PlannedHold(dish.Id, hold.Hold, dish.Holds[hold.Hold].Place, clock.At(hold.From), clock.At(draft.Tables[dish.Course]), hold.Oven);
        }
    }

    private static IEnumerable<Stay> Stays(Meal meal, Clock clock, HashSet<StepId> begun, Draft draft, Oven oven)
    {
        foreach (var dish in meal.Dishes)
        {
            foreach (var step in dish.Steps)
            {
                var drafted = draft.Steps[step.Id];
                if (drafted.Oven == oven.Id)
                {
                    var celsius = step.WayOf(drafted.Option).Uses.Oven!.Celsius;
                    yield return Inside(drafted.Start, drafted.End, celsius, begun.Contains(step.Id));
                }
            }

            foreach (var hold in draft.Holds.Where(hold => hold.Dish == dish.Id && hold.Oven == oven.Id))
            {
                var isIn = hold.From <= clock.Earliest && dish.Steps.All(step => begun.Contains(step.Id));
                yield return Inside(hold.From, draft.Tables[dish.Course], dish.Holds[hold.Hold].Oven!.Celsius, isIn);
            }
        }

        Stay Inside(int start, int end, CelsiusRange asked, bool isIn) =>
            new(start, end, Encodings.Places.Within(oven, asked) ?? asked, MayYield: isIn);
    }

    private static OvenProgramme Programme(Clock clock, SoFar? so, Oven oven, List<Stay> stays, long dialTurn)
    {
        var from = clock.Earliest;
        var now = so?.OvensNow.GetValueOrDefault(oven.Id, oven.StartsAt) ?? oven.StartsAt;
        var points = OvenCurve.Points(oven, from, now, stays, dialTurn);
        var isOn = so is not null && stays.Any(stay => stay.Start <= from && from < stay.End);
        var dial = Dials.Of(points, off: oven.StartsAt, isOn).Select(one => new DialSetting(clock.At(one.At), one.Celsius));
        var past = so?.Current.Ovens.FirstOrDefault(one => one.Oven == oven.Id);
        var first = clock.At(from);
        return new OvenProgramme(
            oven.Id,
            [
                .. past?.Points.Where(point => point.At < first) ?? [],
                .. points.Select(point => new OvenPoint(clock.At(point.At), point.Celsius)),
            ],
            [.. past?.Dial.Where(setting => setting.At < first) ?? [], .. dial]);
    }
}
