using CookAlong.Domain.FoodSafety;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Domain.Doneness;

/// <summary>How a plan lets a joint rest, beside how long it stays hot, should it be done when it is planned to be.</summary>
/// <param name="Until">When its dish goes on, or is served.</param>
/// <param name="Hot">How long its middle stays at <paramref name="Limit"/> or above, under foil; zero = it never is.</param>
/// <param name="Limit">°C that hot food is kept at, by the household's authority.</param>
public sealed record PlannedRest(Dish Dish, Minute Out, Minute Until, TimeSpread Hot, Limit Limit)
{
    /// <summary>What is served below that temperature on purpose is not too long at rest.</summary>
    public bool IsTooLong => Hot.Likely > TimeSpan.Zero && Hot.Low < TimeSpan.FromMinutes(Until - Out);

    /// <summary>Minutes in which it is lifted out and covered, which belongs to its rest; common practice, no source.</summary>
    const int Lifting = 5;

    /// <summary>The step of hands that goes on with a joint after its rest; null = it rests until it is served.</summary>
    public static Step? EndsWith(Dish dish, Step step, Plan plan)
    {
        HashSet<StepId> after = [step.Id];
        while (dish.Steps.FirstOrDefault(one => !after.Contains(one.Id) && one.After.Any(before => after.Contains(before.Step))) is { } later)
        {
            after.Add(later.Id);
        }

        return dish.Steps
            .Where(one => one.Id != step.Id && after.Contains(one.Id) && one.WayOf(plan.Step(one.Id).Option).Attention == Attention.HandsOn && plan.Step(one.Id).Start >= plan.Step(step.Id).End + Lifting)
            .MinBy(one => plan.Step(one.Id).Start);
    }

    /// <summary>Of every joint that the model has an answer for; others are left to the thermometer.</summary>
    public static IEnumerable<PlannedRest> Of(Meal meal, Plan plan, Region region)
    {
        if (Holding.Hot(region) is not Published<Limit>.Is { Limit: var limit })
        {
            yield break;
        }

        foreach (var step in meal.Steps.Where(step => step.Core?.Joint is not null))
        {
            var (dish, planned) = (meal.DishOf(step.Id), plan.Step(step.Id));
            if (planned.Oven is not { } oven)
            {
                continue;
            }

            var until = EndsWith(dish, step, plan) is { } next ? plan.Step(next.Id).Start : plan.TableTime(dish.Course);
            var programme = plan.Ovens.Single(one => one.Oven == oven);
            var into = dish.OvenWorkTo(step, one => one.WayOf(plan.Step(one.Id).Option)).Min(one => plan.Step(one.Id).Start);
            var roasting = Roasting.By(step.Core!.Joint!, into.Utc, programme, meal.Kitchen.Ovens.Single(one => one.Id == oven).StartsAt).AsLeftAt(planned.End.Utc);
            // A joint that would be done at another time altogether says nothing of this one.
            if (Thermometer.Forecast(roasting, [], step.Core.Celsius) is CoreForecast.RangeOnly range && range.Earliest <= planned.End.Utc && !(range.Latest < planned.End.Utc)
                && Rest.Forecast(roasting, [new ProbeReading(planned.End.Utc, step.Core.Celsius)], planned.End.Utc, [new(planned.End.Utc, RestUnder.Foil)], limit.Celsius) is RestForecast.Expected rest)
            {
                yield return new PlannedRest(dish, planned.End, until, rest.MiddleHot, limit);
            }
        }
    }
}
