using System.Globalization;
using System.Text.RegularExpressions;

namespace CookAlong.Intake.Recipes;

/// <summary>What a recipe says at its head of how long the whole takes; null where it does not.</summary>
/// <param name="Prep">Work before the heat.</param>
/// <param name="Cook">On the heat.</param>
/// <param name="Total">From the first hand to the table, rests included.</param>
public sealed partial record StatedTimes(StatedTime? Prep, StatedTime? Cook, StatedTime? Total)
{
    public static StatedTimes None { get; } = new(null, null, null);

    public bool IsNone => this == None;

    /// <summary>"Prep: 20 min | Cook: 1 h", each part named; null when the line says more or other than that.</summary>
    internal StatedTimes? With(string line)
    {
        var times = this;
        foreach (var part in line.Split(['|', ';', '•', '·'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            if (Named().Match(part) is not { Success: true } named || StatedTime.OfWords(part[named.Length..]) is not { } time)
            {
                return null;
            }

            times = named.Groups["prep"].Success ? times with { Prep = time }
                : named.Groups["cook"].Success ? times with { Cook = time }
                : times with { Total = time };
        }

        return ReferenceEquals(times, this) ? null : times;
    }

    [GeneratedRegex(@"^\W*((?<prep>prep(aration)?|preparing)|(?<cook>cook(ing)?|bak(e|ing)|roasting)|(?<total>total|overall))(\s+time\s*[:\-–]?\s*|\s*:\s*)|^\W*(?<total>ready\s+in)\s*:?\s*", RegexOptions.IgnoreCase)]
    private static partial Regex Named();
}

/// <param name="Least">Minutes.</param>
/// <param name="Most">Minutes, at least <paramref name="Least"/>.</param>
/// <param name="Text">As written.</param>
public sealed partial record StatedTime(double Least, double Most, string Text)
{
    /// <summary>Longer than this is no cooking; minutes.</summary>
    const double Longest = 30 * 24 * 60;

    /// <summary>Characters; longer is no time, whatever stands in it.</summary>
    const int LongestText = 200;

    public double Likely => (Least + Most) / 2;

    /// <summary>ISO 8601 ("PT1H30M"), as schema.org wants it; pages that write "1 hour 30 minutes" instead are read too. Null when it is no such time, or none at all.</summary>
    public static StatedTime? Of(string text)
    {
        if (text.Length > LongestText)
        {
            return null;
        }

        if (Iso().Match(text.Trim()) is not { Success: true } iso)
        {
            return OfWords(text);
        }

        double Part(string name, double minutes) => iso.Groups[name] is { Success: true } part ? minutes * double.Parse(part.Value.Replace(',', '.'), CultureInfo.InvariantCulture) : 0;
        var all = Part("weeks", 7 * 24 * 60) + Part("days", 24 * 60) + Part("hours", 60) + Part("minutes", 1) + Part("seconds", 1 / 60.0);
        return all is > 0 and <= Longest ? new(all, all, text.Trim()) : null;
    }

    /// <summary>Pages write "PT0M" for what takes no time, or of which they know none.</summary>
    internal static bool IsNone(string text) => Iso().Match(text.Trim()) is { Success: true } iso && iso.Value.All(one => !char.IsAsciiDigit(one) || one == '0');

    /// <summary>One span of time and nothing else.</summary>
    internal static StatedTime? OfWords(string text)
    {
        var words = Around().Replace(text, "");
        return Times.Read(Token.Read(words)) is [{ Role: TimeRole.Takes } time] && time.Length >= words.Length - 1 && time.Most <= Longest ? new(time.Least, time.Most, text.Trim()) : null;
    }

    [GeneratedRegex(@"^P(?=.)((?<weeks>[0-9]{1,4})W)?((?<days>[0-9]{1,4})D)?(T(?=.)((?<hours>[0-9]{1,5}([.,][0-9]{1,3})?)H)?((?<minutes>[0-9]{1,6}([.,][0-9]{1,3})?)M)?((?<seconds>[0-9]{1,7}([.,][0-9]{1,3})?)S)?)?$", RegexOptions.IgnoreCase)]
    private static partial Regex Iso();

    [GeneratedRegex(@"^\s*((about|approx\.?|approximately|circa|ca\.?|around)\s+)?|[\s.)]+$", RegexOptions.IgnoreCase)]
    private static partial Regex Around();
}
