using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using Google.OrTools.Sat;

namespace CookAlong.Planner;

/// <summary>Tells the solver where an earlier answer lay.</summary>
internal static class Hints
{
    /// <summary>Every unknown of a model whose unknowns are the same ones: of the same meal and clock, people put the same way.</summary>
    public static void All(MealModel model, IReadOnlyList<long> values)
    {
        var unknowns = model.Cp.Model.Variables.Count;
        if (unknowns != values.Count)
        {
            throw new ArgumentException($"{values.Count} values for {unknowns} unknowns", nameof(values));
        }

        var hint = new PartialVariableAssignment();
        hint.Vars.AddRange(Enumerable.Range(0, unknowns));
        hint.Values.AddRange(values);
        model.Cp.Model.SolutionHint = hint;
    }

    public static void FromDraft(MealModel model, Draft draft)
    {
        foreach (var step in model.Steps.Values.Where(step => !step.HasBegun))
        {
            var drafted = draft.Steps[step.Step.Id];
            Add(model, step, drafted.Start, drafted.Option, drafted.Oven, drafted.Grill);
        }

        foreach (var tend in draft.Tends)
        {
            var variables = model.Tends.First(one => (one.Step.Id, one.Tend, one.Turn) == (tend.Step, tend.Tend, tend.Turn));
            if (variables is { Done: false, Start: IntVar start })
            {
                model.Cp.AddHint(start, tend.Start);
            }
        }

        AddTables(model, course => draft.Tables[course]);
        foreach (var hold in draft.Holds)
        {
            AddHold(model, hold.Dish, hold.Hold, hold.From);
        }

        model.DialTurns?.Hint(stay => Span(draft, stay));
    }

    private static (int Start, int End)? Span(Draft draft, OvenStay stay)
    {
        if (stay.Step is { } step)
        {
            var drafted = draft.Steps[step.Id];
            return drafted.Oven == stay.Oven.Id && drafted.Option == stay.Which ? (drafted.Start, drafted.End) : null;
        }

        var hold = draft.Holds.FirstOrDefault(hold => hold.Dish == stay.Dish.Id);
        return hold.Oven == stay.Oven.Id && hold.Hold == stay.Which ? (hold.From, draft.Tables[stay.Dish.Course]) : null;
    }

    /// <summary>The plan people were told, moved right as far as what has begun forces it.</summary>
    public static void FromPlan(MealModel model, SoFar so)
    {
        var now = model.Clock.At(model.Clock.Earliest);
        var moved = Retiming.MoveRight(model.Meal, so.Current, [.. so.Facts], now);
        foreach (var step in model.Steps.Values.Where(step => !step.HasBegun))
        {
            var planned = so.Current.Step(step.Step.Id);
            Add(model, step, model.Clock.Of(moved.Steps[step.Step.Id].Start), planned.Option, planned.Oven, planned.Grill);
        }

        foreach (var tend in model.Tends.Where(tend => tend is { Done: false, Start: IntVar }))
        {
            if (moved.Tends.TryGetValue((tend.Step.Id, tend.Tend, tend.Turn), out var at))
            {
                model.Cp.AddHint((IntVar)tend.Start, model.Clock.Of(at));
            }
        }

        AddTables(model, course => model.Clock.Of(moved.TableTimes[course]));
        foreach (var hold in so.Current.Holds)
        {
            AddHold(model, hold.Dish, hold.Hold, model.Clock.Of(hold.From));
        }
    }

    /// <summary>The plan people last saw. The meal may have changed since: what no longer is, is passed over; the rest need not fit together.</summary>
    public static void FromTold(MealModel model, Told told)
    {
        int At(Dish dish, Minute at) => Math.Clamp(model.Clock.Of(told.Carried(dish, at)), model.Clock.Earliest, model.End);
        foreach (var step in model.Steps.Values)
        {
            if (told.Step(step.Step.Id) is { } planned)
            {
                Add(model, step, At(step.Dish, planned.Start), planned.Option, planned.Oven, planned.Grill);
            }
        }

        var tends = told.Plan.Tends.ToDictionary(tend => (tend.Step, tend.Tend, tend.Turn));
        foreach (var tend in model.Tends)
        {
            if (tend.Start is IntVar start && tends.TryGetValue((tend.Step.Id, tend.Tend, tend.Turn), out var planned))
            {
                model.Cp.AddHint(start, At(model.Steps[tend.Step.Id].Dish, planned.At));
            }
        }

        AddTables(model, id => Math.Max(
            model.Clock.Of(model.Meal.Courses.Single(course => course.Id == id).TableTime),
            told.Plan.Courses.Where(course => course.Course == id).Select(course => model.Clock.Of(course.TableTime)).DefaultIfEmpty(0).Single()));
        foreach (var dish in model.Meal.Dishes)
        {
            if (told.Plan.Holds.FirstOrDefault(hold => hold.Dish == dish.Id) is { } held && held.Hold < dish.Holds.Length)
            {
                AddHold(model, dish.Id, held.Hold, At(dish, held.From));
            }
        }
    }

    private static void AddTables(MealModel model, Func<CourseId, int> table)
    {
        foreach (var (open, _) in model.OpenTables)
        {
            model.Cp.AddHint(open, table(model.Tables.First(one => ReferenceEquals(one.Value, open)).Key));
        }
    }

    private static void Add(MealModel model, StepVariables step, int start, int option, OvenId? oven, GrillId? grill)
    {
        model.Cp.AddHint((IntVar)step.Start, start);
        if (step.Ways.Length > 1)
        {
            foreach (var way in step.Ways)
            {
                model.Cp.AddHint(way.Taken, way.Option == option);
            }
        }

        // A place that is the only one shares its literal with the way, which has its hint already.
        var ways = step.Ways.Select(way => way.Taken).ToHashSet(ReferenceEqualityComparer.Instance);
        foreach (var stay in model.OvenStays.Where(stay => stay.Step?.Id == step.Step.Id && !ways.Contains(stay.Here)))
        {
            model.Cp.AddHint(stay.Here, stay.Which == option && stay.Oven.Id == oven);
        }

        foreach (var stay in model.GrillStays.Where(stay => stay.Step.Id == step.Step.Id && !ways.Contains(stay.Here)))
        {
            model.Cp.AddHint(stay.Here, stay.Option == option && stay.Grill.Id == grill);
        }
    }

    private static void AddHold(MealModel model, DishId dish, int chosen, int from)
    {
        var hold = model.HoldsOf.FirstOrDefault(hold => hold.Dish.Id == dish);
        if (hold is null || hold.Chosen.Length == 1)
        {
            return;
        }

        for (var index = 0; index < hold.Chosen.Length; index++)
        {
            model.Cp.AddHint(hold.Chosen[index]!, index == chosen);
        }

        if (hold.GoesIn[chosen] is IntVar goesIn)
        {
            model.Cp.AddHint(goesIn, from);
        }
    }
}
