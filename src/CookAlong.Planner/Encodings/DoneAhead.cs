using CookAlong.Domain;
using CookAlong.Domain.Planning.Menu;
using Google.OrTools.Sat;

namespace CookAlong.Planner.Encodings;

/// <summary>Which steps lie before the kitchen day, and the price of each.</summary>
internal sealed class DoneAhead
{
    private readonly Dictionary<StepId, BoolVar> ahead = [];

    public DoneAhead(MealModel model)
    {
        LastTable = Last(model);
        var reach = model.End + Reach(model);
        if (reach <= Prices.KitchenMost)
        {
            return;
        }

        var bounds = new Bounds(model.Meal);
        foreach (var step in model.Steps.Values.Where(step => !IsOnTheDay(model, bounds, step)))
        {
            var isAhead = ahead[step.Step.Id] = model.Cp.NewBoolVar($"{step.Step.Id} ahead");
            model.Cp.Add(step.Start < LastTable - Prices.KitchenMost).OnlyEnforceIf(isAhead);
            model.Cp.Add(step.Start >= LastTable - Prices.KitchenMost).OnlyEnforceIf(isAhead.Not());
            model.Charge(isAhead, Prices.Ahead, step.Step.Id);
        }
    }

    public LinearExpr LastTable { get; }

    /// <summary>Null where it cannot be.</summary>
    public BoolVar? Of(StepVariables step) => ahead.GetValueOrDefault(step.Step.Id);

    /// <summary>How far before the clock's first minute something that has begun may lie.</summary>
    public static int Reach(MealModel model) =>
        model.So is null ? 0 : model.So.Facts.Select(fact => Math.Max(0, -model.Clock.Of(fact.Start))).Append(0).Max();

    /// <summary>Its gaps, its dish's hold or its hour keep it too near the table to be done ahead.</summary>
    private static bool IsOnTheDay(MealModel model, Bounds bounds, StepVariables step) =>
        model.So is null && bounds.EarliestEnd(step.Step) is { } end
        && model.End - (model.Clock.Of(end) - step.Ways.Max(way => way.Minutes)) <= Prices.KitchenMost;

    private static LinearExpr Last(MealModel model)
    {
        if (model.Tables.Count == 1)
        {
            return model.Tables.Values.Single();
        }

        var last = model.Cp.NewIntVar(-Reach(model), model.End, "last table");
        model.Cp.AddMaxEquality(last, model.Tables.Values);
        return last;
    }
}
