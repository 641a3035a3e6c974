namespace CookAlong.Planner.Encodings;

/// <summary>Rings: never more than the kitchen has.</summary>
internal static class Rings
{
    public static void Add(MealModel model)
    {
        var rings = new Capacity(model, model.Meal.Kitchen.Rings);
        foreach (var step in model.Steps.Values)
        {
            foreach (var way in step.Ways)
            {
                if (step.HasBegun)
                {
                    rings.Taken(Places.Begun(model, step), way.Way.Uses.Rings);
                }
                else
                {
                    rings.Take(way.Interval!, way.Way.Uses.Rings);
                }
            }
        }

        rings.Close();
    }
}
