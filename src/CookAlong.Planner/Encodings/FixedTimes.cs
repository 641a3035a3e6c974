using CookAlong.Domain;
using CookAlong.Domain.Meals;
using Google.OrTools.Sat;

namespace CookAlong.Planner.Encodings;

/// <summary>FixedTimes: a step with a fixed start or a window keeps it.</summary>
internal static class FixedTimes
{
    public static void Add(MealModel model)
    {
        foreach (var step in model.Steps.Values.Where(step => !step.HasBegun))
        {
            if (step.Step.At is { } at)
            {
                model.Cp.Add(step.Start >= model.Clock.Of(at));
                NoLaterThan(model, step.Start, model.Clock.Of(at));
            }

            if (step.Step.Window is { } window)
            {
                model.Cp.Add(step.Start >= model.Clock.Of(window.From));
                NoLaterThan(model, step.End, model.Clock.Of(window.To));
            }
        }
    }

    /// <summary>While a meal runs its time may have passed, or what it waits for may be late: then soon after, at a price.</summary>
    private static void NoLaterThan(MealModel model, LinearExpr time, int limit)
    {
        if (model.So is null)
        {
            model.Cp.Add(time <= limit);
            return;
        }

        var over = model.Cp.NewIntVar(0, model.End + Math.Abs(limit), "past its time");
        model.Cp.Add(time <= limit + over);
        model.Charge(over, Prices.BeyondLimitMinute);
    }
}
