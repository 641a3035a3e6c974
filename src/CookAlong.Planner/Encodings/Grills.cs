namespace CookAlong.Planner.Encodings;

/// <summary>Grills: a grill does one thing at a time. (The oven around it: <see cref="Shelves"/>.)</summary>
internal static class Grills
{
    public static void Add(MealModel model)
    {
        foreach (var grill in model.GrillStays.GroupBy(stay => stay.Grill.Id))
        {
            var one = new Capacity(model, 1);
            foreach (var stay in grill)
            {
                if (stay.Fixed is { } span)
                {
                    one.Taken(span, 1);
                }
                else
                {
                    one.Take(stay.Interval!, 1);
                }
            }

            one.Close();
        }
    }
}
