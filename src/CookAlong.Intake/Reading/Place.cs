using System.Globalization;
using System.Text.Json;

namespace CookAlong.Intake.Reading;

/// <summary>
/// A value in a file and where it stands. Asked for something it has not, it notes an error and gives a harmless
/// stand-in, so that reading goes on and finds the rest.
/// </summary>
internal readonly record struct Place(JsonElement Value, string Pointer, Findings Findings)
{
    /// <summary>Longest text, in characters.</summary>
    public const int LongestText = 2_000;

    /// <summary>Longest id, in characters.</summary>
    public const int LongestId = 100;

    public static string Join(string pointer, string name) =>
        $"{pointer}/{name.Replace("~", "~0", StringComparison.Ordinal).Replace("/", "~1", StringComparison.Ordinal)}";

    /// <summary>Cut for a sentence.</summary>
    public static string Short(string text) => text.Length <= 40 ? text : string.Concat(text.AsSpan(0, 37), "...");

    public void Note(string problem, string remedy) => Findings.Note(Pointer, problem, remedy);

    public void Note(string member, string problem, string remedy) => Findings.Note(Join(Pointer, member), problem, remedy);

    /// <summary>Null when absent; JSON's null counts as absent.</summary>
    public Place? Member(string name) =>
        Value.ValueKind == JsonValueKind.Object && Value.TryGetProperty(name, out var value) && value.ValueKind != JsonValueKind.Null
            ? new Place(value, Join(Pointer, name), Findings)
            : null;

    public bool Has(string name) => Member(name) is not null;

    /// <summary>An object, or null with a note when it is something else; null without a note when absent.</summary>
    public Place? Object(string name) => Member(name) is not { } member ? null : member.IsObject(name) ? member : null;

    /// <summary>The objects of an array; empty when absent.</summary>
    public IReadOnlyList<Place> Objects(string name, int most) => [.. Items(name, most).Where(item => item.IsObject("entry"))];

    /// <summary>The texts of an array of texts; empty when absent.</summary>
    public IReadOnlyList<(string Text, Place Place)> Texts(string name, int most, int longest = LongestId) =>
        [.. Items(name, most).Select(item => (Text: item.AsText(longest), Place: item)).Where(item => item.Text is not null).Select(item => (item.Text!, item.Place))];

    public IReadOnlyList<Place> Items(string name, int most)
    {
        if (Member(name) is not { } list)
        {
            return [];
        }

        if (list.Value.ValueKind != JsonValueKind.Array)
        {
            list.Note($"\"{name}\" must be a list.", $"Write it in square brackets: \"{name}\": [ ... ].");
            return [];
        }

        var count = list.Value.GetArrayLength();
        if (count > most)
        {
            list.Note($"\"{name}\" has {count} entries; {most} is the most that can be planned.", "Leave some out, or make two meals of it.");
        }

        var (pointer, findings) = (list.Pointer, Findings);
        return [.. list.Value.EnumerateArray().Take(most).Select((item, index) => new Place(item, $"{pointer}/{index}", findings))];
    }

    public string Text(string name, int longest = LongestText)
    {
        if (Member(name) is { } member)
        {
            return member.AsText(longest) ?? "";
        }

        NoteMissing(name, $"Add \"{name}\": \"...\".");
        return "";
    }

    public string? OptionalText(string name) => Member(name)?.AsText(LongestText);

    public string Id(string name) => Text(name, LongestId);

    public int Whole(string name, int least, int most, int? fallback = null)
    {
        if (Member(name) is { } member)
        {
            return member.AsWhole(least, most) ?? fallback ?? Math.Max(least, 0);
        }

        if (fallback is null)
        {
            NoteMissing(name, $"Add a whole number, {least} to {most}.");
        }

        return fallback ?? Math.Max(least, 0);
    }

    public int? OptionalWhole(string name, int least, int most) => Member(name)?.AsWhole(least, most);

    /// <param name="above">The value is larger than this.</param>
    public decimal Number(string name, decimal above, decimal most, decimal? fallback = null)
    {
        if (Member(name) is { } member)
        {
            if (member.Value.ValueKind == JsonValueKind.Number && member.Value.TryGetDecimal(out var number) && number > above && number <= most)
            {
                return number;
            }

            member.Note(
                $"\"{name}\" must be a number above {Say(above)} and at most {Say(most)}, not {member.Shown}.",
                "Write the number without quotes.");
        }
        else if (fallback is null)
        {
            NoteMissing(name, $"Add a number above {Say(above)}, at most {Say(most)}.");
        }

        return fallback ?? 1;
    }

    /// <summary>0 when absent.</summary>
    public double Real(string name, double least, double most)
    {
        if (Member(name) is not { } member)
        {
            return 0;
        }

        if (member.Value.ValueKind == JsonValueKind.Number && member.Value.TryGetDouble(out var number) && number >= least && number <= most)
        {
            return number;
        }

        member.Note($"\"{name}\" cannot be {member.Shown}.", string.Create(CultureInfo.InvariantCulture, $"Write a number, {least} to {most:0.#e0}."));
        return 0;
    }

    /// <summary>0 when absent.</summary>
    public long Long(string name)
    {
        if (Member(name) is not { } member)
        {
            return 0;
        }

        if (member.Value.ValueKind == JsonValueKind.Number && member.Value.TryGetInt64(out var number))
        {
            return number;
        }

        member.Note($"\"{name}\" must be a whole number, not {member.Shown}.", "Write the number without quotes.");
        return 0;
    }

    public bool Flag(string name, bool fallback = false)
    {
        if (Member(name) is not { } member)
        {
            return fallback;
        }

        if (member.Value.ValueKind is JsonValueKind.True or JsonValueKind.False)
        {
            return member.Value.GetBoolean();
        }

        member.Note($"\"{name}\" must be true or false, not {member.Shown}.", "Write true or false without quotes.");
        return fallback;
    }

    /// <summary>One of the words; null with a note when it is another, null without when absent.</summary>
    public T? OneOf<T>(string name, IReadOnlyDictionary<string, T> words) where T : struct
    {
        if (Member(name) is not { } member)
        {
            return null;
        }

        if (member.Value.ValueKind == JsonValueKind.String && words.TryGetValue(member.Value.GetString()!, out var value))
        {
            return value;
        }

        member.Note($"\"{name}\" cannot be {member.Shown}.", $"Write one of: {string.Join(", ", words.Keys)}.");
        return null;
    }

    public string? AsText(int longest)
    {
        if (Value.ValueKind != JsonValueKind.String)
        {
            Note($"This must be a text, not {Shown}.", "Write it in double quotes.");
            return null;
        }

        var text = Value.GetString()!;
        if (string.IsNullOrWhiteSpace(text))
        {
            Note("This text is empty.", "Write something, or leave the field out where it may be left out.");
            return null;
        }

        if (text.Length > longest)
        {
            Note($"This text has {text.Length} characters; {longest} is the most.", "Make it shorter.");
            return null;
        }

        // A terminal obeys control characters; a line break and a tab are harmless.
        if (text.Any(character => char.IsControl(character) && character is not ('\n' or '\t')))
        {
            Note("This text holds control characters.", "Take them out; they show on no screen.");
            return null;
        }

        return text;
    }

    public int? AsWhole(int least, int most)
    {
        // 20.0 is a whole number to JSON Schema, so it is one here.
        if (Value.ValueKind == JsonValueKind.Number && Value.TryGetDecimal(out var number) && number == decimal.Truncate(number))
        {
            if (number >= least && number <= most)
            {
                return (int)number;
            }

            Note($"{Say(number)} is out of range here.", $"Write a whole number, {least} to {most}.");
            return null;
        }

        Note($"This must be a whole number, not {Shown}.", $"Write a whole number without quotes, {least} to {most}.");
        return null;
    }

    public string Shown => Value.ValueKind switch
    {
        JsonValueKind.Object => "an object",
        JsonValueKind.Array => "a list",
        JsonValueKind.String => $"\"{Short(Value.GetString()!)}\"",
        _ => Short(Value.GetRawText()),
    };

    public void NoteMissing(string name, string remedy) => Note(name, $"\"{name}\" is missing.", remedy);

    private bool IsObject(string name)
    {
        if (Value.ValueKind == JsonValueKind.Object)
        {
            return true;
        }

        Note(name == "entry" ? $"This entry must be an object, not {Shown}." : $"\"{name}\" must be an object, not {Shown}.", "Write it in braces: { ... }.");
        return false;
    }

    private static string Say(decimal number) => number.ToString("0.####", CultureInfo.InvariantCulture);
}
