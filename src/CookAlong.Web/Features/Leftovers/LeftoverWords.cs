using System.Globalization;
using CookAlong.Domain;
using CookAlong.Domain.FoodSafety;
using CookAlong.Web.Features.Settings;

namespace CookAlong.Web.Features.Leftovers;

/// <summary>Leftovers in sentences.</summary>
public static class LeftoverWords
{
    public const string Reheat = "Warm it once, until it steams all through; a thermometer decides.";

    public const string WasReheated = "It was made ahead and warmed for the table: the days count from when it was cooked, and it is not warmed a second time.";

    /// <summary>"16:10 today", "Tuesday 22 December, 15:00".</summary>
    public static string Moment(DateTimeOffset at, TimeZoneInfo zone, DateTimeOffset now)
    {
        var (there, today) = (TimeZoneInfo.ConvertTime(at, zone), TimeZoneInfo.ConvertTime(now, zone));
        return there.Date == today.Date ? there.ToString("HH:mm 'today'", CultureInfo.InvariantCulture) : there.ToString("dddd d MMMM, HH:mm", CultureInfo.InvariantCulture);
    }

    public static string Clock(DateTimeOffset at, TimeZoneInfo zone) => TimeZoneInfo.ConvertTime(at, zone).ToString("HH:mm", CultureInfo.InvariantCulture);

    /// <summary>"Monday 21 December".</summary>
    public static string Day(DateTimeOffset at, TimeZoneInfo zone) => TimeZoneInfo.ConvertTime(at, zone).ToString("dddd d MMMM", CultureInfo.InvariantCulture);

    public static string Known(HeatKnown known) => known switch
    {
        HeatKnown.FromTheRun => "as it was ticked off",
        HeatKnown.FromTheTable => "taken from its table time",
        HeatKnown.Said => "as you said",
        _ => throw new System.Diagnostics.UnreachableException(known.ToString()),
    };

    /// <summary>Past the time, food that stood out is not saved by the fridge.</summary>
    public static string? TooLate(DishLeft left, TimeZoneInfo zone, DateTimeOffset now) => (left.Times.InFridge, left.Times.Eat) switch
    {
        (_, { } eat) when eat.By <= now => $"It was to be eaten by {Moment(eat.By, zone, now)}. Throw it out, unless it was frozen before.",
        ({ } cool, _) when cool.By <= now => $"It was to be in the fridge by {Moment(cool.By, zone, now)}. What has stood out since then is thrown out.",
        _ => null,
    };

    public static string Takes(CoolingWay way)
    {
        var time = way.Expected.First is { } first ? $"its middle falls from 57 to 21 °C in about {RegionWords.Length(Rounded(first))}" : "its middle stays warm for more than two days";
        return $"{way.How}: {time}{(way.InTime switch { true => ".", false => ". Too slow.", null => "." })}";
    }

    /// <summary>A model is not good to the minute.</summary>
    static TimeSpan Rounded(TimeSpan span) => TimeSpan.FromMinutes(Math.Ceiling(span.TotalMinutes / 10) * 10);
}
