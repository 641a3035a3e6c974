using System.Globalization;
using CookAlong.Domain.FoodSafety;
using CookAlong.Domain.Quantities;
using CookAlong.Web.Features.Meals;

namespace CookAlong.Web.Features.Settings;

/// <summary>Regions, their authorities and what these publish, in words.</summary>
public static class RegionWords
{
    public const string Caution =
        "A thermometer decides whether food is safe, not a clock. Where your food authority says otherwise than this page, the authority is right; for allergies and illness ask a doctor. When in doubt, throw it out.";

    public static string Of(Region region) => region switch
    {
        Region.UnitedKingdom => "England, Wales and Northern Ireland",
        Region.Scotland => "Scotland",
        Region.UnitedStates => "United States",
        Region.Canada => "Canada",
        _ => throw new System.Diagnostics.UnreachableException(region.ToString()),
    };

    public static string Of(SpoonSizes spoons) => spoons switch
    {
        SpoonSizes.Metric => "Metric",
        SpoonSizes.UnitedKingdom => "United Kingdom",
        SpoonSizes.UnitedStates => "United States",
        SpoonSizes.Australia => "Australia",
        _ => throw new System.Diagnostics.UnreachableException(spoons.ToString()),
    };

    /// <summary>"teaspoon 5, tablespoon 15, cup 250, pint 568 ml".</summary>
    public static string Sizes(SpoonSizes spoons)
    {
        int Of(string unit) => (int)Math.Round(Units.Find(unit, spoons)!.Size);
        return $"teaspoon {Of("tsp")}, tablespoon {Of("tbsp")}, cup {Of("cup")}, pint {Of("pint")} ml";
    }

    public static string Authority(Region region) => region switch
    {
        Region.UnitedKingdom => "the Food Standards Agency",
        Region.Scotland => "Food Standards Scotland",
        Region.UnitedStates => "the USDA and the FDA",
        Region.Canada => "Health Canada",
        _ => throw new System.Diagnostics.UnreachableException(region.ToString()),
    };

    /// <summary>What is said where the region has no limit here.</summary>
    public static string NoLimit(Region region) => $"No limit of {Authority(region)} is held here, and no other country's takes its place: ask them.";

    public static string Of(Source source) => string.Create(
        CultureInfo.InvariantCulture,
        $"{source.Publisher}, {source.Title}{(source.Year is { } year ? $" ({year})" : "")}, {source.Place}{(source.FromMemory ? "; remembered, no copy was looked at" : "")}");

    /// <summary>"74 °C", and in the United States as it is printed there: "165 °F (74 °C)".</summary>
    public static string Heat(double celsius, Region region) => region == Region.UnitedStates
        ? string.Create(CultureInfo.InvariantCulture, $"{OvenScale.Fahrenheit(celsius):0} °F ({celsius:0} °C)")
        : string.Create(CultureInfo.InvariantCulture, $"{celsius:0.#} °C");

    /// <summary>"2 h", "1 to 2 h", "3 to 4 days".</summary>
    public static string Span(TimeLimit limit)
    {
        var (least, most) = (Length(limit.Least), Length(limit.Most));
        return (least.Split(' '), most.Split(' ')) switch
        {
            _ when limit.Least == TimeSpan.Zero || least == most => most,
            ([var number, var unit], [_, var other]) when unit.TrimEnd('s') == other.TrimEnd('s') => $"{number} to {most}",
            _ => $"{least} to {most}",
        };
    }

    /// <summary>"20 min", "2 h", "1 h 20 min", "3 days", "3 months".</summary>
    public static string Length(TimeSpan span)
    {
        var minutes = (int)Math.Round(span.TotalMinutes);
        return minutes switch
        {
            < 60 => $"{minutes} min",
            < 1440 when minutes % 60 == 0 => $"{minutes / 60} h",
            // Half a day and more is not known to the minute.
            >= 720 and < 1440 => Length(TimeSpan.FromHours(Math.Ceiling(minutes / 60.0))),
            < 1440 => $"{minutes / 60} h {minutes % 60} min",
            _ when minutes % (30 * 1440) == 0 => MealWords.Many(minutes / (30 * 1440), "month", "months"),
            _ when minutes % 1440 == 0 => MealWords.Many(minutes / 1440, "day", "days"),
            _ => $"{MealWords.Many(minutes / 1440, "day", "days")} {minutes % 1440 / 60} h",
        };
    }
}
