using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Domain.Quantities;

namespace CookAlong.Web.Features.Plans;

/// <summary>Places and people in words.</summary>
public static class PlaceNames
{
    /// <summary>The meal file gives appliances an id only ("hand-mixer"): the id is the name.</summary>
    public static string Of(ApplianceId appliance)
    {
        var words = appliance.Value.Replace('-', ' ');
        return char.ToUpperInvariant(words[0]) + words[1..];
    }

    /// <summary>For the middle of a sentence: "the oven", whether it is called "Oven" or "The oven".</summary>
    public static string The(Oven oven)
    {
        var name = oven.Name.ToLowerInvariant();
        return name.StartsWith("the ", StringComparison.Ordinal) ? name : $"the {name}";
    }

    /// <summary>Plans are told in °C of a conventional oven; behind it stands what this oven's dial is set to where that is another: ", fan 180", ", dial 190", or nothing.</summary>
    public static string OnDial(Oven oven, int celsius)
    {
        var dial = (OvenScale.Usual with { ReadsHighBy = oven.ReadsHighBy }).Dial(celsius, oven.Fan);
        return oven.Fan ? $", fan {dial}" : dial != celsius ? $", dial {dial}" : "";
    }

    /// <summary>What is special about a helper: a child, or when they are here; null when nothing is.</summary>
    public static string? NoteOf(Helper helper, TimeZoneInfo zone)
    {
        var isOneDay = helper.Available.Select(window => LocalTime.Show(window.From, zone).Date).Distinct().Count() <= 1;
        var here = helper.Available.IsEmpty ? null : string.Join(", ", helper.Available.Select(window =>
            $"{(isOneDay ? "" : LocalTime.Show(window.From, zone).ToString("ddd ", System.Globalization.CultureInfo.InvariantCulture))}{Clock(window.From, zone)}–{Clock(window.To, zone)}"));
        return (helper.IsChild, here) switch
        {
            (true, null) => "child-safe only",
            (true, _) => $"child-safe only, {here}",
            (false, _) => here,
        };
    }

    /// <summary>Where a planned step happens; null when it needs only hands.</summary>
    public static string? Of(Meal meal, PlannedStep planned)
    {
        var uses = meal.Step(planned.Step).WayOf(planned.Option).Uses;
        List<string> places = [];
        if (planned.Oven is { } oven && uses.Oven is { } use)
        {
            places.Add($"{meal.Kitchen.Ovens.Single(one => one.Id == oven).Name}, {Many(use.Shelves, "shelf", "shelves")}, {use.Celsius.Min}–{use.Celsius.Max} °C");
        }

        if (uses.Rings > 0)
        {
            places.Add(Many(uses.Rings, "ring", "rings"));
        }

        if (planned.Grill is { } grill)
        {
            places.Add(meal.Kitchen.Grills.Length == 1 ? "the grill" : $"grill {grill}");
        }

        places.AddRange(planned.Appliances.Select(appliance => Of(appliance).ToLowerInvariant()));
        return places.Count == 0 ? null : string.Join("; ", places);
    }

    public static string Clock(Minute at, TimeZoneInfo zone) =>
        LocalTime.Show(at, zone).ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>For paper and files, where nobody can ask which of the two hours is meant when the clocks go back.</summary>
    public static string ClockAndPass(Minute at, TimeZoneInfo zone) => Clock(at, zone) + (LocalTime.IsSecondPass(at, zone) ? " (second pass)" : "");

    static string Many(int count, string one, string more) => count == 1 ? $"1 {one}" : $"{count} {more}";
}
