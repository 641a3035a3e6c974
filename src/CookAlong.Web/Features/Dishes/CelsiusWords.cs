using System.Globalization;
using System.Text.RegularExpressions;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain;

namespace CookAlong.Web.Features.Dishes;

/// <summary>An oven's temperature as cooks write it: "180", "170-190 °C".</summary>
public static partial class CelsiusWords
{
    /// <summary>A single figure leaves the oven this much either side; common practice, no source.</summary>
    const int EitherSide = 10;

    public const string Remedy = "Write one figure or a span in °C: 180, or 170-190.";

    /// <summary>Null when the words are no temperature that an oven has, 40 to 350 °C.</summary>
    public static CelsiusRange? Read(string words)
    {
        if (Span().Match(words.Trim()) is not { Success: true } match)
        {
            return null;
        }

        var from = int.Parse(match.Groups["from"].Value, CultureInfo.InvariantCulture);
        var range = match.Groups["to"].Success && int.Parse(match.Groups["to"].Value, CultureInfo.InvariantCulture) is var to
            ? new CelsiusRange(from, (from + to) / 2, to)
            : new CelsiusRange(from - EitherSide, from, from + EitherSide);
        return range.Min >= 40 && range.Max <= 350 && range.Min <= range.Max ? range : null;
    }

    public static string Write(CelsiusRange range) => $"{range.Min}-{range.Max} °C";

    [GeneratedRegex(@"^(?<from>\d{2,3})\s*°?\s*C?\s*(?:(?:-|–|to)\s*(?<to>\d{2,3}))?\s*°?\s*C?$", RegexOptions.IgnoreCase)]
    private static partial Regex Span();
}
