using CookAlong.Domain;
using CookAlong.Domain.Meals;
using Google.OrTools.Sat;

namespace CookAlong.Planner.Encodings;

/// <summary>HoldLimits and WarmHold: a dish waits for the table in one of its holds, within its least and limit, at the hold's price.</summary>
internal static class Holds
{
    public static void Add(MealModel model)
    {
        foreach (var dish in model.Meal.Dishes.Where(dish => !dish.Steps.IsEmpty))
        {
            var steps = dish.Steps.Select(step => model.Steps[step.Id]).ToList();
            var lastEnd = LastEnd(model, dish, steps);
            var wait = model.Tables[dish.Course] - lastEnd;
            var chosen = model.OneOf(dish.Holds.Length, model.Cp.TrueLiteral(), $"{dish.Id} hold");
            var isDone = steps.All(step => step.HasBegun);
            var goesIn = new List<LinearExpr?>();
            LinearExpr? over = null;
            if (isDone)
            {
                // The dish is made: a table time that has slipped makes it wait longer than is good, not the plan impossible.
                over = model.Cp.NewIntVar(0, model.End + 1, $"{dish.Id} beyond its hold");
                model.Charge(over, Prices.BeyondLimitMinute);
            }

            var price = model.IsLatenessOnly ? null : Price(model, dish);
            var missing = model.Cp.NewIntVar(0, model.Prices.Cushion, $"{dish.Id} cushion missing");
            model.Charge(missing, Prices.CushionMinute, dish.Id);
            for (var index = 0; index < dish.Holds.Length; index++)
            {
                var hold = dish.Holds[index];
                model.Cp.Add(wait >= hold.Least).OnlyEnforceIf(chosen[index]);
                model.Cp.Add((over is null ? wait : wait - over) <= hold.Limit).OnlyEnforceIf(chosen[index]);
                if (!model.IsLatenessOnly)
                {
                    model.Cp.Add(missing >= model.Prices.CushionOf(hold) - wait).OnlyEnforceIf(chosen[index]);
                }

                if (price is not null)
                {
                    AddPrice(model, hold, wait, price, chosen[index]);
                }

                goesIn.Add(hold.Oven is { } warm ? WarmHolds.Add(model, dish, index, warm, lastEnd, isDone, chosen[index]) : null);
            }

            model.HoldsOf.Add(new HoldVariables(dish, lastEnd, [.. chosen], [.. goesIn]) { Finish = Finish(model, steps, lastEnd) });
        }
    }

    /// <summary>When the dish's last step ends; steps that another of the dish waits for need not be looked at.</summary>
    private static LinearExpr LastEnd(MealModel model, Dish dish, List<StepVariables> steps)
    {
        if (steps.All(step => step.HasBegun))
        {
            return LinearExpr.Constant(steps.Max(step => Places.Begun(model, step).End));
        }

        var last = Last(steps);
        if (last.Count == 1)
        {
            return last[0].End;
        }

        // A begun step may end later than those that have not begun; all ends count.
        var end = model.Cp.NewIntVar(-model.End - 1, model.End, $"{dish.Id} ready");
        model.Cp.AddMaxEquality(end, last.Select(step => step.End));
        return end;
    }

    private static List<StepVariables> Last(List<StepVariables> steps)
    {
        var waitedFor = WaitedFor(steps.Where(step => !step.HasBegun).Select(step => step.Step));
        return [.. steps.Where(step => !waitedFor.Contains(step.Step.Id))];
    }

    /// <summary>Steps that another of these begins after: a dish is ready with the last of the others.</summary>
    public static HashSet<StepId> WaitedFor(IEnumerable<Step> steps) =>
        [.. steps.SelectMany(step => step.After.Where(after => after.Least >= 0)).Select(after => after.Step)];

    /// <summary>
    /// The last minutes of work on a dish that is ready only when hands have finished it, whichever step that is: as many as the
    /// shortest of those that may be the last takes. Null where it may be ready by itself.
    /// </summary>
    private static FinishVariables? Finish(MealModel model, List<StepVariables> steps, LinearExpr lastEnd)
    {
        var last = Last(steps);
        if (model.So is not null || last.Any(step => step.Ways.Length > 1 || step.Ways[0].Way.Attention != Attention.HandsOn))
        {
            return null;
        }

        var minutes = last.Min(step => step.Ways[0].Minutes);
        return new FinishVariables(lastEnd - minutes, minutes);
    }

    private static IntVar? Price(MealModel model, Dish dish)
    {
        var dearest = dish.Holds.Max(hold => hold.CostOf(model.End + 1));
        if (dearest == 0)
        {
            return null;
        }

        var price = model.Cp.NewIntVar(0, dearest, $"{dish.Id} waiting");
        model.Charge(price, 1, dish.Id);
        return price;
    }

    /// <summary>The price is convex in the wait: two lower bounds say all of it.</summary>
    private static void AddPrice(MealModel model, Hold hold, LinearExpr wait, IntVar price, ILiteral chosen)
    {
        if (hold.CostPerMinute == 0)
        {
            return;
        }

        long rate = hold.CostPerMinute;
        var atGoodFor = rate * Math.Max(0, hold.GoodFor - hold.BestWithin);
        model.Cp.Add(price >= (wait * (2 * rate)) - (2 * rate * hold.GoodFor) + atGoodFor).OnlyEnforceIf(chosen);
        if (hold.GoodFor > hold.BestWithin)
        {
            model.Cp.Add(price >= (wait * rate) - (rate * hold.BestWithin)).OnlyEnforceIf(chosen);
        }
    }
}
