using CookAlong.Domain.Meals;
using Google.OrTools.Sat;

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

            if (!step.HasBegun && model.Told is { } told && told.Step(step.Step.Id) is { } was)
            {
                AddMoved(model, step, model.Clock.Of(told.Carried(step.Dish, was.Start)), told.MovedMinute);
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

        AddUpTo(model, last - first, Prices.KitchenMost, Prices.KitchenMinute, "kitchen");
    }

    private static void AddAhead(MealModel model, StepVariables step, LinearExpr table)
    {
        AddUpTo(model, table - step.Start - Prices.AheadMinutes, Prices.AheadMost, Prices.AheadMinute, $"{step.Step.Id} ahead");
    }

    /// <summary>Charges for each minute above nought, and for no more than <paramref name="most"/> of them.</summary>
    private static void AddUpTo(MealModel model, LinearExpr minutes, int most, int price, string name)
    {
        var counted = model.Cp.NewIntVar(0, most, name);
        model.Charge(counted, price);
        if (model.End + Reach(model) <= most)
        {
            model.Cp.Add(counted >= minutes);
            return;
        }

        var isBeyond = model.Cp.NewBoolVar($"{name} beyond");
        model.Cp.Add(counted >= minutes).OnlyEnforceIf(isBeyond.Not());
        model.Cp.Add(counted >= most).OnlyEnforceIf(isBeyond);
    }

    private static void AddRush(MealModel model, StepVariables step, WayVariables way, LinearExpr table)
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

    private static void AddMoved(MealModel model, StepVariables step, int told, int price)
    {
        var moved = model.Cp.NewIntVar(0, model.End + Math.Abs(told), $"{step.Step.Id} moved");
        model.Cp.Add(moved >= step.Start - told);
        model.Cp.Add(moved >= told - step.Start);
        model.Charge(moved, price);
    }

    /// <summary>How far before the clock's first minute something that has begun may lie.</summary>
    private static int Reach(MealModel model) =>
        model.So is null ? 0 : model.So.Facts.Select(fact => Math.Max(0, -model.Clock.Of(fact.Start))).Append(0).Max();
}
