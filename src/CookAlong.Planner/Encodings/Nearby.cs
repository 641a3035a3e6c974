using CookAlong.Domain.Meals;

namespace CookAlong.Planner.Encodings;

/// <summary>Nearby: while a step needs somebody nearby, an adult is in the kitchen throughout; adults may hand over.</summary>
internal static class Nearby
{
    public static void Add(MealModel model)
    {
        var adults = model.Meal.Helpers.Where(helper => !helper.IsChild).ToList();
        if (adults.Any(adult => adult.Available.IsEmpty))
        {
            return;
        }

        var present = Spans.Joined(adults.SelectMany(adult => adult.Available)
            .Select(window => (model.Clock.Of(window.From), model.Clock.Of(window.To))));
        foreach (var step in model.Steps.Values.Where(step => !step.HasBegun))
        {
            foreach (var way in step.Ways.Where(way => way.Way.Attention == Attention.Nearby))
            {
                model.Within(step.Start, Spans.StartsOf(present, way.Minutes), way.Taken);
            }
        }
    }
}
