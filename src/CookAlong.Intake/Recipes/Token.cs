using System.Globalization;

namespace CookAlong.Intake.Recipes;

/// <summary>A word, a number or a sign of a recipe's text, and where it stands.</summary>
/// <param name="Text">Lower case, but for a lone "T", which is a tablespoon where "t" is a teaspoon.</param>
/// <param name="Value">Of a number or a fraction; null for anything else.</param>
readonly record struct Token(string Text, double? Value, bool IsFraction, int At, int Length)
{
    const string Fractions = "¼½¾⅓⅔⅛⅜⅝⅞";

    static readonly double[] values = [0.25, 0.5, 0.75, 1 / 3.0, 2 / 3.0, 0.125, 0.375, 0.625, 0.875];

    public int End => At + Length;

    public bool Is(params ReadOnlySpan<string> words)
    {
        foreach (var word in words)
        {
            if (Text == word)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>One pass, so the time is linear in the text whatever stands in it.</summary>
    public static List<Token> Read(string text)
    {
        var tokens = new List<Token>();
        for (var at = 0; at < text.Length;)
        {
            var token = Next(text, at);
            if (token is { } found)
            {
                tokens.Add(found);
            }

            at += token?.Length ?? 1;
        }

        return tokens;
    }

    static Token? Next(string text, int at)
    {
        var sign = text[at];
        if (char.IsAsciiDigit(sign))
        {
            return Number(text, at);
        }

        if (Fractions.IndexOf(sign, StringComparison.Ordinal) is >= 0 and var fraction)
        {
            return new Token(text[at..(at + 1)], values[fraction], IsFraction: true, at, 1);
        }

        if (char.IsLetter(sign))
        {
            var end = at;
            while (end < text.Length && (char.IsLetter(text[end]) || (text[end] is '\'' or '’' && end + 1 < text.Length && char.IsLetter(text[end + 1]))))
            {
                end++;
            }

            return new Token(end - at == 1 && sign == 'T' ? "T" : text[at..end].ToLowerInvariant(), null, false, at, end - at);
        }

        if (char.IsHighSurrogate(sign) && at + 1 < text.Length && char.IsLowSurrogate(text[at + 1]))
        {
            return new Token(text[at..(at + 2)], null, false, at, 2);
        }

        return char.IsWhiteSpace(sign) ? null : new Token(sign is '–' or '—' or '−' ? "-" : sign is 'º' or '˚' ? "°" : sign.ToString(), null, false, at, 1);
    }

    /// <summary>"350", "2.5", "2,5", "1/2"; nothing longer than nine digits is a quantity.</summary>
    static Token Number(string text, int at)
    {
        var end = Digits(text, at);
        if (end < text.Length - 1 && text[end] == '/' && char.IsAsciiDigit(text[end + 1]))
        {
            var last = Digits(text, end + 1);
            var (top, bottom) = (Whole(text[at..end]), Whole(text[(end + 1)..last]));
            return new Token(text[at..last], bottom > 0 ? top / bottom : null, IsFraction: true, at, last - at);
        }

        // A comma is a decimal sign unless three digits follow it: "1,000".
        if (end < text.Length - 1 && text[end] is '.' or ',' && char.IsAsciiDigit(text[end + 1]) && Digits(text, end + 1) is var more && (text[end] == '.' || more - end != 4))
        {
            return new Token(text[at..more], Whole(text[at..end]) + double.Parse($"0.{text[(end + 1)..Math.Min(more, end + 9)]}", CultureInfo.InvariantCulture), false, at, more - at);
        }

        return new Token(text[at..end], Whole(text[at..end]), false, at, end - at);
    }

    static int Digits(string text, int at)
    {
        while (at < text.Length && char.IsAsciiDigit(text[at]))
        {
            at++;
        }

        return at;
    }

    static double? Whole(string digits) => digits.Length <= 9 ? double.Parse(digits, CultureInfo.InvariantCulture) : null;
}
