using CookAlong.Domain;
using CookAlong.Domain.Planning;
using Google.OrTools.Sat;

namespace CookAlong.Planner;

/// <summary>Tells the solver where an earlier answer lay.</summary>
internal static class Hints
{
    public static void FromDraft(MealModel model, Draft draft)
    {
        foreach (var step in model.Steps.Values.Where(step => !step.HasBegun))
        {
            var drafted = draft.Steps[step.Step.Id];
            Add(model, step, drafted.Start, drafted.Option, drafted.Oven, drafted.Grill);
        }

        foreach (var (table, _) in model.OpenTables)
        {
            var course = model.Tables.First(one => ReferenceEquals(one.Value, table)).Key;
            model.Cp.AddHint(table, draft.Tables[course]);
        }

        foreach (var hold in draft.Holds)
        {
            AddHold(model, hold.Dish, hold.Hold, hold.From);
        }
    }

    /// <summary>The plan people were told, what cannot be as it said any more as soon as now allows.</summary>
    public static void FromPlan(MealModel model, Plan plan)
    {
        foreach (var step in model.Steps.Values.Where(step => !step.HasBegun))
        {
            var planned = plan.Step(step.Step.Id);
            Add(model, step, Math.Max(model.Clock.Earliest, model.Clock.Of(planned.Start)), planned.Option, planned.Oven, planned.Grill);
        }

        foreach (var hold in plan.Holds)
        {
            AddHold(model, hold.Dish, hold.Hold, model.Clock.Of(hold.From));
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
