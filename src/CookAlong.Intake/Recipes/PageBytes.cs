using System.Text;
using System.Text.RegularExpressions;

namespace CookAlong.Intake.Recipes;

/// <summary>The text of a file or a web page that comes as bytes, whatever its encoding.</summary>
public static partial class PageBytes
{
    /// <summary>A page names its encoding within its first bytes (WHATWG HTML, "prescan a byte stream": 1,024).</summary>
    const int Prescan = 1024;

    /// <summary>By byte order mark, then by what the sender says, then by what the page says of itself; else UTF-8, or Windows-1252 where that cannot be.</summary>
    /// <param name="charset">As the sender names it, such as "iso-8859-1"; null when it does not.</param>
    public static string Text(byte[] bytes, string? charset = null)
    {
        if (Named(charset) is { } told && bytes is not [0xEF, 0xBB, 0xBF, ..] and not [0xFF, 0xFE, ..] and not [0xFE, 0xFF, ..])
        {
            return told.GetString(bytes);
        }

        if (bytes is [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..] or [0xEF, 0xBB, 0xBF, ..])
        {
            using var marked = new StreamReader(new MemoryStream(bytes), Encoding.UTF8, detectEncodingFromByteOrderMarks: true);
            return marked.ReadToEnd();
        }

        var start = Encoding.Latin1.GetString(bytes, 0, Math.Min(bytes.Length, Prescan));
        if (Declared().Match(start) is { Success: true } declared && Named(declared.Groups[1].Value) is { } own)
        {
            // Who can be read as far as "utf-16" in plain letters is not written in it; UTF-8 is meant (the same prescan).
            return (own is UnicodeEncoding ? Encoding.UTF8 : own).GetString(bytes);
        }

        try
        {
            return new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(bytes);
        }
        catch (DecoderFallbackException)
        {
            // What is not UTF-8 and does not say what it is was most likely written on an old Western machine.
            return Named("windows-1252")!.GetString(bytes);
        }
    }

    /// <summary>Null for a name that nobody knows.</summary>
    static Encoding? Named(string? name)
    {
        // "iso-8859-1" is read as Windows-1252, as the WHATWG Encoding standard has it. UTF-7 is never read.
        var plain = name?.Trim('"', '\'', ' ').ToLowerInvariant();
        return plain switch
        {
            null or "" or "utf-7" => null,
            "utf-8" or "utf8" => Encoding.UTF8,
            "utf-16" or "utf-16le" => Encoding.Unicode,
            "utf-16be" => Encoding.BigEndianUnicode,
            "iso-8859-1" or "latin1" or "us-ascii" or "ascii" => CodePagesEncodingProvider.Instance.GetEncoding("windows-1252"),
            _ => CodePagesEncodingProvider.Instance.GetEncoding(plain),
        };
    }

    [GeneratedRegex("""<(?:meta|\?xml)[^>]{0,200}?(?:charset|encoding)\s*=\s*["']?([\w.:-]{2,40})""", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Declared();
}
