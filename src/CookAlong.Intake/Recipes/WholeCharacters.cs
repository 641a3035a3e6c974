using System.Globalization;
using System.Text;

namespace CookAlong.Intake.Recipes;

/// <summary>Mends text in which half of a character stands alone (a surrogate without its other half), which no reader of pages or of data takes.</summary>
static class WholeCharacters
{
    const char Replacement = '\uFFFD';

    /// <summary>Each half shows as one that could not be read; the length stays.</summary>
    public static string Of(string text)
    {
        StringBuilder? mended = null;
        for (var at = 0; at < text.Length; at++)
        {
            if (!char.IsSurrogate(text[at]))
            {
                continue;
            }

            if (at + 1 < text.Length && char.IsSurrogatePair(text[at], text[at + 1]))
            {
                at++;
            }
            else
            {
                (mended ??= new StringBuilder(text))[at] = Replacement;
            }
        }

        return mended?.ToString() ?? text;
    }

    /// <summary>The same for halves that JSON writes by their number ("\ud800").</summary>
    public static string OfJson(string json)
    {
        StringBuilder? mended = null;
        for (var at = json.IndexOf('\\', StringComparison.Ordinal); at >= 0 && at + 1 < json.Length; at = at < json.Length ? json.IndexOf('\\', at) : -1)
        {
            if (Escaped(json, at) is not { } first)
            {
                // "\\ud800" is a backslash and letters.
                at += 2;
            }
            else if (char.IsHighSurrogate(first) && Escaped(json, at + 6) is { } second && char.IsLowSurrogate(second))
            {
                at += 12;
            }
            else
            {
                if (char.IsSurrogate(first))
                {
                    mended ??= new StringBuilder(json);
                    mended[at + 2] = mended[at + 3] = mended[at + 4] = 'f';
                    mended[at + 5] = 'd';
                }

                at += 6;
            }
        }

        return mended?.ToString() ?? json;
    }

    static char? Escaped(string json, int at) =>
        at + 6 <= json.Length && json[at] == '\\' && json[at + 1] == 'u' && ushort.TryParse(json.AsSpan(at + 2, 4), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var code) ? (char)code : null;
}
