using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;

namespace CookAlong.Planner.Encodings;

/// <summary>OvenLimits, and which oven and grill each step uses: any that will do unless one is asked for.</summary>
internal static class Places
{
    public static void Add(MealModel model)
    {
        foreach (var step in model.Steps.Values)
        {
            foreach (var way in step.Ways)
            {
                AddOven(model, step, way);
                AddGrill(model, step, way);
            }
        }
    }

    /// <summary>What is left of <paramref name="asked"/> within what the oven keeps; null when nothing is.</summary>
    public static CelsiusRange? Within(Oven oven, CelsiusRange asked)
    {
        var (min, max) = (Math.Max(asked.Min, oven.Min), Math.Min(asked.Max, oven.Max));
        return min <= max ? new CelsiusRange(min, Math.Clamp(asked.Ideal, min, max), max) : null;
    }

    private static void AddOven(MealModel model, StepVariables step, WayVariables way)
    {
        if (way.Way.Uses.Oven is not { } use)
        {
            return;
        }

        if (step.HasBegun)
        {
            var planned = model.So!.Current.Step(step.Step.Id).Oven;
            foreach (var oven in model.Meal.Kitchen.Ovens.Where(oven => oven.Id == planned))
            {
                model.OvenStays.Add(new OvenStay(
                    oven, step.Dish, step.Step, way.Option, step.Start, step.End, way.Taken, null,
                    Within(oven, use.Celsius) ?? use.Celsius, use.Shelves, Begun(model, step)));
            }

            return;
        }

        var fit = model.Meal.Kitchen.Ovens
            .Where(oven => (use.Oven ?? oven.Id) == oven.Id && oven.Shelves >= use.Shelves)
            .Select(oven => (Oven: oven, Celsius: Within(oven, use.Celsius)))
            .Where(one => one.Celsius is not null)
            .ToList();
        var here = model.OneOf(fit.Count, way.Taken, $"{step.Step.Id} {way.Option} oven");
        for (var index = 0; index < fit.Count; index++)
        {
            var interval = fit.Count == 1 ? way.Interval : model.Cp.NewOptionalFixedSizeIntervalVar(
                step.Start, way.Minutes, here[index], $"{step.Step.Id} {way.Option} in {fit[index].Oven.Id}");
            model.OvenStays.Add(new OvenStay(
                fit[index].Oven, step.Dish, step.Step, way.Option, step.Start, step.Start + way.Minutes, here[index], interval,
                fit[index].Celsius!.Value, use.Shelves, null));
        }
    }

    private static void AddGrill(MealModel model, StepVariables step, WayVariables way)
    {
        if (way.Way.Uses.Grill is not { } use)
        {
            return;
        }

        if (step.HasBegun)
        {
            var planned = model.So!.Current.Step(step.Step.Id).Grill;
            model.GrillStays.AddRange(model.Meal.Kitchen.Grills.Where(grill => grill.Id == planned)
                .Select(grill => new GrillStay(grill, step.Step, way.Option, way.Taken, null, Begun(model, step))));
            return;
        }

        var fit = model.Meal.Kitchen.Grills.Where(grill => (use.Grill ?? grill.Id) == grill.Id).ToList();
        var here = model.OneOf(fit.Count, way.Taken, $"{step.Step.Id} {way.Option} grill");
        for (var index = 0; index < fit.Count; index++)
        {
            var interval = fit.Count == 1 ? way.Interval : model.Cp.NewOptionalFixedSizeIntervalVar(
                step.Start, way.Minutes, here[index], $"{step.Step.Id} {way.Option} under {fit[index].Id}");
            model.GrillStays.Add(new GrillStay(fit[index], step.Step, way.Option, here[index], interval, null));
        }
    }

    /// <summary>Minutes of the clock a begun step took or takes.</summary>
    public static (int Start, int End) Begun(MealModel model, StepVariables step)
    {
        var start = model.Clock.Of(step.Fact!.Start);
        return (start, start + step.Ways[0].Minutes);
    }
}
