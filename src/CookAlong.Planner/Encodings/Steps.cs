using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using Google.OrTools.Sat;

namespace CookAlong.Planner.Encodings;

/// <summary>EveryStepOnce, StepLength, NotBefore and the host's choice of an option: each step starts once, done one of its ways.</summary>
internal static class Steps
{
    public static StepVariables Of(MealModel model, Dish dish, Step step, Near? near)
    {
        if (model.So?.Facts.FirstOrDefault(fact => fact.Step == step.Id) is { } fact)
        {
            return Begun(model, dish, step, fact);
        }

        var ways = step.Ways.ToList();
        var from = model.Clock.Earliest;
        var to = model.End - ways.Min(one => one.Way.Minutes.Likely);
        if (near?.Of(step.Id) is { } at)
        {
            from = Math.Max(from, at - near!.Minutes);
            to = Math.Min(to, at + near.Minutes);
        }

        var start = model.Time(from, to, $"{step.Id}");
        var taken = model.OneOf(ways.Count, model.Cp.TrueLiteral(), $"{step.Id} way");
        var variables = ways.Zip(taken, (one, literal) => new WayVariables(
            one.Option,
            one.Way,
            one.Way.Minutes.Likely,
            literal,
            model.Cp.NewOptionalFixedSizeIntervalVar(start, one.Way.Minutes.Likely, literal, $"{step.Id} {one.Option}"))).ToList();
        LinearExpr end = variables.Count == 1
            ? start + variables[0].Minutes
            : start + LinearExpr.WeightedSum(variables.Select(way => (BoolVar)way.Taken), variables.Select(way => (long)way.Minutes));
        return new StepVariables(dish, step, start, end, [.. variables], Fact: null);
    }

    private static StepVariables Begun(MealModel model, Dish dish, Step step, StepFact fact)
    {
        var start = model.Clock.Of(fact.Start);

        // A running step cannot have ended before now, whatever was expected of it.
        var end = fact.IsFinished ? model.Clock.Of(fact.End) : Math.Max(model.Clock.Of(fact.End), model.Clock.Earliest);
        var option = model.So!.Current.Step(step.Id).Option;
        var way = new WayVariables(option, step.WayOf(option), end - start, model.Cp.TrueLiteral(), Interval: null);
        return new StepVariables(dish, step, LinearExpr.Constant(start), LinearExpr.Constant(end), [way], fact);
    }
}
