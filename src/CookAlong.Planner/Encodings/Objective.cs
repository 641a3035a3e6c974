using CookAlong.Domain.Meals;

namespace CookAlong.Planner.Encodings;

/// <summary>The prices of <see cref="Prices"/> that no rule's encoding charges itself.</summary>
internal static class Objective
{
    public static void Add(MealModel model)
    {
        AddKitchenMinutes(model);
        foreach (var step in model.Steps.Values)
        {
            var table = model.Tables[step.Dish.Course];
            AddAhead(model, step, table);
            foreach (var way in step.Ways.Where(way => way.Way.Attention == Attention.HandsOn))
            {
                AddRush(model, step, way, table);
            }

            if (model.So is { } so && !step.HasBegun)
            {
                AddMoved(model, step, model.Clock.Of(so.Current.Step(step.Step.Id).Start));
            }
        }
    }

    private static void AddKitchenMinutes(MealModel model)
    {
        var handsOn = model.Steps.Values
            .SelectMany(step => step.Ways.Where(way => way.Way.Attention == Attention.HandsOn).Select(way => (step.Start, way.Taken)))
            .ToList();
        if (handsOn.Count == 0)
        {
            return;
        }

        var first = model.Cp.NewIntVar(-Reach(model), model.End, "first hands");
        foreach (var (start, taken) in handsOn)
        {
            model.Cp.Add(first <= start).OnlyEnforceIf(taken);
        }

        var last = model.Cp.NewIntVar(-Reach(model), model.End, "last table");
        foreach (var table in model.Tables.Values)
        {
            model.Cp.Add(last >= table);
        }

        model.Cp.Add(last >= first);
        model.Charge(last - first, Prices.KitchenMinute);
    }

    private static void AddAhead(MealModel model, StepVariables step, Google.OrTools.Sat.LinearExpr table)
    {
        var ahead = model.Cp.NewIntVar(0, model.End + Reach(model), $"{step.Step.Id} ahead");
        model.Cp.Add(ahead >= table - step.Start - Prices.AheadMinutes);
        model.Charge(ahead, Prices.AheadMinute);
    }

    private static void AddRush(MealModel model, StepVariables step, WayVariables way, Google.OrTools.Sat.LinearExpr table)
    {
        var rush = model.Cp.NewIntVar(0, way.Minutes, $"{step.Step.Id} rush");
        var intoRush = step.Start + way.Minutes - table + Prices.RushMinutes;
        if (way.Minutes >= Prices.RushMinutes)
        {
            // No step ends after its table, so no more than the last half hour of it can count.
            model.Cp.Add(rush >= intoRush).OnlyEnforceIf(way.Taken);
        }
        else
        {
            var wholly = model.Cp.NewBoolVar($"{step.Step.Id} wholly in the rush");
            model.Cp.Add(rush >= way.Minutes).OnlyEnforceIf([wholly, way.Taken]);
            model.Cp.Add(rush >= intoRush).OnlyEnforceIf([wholly.Not(), way.Taken]);
        }

        model.Charge(rush, (long)Prices.RushMinute * way.Way.People);
    }

    private static void AddMoved(MealModel model, StepVariables step, int told)
    {
        var moved = model.Cp.NewIntVar(0, model.End + Math.Abs(told), $"{step.Step.Id} moved");
        model.Cp.Add(moved >= step.Start - told);
        model.Cp.Add(moved >= told - step.Start);
        model.Charge(moved, Prices.MovedMinute);
    }

    /// <summary>How far before the clock's first minute something that has begun may lie.</summary>
    private static int Reach(MealModel model) =>
        model.So is null ? 0 : model.So.Facts.Select(fact => Math.Max(0, -model.Clock.Of(fact.Start))).Append(0).Max();
}
