using CookAlong.Domain.Meals;

namespace CookAlong.Web.Features.Plans;

/// <summary>A way of doing a step, short enough for a list to choose from.</summary>
public static class WayWords
{
    public static string Of(Way way)
    {
        List<string> parts = [PlanHeadline.Minutes(way.Minutes.Likely)];
        if (way.Attention == Attention.HandsOn)
        {
            parts.Add(way.People == 1 ? "one person" : $"{way.People} people");
        }

        if (way.Uses.Oven is { } oven)
        {
            parts.Add($"oven at {oven.Celsius.Ideal} °C");
        }

        if (way.Uses.Rings > 0)
        {
            parts.Add(way.Uses.Rings == 1 ? "on a ring" : $"on {way.Uses.Rings} rings");
        }

        if (way.Uses.Grill is not null)
        {
            parts.Add("under the grill");
        }

        parts.AddRange(way.Uses.Appliances.Select(appliance => $"with the {PlaceNames.Of(appliance).ToLowerInvariant()}"));
        return string.Join(", ", parts);
    }
}
