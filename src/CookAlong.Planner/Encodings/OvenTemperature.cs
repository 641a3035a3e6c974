using CookAlong.Domain;

namespace CookAlong.Planner.Encodings;

/// <summary>
/// OvenTemperature and OvenRates. A curve that stays inside every range and keeps the rates exists exactly when every
/// pair of stays allows one: ranges that meet may share the oven, others must lie apart by the time the oven takes
/// between their nearer ends (a function whose rises and falls are bounded extends from any set where it is so bounded).
/// So three at a time need no rule of their own. Ranges hold at both ends of a stay, so stays that touch must meet too.
/// </summary>
internal static class OvenTemperature
{
    public static void Add(MealModel model)
    {
        var earlier = Before.Of(model.Meal);
        foreach (var oven in model.Meal.Kitchen.Ovens)
        {
            var stays = model.OvenStays.Where(stay => stay.Oven.Id == oven.Id).ToList();
            var now = model.So?.OvensNow.GetValueOrDefault(oven.Id, oven.StartsAt) ?? oven.StartsAt;
            var cold = new CelsiusRange(now, now, now);
            var turns = model.DialTurns = DialTurns.Of(model, oven, stays);
            for (var first = 0; first < stays.Count; first++)
            {
                var stay = stays[first];
                if (stay.Fixed is null && !IsIn(model, stay))
                {
                    model.Cp.Add(stay.Start >= model.Clock.Earliest + oven.MinutesBetween(cold, stay.Celsius)).OnlyEnforceIf(stay.Here);
                }

                for (var second = first + 1; second < stays.Count; second++)
                {
                    if (!stay.Celsius.Meets(stays[second].Celsius))
                    {
                        Apart(model, earlier, turns, stay, stays[second]);
                    }
                }
            }
        }
    }

    private static void Apart(MealModel model, Before earlier, DialTurns? turns, OvenStay one, OvenStay other)
    {
        var oneIsIn = IsIn(model, one);
        var otherIsIn = IsIn(model, other);
        if ((oneIsIn && otherIsIn) || (one.Step is not null && one.Step.Id == other.Step?.Id)
            || (one.Step is null && other.Step is null && one.Dish.Id == other.Dish.Id))
        {
            return;
        }

        if (oneIsIn || earlier.Comes(one, other))
        {
            After(model, turns, one, other, model.Cp.TrueLiteral());
        }
        else if (otherIsIn || earlier.Comes(other, one))
        {
            After(model, turns, other, one, model.Cp.TrueLiteral());
        }
        else
        {
            var order = model.Cp.NewBoolVar("oven order");
            After(model, turns, one, other, order);
            After(model, turns, other, one, order.Not());
        }
    }

    private static void After(MealModel model, DialTurns? turns, OvenStay first, OvenStay then, Google.OrTools.Sat.ILiteral when)
    {
        model.Cp.Add(then.Start - first.End >= first.Oven.MinutesBetween(first.Celsius, then.Celsius))
            .OnlyEnforceIf([when, first.Here, then.Here]);
        turns?.Between(first, then, when);
    }

    /// <summary>It went in before this attempt's first minute.</summary>
    private static bool IsIn(MealModel model, OvenStay stay) =>
        stay.Fixed is not null || (stay.Step is null && model.So is { } so && so.Current.Holds.Any(held =>
            held.Dish == stay.Dish.Id && held.Hold == stay.Which && held.Oven == stay.Oven.Id && model.Clock.Of(held.From) <= model.Clock.Earliest
            && stay.Dish.Steps.All(step => model.Steps[step.Id].HasBegun)));
}
