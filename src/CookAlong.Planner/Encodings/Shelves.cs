using CookAlong.Domain.Kitchens;

namespace CookAlong.Planner.Encodings;

/// <summary>Shelves, and the second half of Grills: an oven holds no more than it has shelves, and nothing while the grill inside it is on.</summary>
internal static class Shelves
{
    public static void Add(MealModel model)
    {
        foreach (var oven in model.Meal.Kitchen.Ovens)
        {
            var inside = model.Meal.Kitchen.Grills.Where(grill => grill.InsideOven == oven.Id).ToList();
            if (inside.Count == 0)
            {
                Limit(model, oven, grill: null);
            }

            foreach (var grill in inside)
            {
                Limit(model, oven, grill);
            }
        }
    }

    private static void Limit(MealModel model, Oven oven, Grill? grill)
    {
        var shelves = new Capacity(model, oven.Shelves);
        foreach (var stay in model.OvenStays.Where(stay => stay.Oven.Id == oven.Id))
        {
            if (stay.Fixed is { } span)
            {
                shelves.Taken(span, stay.Shelves);
            }
            else
            {
                shelves.Take(stay.Interval!, stay.Shelves);
            }
        }

        // A grill in the cavity takes the whole of it.
        foreach (var stay in model.GrillStays.Where(stay => stay.Grill.Id == grill?.Id))
        {
            if (stay.Fixed is { } span)
            {
                shelves.Taken(span, oven.Shelves);
            }
            else
            {
                shelves.Take(stay.Interval!, oven.Shelves);
            }
        }

        shelves.Close();
    }
}
