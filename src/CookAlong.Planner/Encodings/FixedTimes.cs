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
                var start = model.Clock.Of(at);
                if (model.So is not null && start < model.Clock.Earliest)
                {
                    NoLaterThan(model, step.Start, model.Clock.Earliest);
                }
                else
                {
                    model.Cp.Add(step.Start == start);
                }
            }

            if (step.Step.Window is { } window)
            {
                model.Cp.Add(step.Start >= model.Clock.Of(window.From));
                var close = model.Clock.Of(window.To);
                if (model.So is not null && close - step.Ways.Max(way => way.Minutes) < model.Clock.Earliest)
                {
                    NoLaterThan(model, step.End, close);
                }
                else
                {
                    model.Cp.Add(step.End <= close);
                }
            }
        }
    }

    /// <summary>The time has passed while the meal runs: as soon after it as can be, at a price.</summary>
    private static void NoLaterThan(MealModel model, LinearExpr time, int limit)
    {
        var over = model.Cp.NewIntVar(0, model.End + model.End, "past its time");
        model.Cp.Add(time <= limit + over);
        model.Charge(over, Prices.BeyondLimitMinute);
    }
}
