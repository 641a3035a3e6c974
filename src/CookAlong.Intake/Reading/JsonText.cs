using System.Text;
using System.Text.Json;

namespace CookAlong.Intake.Reading;

/// <summary>From the text of a file to its JSON, or the reason why it is none.</summary>
internal static class JsonText
{
    /// <summary>Largest file, in bytes of UTF-8: 10 MB. A meal of forty dishes takes a tenth of one.</summary>
    public const int MostBytes = 10_000_000;

    /// <summary>Deepest nesting; the formats need nine levels, the rest is room for unknown fields.</summary>
    public const int MostDepth = 64;

    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>Null when the text is no JSON object that can be read further; then <paramref name="findings"/> say why.</summary>
    public static JsonDocument? Parse(string text, Findings findings)
    {
        // UTF-8 never takes fewer bytes than UTF-16 takes characters, so the cheap test comes first.
        if (text.Length > MostBytes || Encoding.UTF8.GetByteCount(text) > MostBytes)
        {
            findings.Note("", "The file is larger than 10 MB.", "Check that it is the right file; a meal takes a few hundred kilobytes at the most.");
            return null;
        }

        if (string.IsNullOrWhiteSpace(text))
        {
            findings.Note("", "The file is empty.", "Choose a file that holds JSON text.");
            return null;
        }

        JsonDocument document;
        try
        {
            document = JsonDocument.Parse(Strict.GetBytes(text.TrimStart('\uFEFF')), new JsonDocumentOptions { MaxDepth = MostDepth });
        }
        catch (EncoderFallbackException)
        {
            findings.Note("", "The file is not proper Unicode text.", "Save it as UTF-8.");
            return null;
        }
        catch (JsonException problem)
        {
            var line = (problem.LineNumber ?? 0) + 1;
            var column = (problem.BytePositionInLine ?? 0) + 1;
            findings.Note(
                "",
                $"The file is not JSON: reading stops at line {line}, byte {column}.",
                $"Look there for a missing comma, quote or bracket, or nesting deeper than {MostDepth} levels.");
            return null;
        }

        if (document.RootElement.ValueKind != JsonValueKind.Object)
        {
            findings.Note("", "The file is not a JSON object.", "It must begin with { and hold the fields of the format.");
            document.Dispose();
            return null;
        }

        var before = findings.Count;
        RefuseTwins(document.RootElement, "", findings);
        if (findings.Count == before)
        {
            return document;
        }

        document.Dispose();
        return null;
    }

    /// <summary>A name given twice in one object would silently lose one of the two; a broken escape cannot be read at all.</summary>
    private static void RefuseTwins(JsonElement element, string pointer, Findings findings)
    {
        switch (element.ValueKind)
        {
            case JsonValueKind.Object:
                var names = new HashSet<string>(StringComparer.Ordinal);
                foreach (var member in element.EnumerateObject())
                {
                    if (NameOf(member) is not { } name)
                    {
                        NoteBrokenEscape(pointer, findings);
                    }
                    else if (!names.Add(name))
                    {
                        findings.Note(Place.Join(pointer, name), $"\"{Place.Short(name)}\" is given twice here.", "Keep one of the two.");
                    }
                    else
                    {
                        RefuseTwins(member.Value, Place.Join(pointer, name), findings);
                    }
                }

                break;
            case JsonValueKind.Array:
                var index = 0;
                foreach (var item in element.EnumerateArray())
                {
                    RefuseTwins(item, $"{pointer}/{index++}", findings);
                }

                break;
            case JsonValueKind.String when !CanBeRead(element):
                NoteBrokenEscape(pointer, findings);
                break;
        }
    }

    private static void NoteBrokenEscape(string pointer, Findings findings) =>
        findings.Note(pointer, "A text here has half of a \\u escape pair.", "Write the character itself, or both halves.");

    private static string? NameOf(JsonProperty member)
    {
        try
        {
            return member.Name;
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }

    private static bool CanBeRead(JsonElement text)
    {
        try
        {
            return text.GetString() is not null;
        }
        catch (InvalidOperationException)
        {
            return false;
        }
    }
}
