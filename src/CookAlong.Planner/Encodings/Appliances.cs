using CookAlong.Domain;

namespace CookAlong.Planner.Encodings;

/// <summary>Appliances: never more of one than the kitchen has; one it has none of cannot be used.</summary>
internal static class Appliances
{
    public static void Add(MealModel model)
    {
        var named = model.Steps.Values.SelectMany(step => step.Ways).SelectMany(way => way.Way.Uses.Appliances).Distinct();
        foreach (var id in named)
        {
            Limit(model, id, model.Meal.Kitchen.Appliances.Where(appliance => appliance.Id == id).Sum(appliance => appliance.Count));
        }
    }

    private static void Limit(MealModel model, ApplianceId id, int count)
    {
        var appliance = new Capacity(model, count);
        foreach (var step in model.Steps.Values)
        {
            foreach (var way in step.Ways)
            {
                var taken = way.Way.Uses.Appliances.Count(used => used == id);
                if (step.HasBegun)
                {
                    appliance.Taken(Places.Begun(model, step), taken);
                }
                else
                {
                    appliance.Take(way.Interval!, taken);
                }
            }
        }

        appliance.Close();
    }
}
