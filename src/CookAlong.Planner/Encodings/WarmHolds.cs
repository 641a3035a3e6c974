using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using Google.OrTools.Sat;

namespace CookAlong.Planner.Encodings;

/// <summary>WarmHold: a dish kept in a warm oven goes in before it has stood out too long, and stays until the table.</summary>
internal static class WarmHolds
{
    /// <summary>When it goes in.</summary>
    public static LinearExpr? Add(MealModel model, Dish dish, int index, WarmOven warm, LinearExpr lastEnd, bool isDone, ILiteral chosen)
    {
        var table = model.Tables[dish.Course];
        if (isDone && model.So!.Current.Holds.FirstOrDefault(held => held.Dish == dish.Id) is { Place: HoldPlace.WarmOven } held
            && held.Hold == index && model.Clock.Of(held.From) <= model.Clock.Earliest)
        {
            return AlreadyIn(model, dish, index, warm, held, table, chosen);
        }

        var fit = model.Meal.Kitchen.Ovens.Where(oven => oven.Shelves >= warm.Shelves)
            .Select(oven => (Oven: oven, Celsius: Places.Within(oven, warm.Celsius)))
            .Where(one => one.Celsius is not null)
            .ToList();
        var here = model.OneOf(fit.Count, chosen, $"{dish.Id} {index} oven");
        if (fit.Count == 0)
        {
            return null;
        }

        var goesIn = model.Time(model.Clock.Earliest, model.End, $"{dish.Id} goes in");
        model.Cp.Add(goesIn >= lastEnd).OnlyEnforceIf(chosen);
        model.Cp.Add(goesIn <= table).OnlyEnforceIf(chosen);
        if (isDone)
        {
            // It may have stood out too long already: then it goes in as soon as can be, at a price.
            var over = model.Cp.NewIntVar(0, model.End + model.End, $"{dish.Id} stood out too long");
            model.Cp.Add(goesIn - lastEnd <= warm.StandFirst + over).OnlyEnforceIf(chosen);
            model.Charge(over, Prices.BeyondLimitMinute);
        }
        else
        {
            model.Cp.Add(goesIn - lastEnd <= warm.StandFirst).OnlyEnforceIf(chosen);
        }

        for (var one = 0; one < fit.Count; one++)
        {
            model.OvenStays.Add(new OvenStay(
                fit[one].Oven, dish, null, index, goesIn, table, here[one], Until(model, goesIn, table, here[one]),
                fit[one].Celsius!.Value, warm.Shelves, null));
        }

        return goesIn;
    }

    private static LinearExpr AlreadyIn(
        MealModel model, Dish dish, int index, WarmOven warm, PlannedHold held, LinearExpr table, ILiteral chosen)
    {
        var inside = LinearExpr.Constant(model.Clock.Of(held.From));
        var oven = model.Meal.Kitchen.Ovens.Single(oven => oven.Id == held.Oven);
        var stays = Until(model, LinearExpr.Constant(Math.Max(model.Clock.Of(held.From), 0)), table, chosen);
        model.OvenStays.Add(new OvenStay(
            oven, dish, null, index, inside, table, chosen, stays, Places.Within(oven, warm.Celsius) ?? warm.Celsius, warm.Shelves, null));
        return inside;
    }

    private static IntervalVar Until(MealModel model, LinearExpr start, LinearExpr table, ILiteral here)
    {
        if (model.Clock.MostLate == 0)
        {
            return model.Cp.NewOptionalIntervalVar(start, table - start, table, here, "kept warm");
        }

        var minutes = model.Cp.NewIntVar(0, model.End, "kept warm for");
        return model.Cp.NewOptionalIntervalVar(start, minutes, table, here, "kept warm");
    }
}
