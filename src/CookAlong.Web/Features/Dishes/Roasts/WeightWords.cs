using System.Globalization;
using System.Text.RegularExpressions;
using CookAlong.Domain.Quantities;

namespace CookAlong.Web.Features.Dishes.Roasts;

/// <summary>A weight as cooks write it: "5.2", "5,2 kg", "800 g", "11 lb 8 oz".</summary>
public static partial class WeightWords
{
    public const string Remedy = "Write kilograms, grams or pounds: 5.2, 800 g, 11 lb 8 oz.";

    /// <summary>Kilograms; null when the words are no weight above nothing. A bare number is kilograms, from 100 on grams.</summary>
    public static double? Read(string words)
    {
        if (Weight().Match(words.Trim()) is not { Success: true } match)
        {
            return null;
        }

        var number = Number(match.Groups["number"].Value);
        var kilograms = match.Groups["unit"].Value.ToLowerInvariant() switch
        {
            "" => number >= 100 ? number / 1000 : number,
            "kg" => number,
            "g" => number / 1000,
            _ => Units.OfAPound * (number + (match.Groups["ounces"].Success ? Number(match.Groups["ounces"].Value) / 16 : 0)),
        };
        return kilograms > 0 ? kilograms : null;
    }

    /// <summary>"5.2 kg", "800 g".</summary>
    public static string Write(double kilograms) => kilograms < 1
        ? string.Create(CultureInfo.InvariantCulture, $"{kilograms * 1000:0} g")
        : string.Create(CultureInfo.InvariantCulture, $"{kilograms:0.##} kg");

    static double Number(string digits) => double.Parse(digits.Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^(?<number>\d{1,5}(?:[.,]\d{1,3})?)\s*(?:(?<unit>kg|g)|(?<unit>lbs?|pounds?)(?:\s*(?<ounces>\d{1,2}(?:[.,]\d)?)\s*oz)?)?$", RegexOptions.IgnoreCase)]
    private static partial Regex Weight();
}
