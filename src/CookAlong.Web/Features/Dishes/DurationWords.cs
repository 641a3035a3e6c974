using System.Globalization;
using System.Text.RegularExpressions;
using CookAlong.Domain.Meals;

namespace CookAlong.Web.Features.Dishes;

/// <summary>How long a thing takes, as cooks write it: "20", "25-30 min", "1 h 10", "20-25-40" (least, likely, most), "overnight".</summary>
public static partial class DurationWords
{
    const int Longest = 7 * 24 * 60;

    /// <summary>Common practice, no source.</summary>
    static readonly Durations overnight = new(8 * 60, 10 * 60, 12 * 60);

    public const string Remedy = "Write minutes, a span or hours: 20, 25-30 min, 1 h 10, or 20-25-40 for least, likely and most.";

    /// <summary>Null when the words are no such time, or one out of order, less than a minute or more than a week.</summary>
    public static Durations? Read(string words)
    {
        var said = words.Trim().ToLowerInvariant();
        if (said is "overnight" or "over night")
        {
            return overnight;
        }

        var parts = Between().Split(said);
        var units = parts.Select(part => Span().Match(part)).ToArray();
        if (parts.Length > 3 || units.Any(unit => !unit.Success || unit.Length == 0))
        {
            return null;
        }

        // "1-2 h" is one to two hours: a bare number takes the last one's unit.
        var bare = units[^1].Groups["hours"].Success && !units[^1].Groups["minutes"].Success ? 60 : units[^1].Groups["days"].Success && !units[^1].Groups["hours"].Success ? 24 * 60 : 1;
        var minutes = units.Select(unit => Minutes(unit, bare)).ToArray();
        var (least, likely, most) = minutes switch
        {
            [var one] => (one, one, one),
            [var from, var to] => (from, (from + to) / 2, to),
            [var from, var middle, var to] => (from, middle, to),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
        return 1 <= least && least <= likely && likely <= most && most <= Longest ? new Durations((int)least, (int)Math.Round(likely, MidpointRounding.AwayFromZero), (int)most) : null;
    }

    /// <summary>One time, 0 included ("0", "5 min", "2 h"); null when the words are none.</summary>
    public static int? ReadOne(string words) => words.Trim() is "0" or "0 min" ? 0 : Read(words) is { } read && read.Least == read.Most ? read.Likely : null;

    /// <summary>What <see cref="Read"/> reads back.</summary>
    public static string Write(Durations minutes)
    {
        var isMiddle = minutes.Likely == (int)Math.Round((minutes.Least + minutes.Most) / 2m, MidpointRounding.AwayFromZero);
        int[] parts = minutes.Least == minutes.Most ? [minutes.Likely] : isMiddle ? [minutes.Least, minutes.Most] : [minutes.Least, minutes.Likely, minutes.Most];
        return parts.All(part => part < 60) || (parts.Length > 1 && parts[^1] < 120)
            ? $"{string.Join('-', parts)} min"
            : string.Join(" - ", parts.Select(Write));
    }

    /// <summary>"45 min", "1 h 10 min", "2 days".</summary>
    public static string Write(int minutes) => minutes switch
    {
        >= 2880 when minutes % 1440 == 0 => $"{minutes / 1440} days",
        >= 60 when minutes % 60 == 0 => $"{minutes / 60} h",
        >= 60 => $"{minutes / 60} h {minutes % 60} min",
        _ => $"{minutes} min",
    };

    static decimal Minutes(Match unit, int bare)
    {
        decimal Of(string group) => unit.Groups[group].Success ? Number(unit.Groups[group].Value) : 0;
        return unit.Groups["bare"].Success ? Number(unit.Groups["bare"].Value) * bare : (Of("days") * 1440) + (Of("hours") * 60) + Of("minutes");
    }

    static decimal Number(string digits)
    {
        var half = digits.EndsWith('½') ? 0.5m : 0;
        var plain = digits.TrimEnd('½').Trim().Replace(',', '.');
        return half + (plain.Length == 0 ? 0 : decimal.Parse(plain, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture));
    }

    [GeneratedRegex(@"\s*(?:-|–|—|\bto\b)\s*")]
    private static partial Regex Between();

    [GeneratedRegex(@"^(?:(?<bare>\d{1,5}(?:[.,]\d{1,2})?)|(?=.)(?:(?<days>\d{1,2}|\d{0,2}½)\s*d(?:ays?)?)?\s*(?:(?<hours>\d{1,3}(?:[.,]\d{1,2})?|\d{0,3}\s?½)\s*h(?:ours?|rs?)?)?\s*(?:(?<minutes>\d{1,5})\s*(?:m|mins?|minutes?)?\.?)?)$")]
    private static partial Regex Span();
}
