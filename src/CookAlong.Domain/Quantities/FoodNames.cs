namespace CookAlong.Domain.Quantities;

/// <summary>Names of foods as they are compared: lower case, no signs, one of each, so that "Onions" and "onion" are the same.</summary>
public static class FoodNames
{
    /// <summary>"tomatoes" is "tomato", "berries" is "berry", "leaves" is "leaf"; "asparagus" and "hummus" stay.</summary>
    public static string Singular(string word) => word switch
    {
        "leaves" => "leaf",
        "loaves" => "loaf",
        "halves" => "half",
        "chillies" or "chilies" => word[..^2],
        "cookies" or "brownies" or "smoothies" => word[..^1],
        _ when word.Length < 4 || word.EndsWith("ss", StringComparison.Ordinal) || word.EndsWith("us", StringComparison.Ordinal) || word.EndsWith("is", StringComparison.Ordinal) => word,
        _ when word.EndsWith("ies", StringComparison.Ordinal) && word.Length > 4 => word[..^3] + "y",
        _ when word.EndsWith("oes", StringComparison.Ordinal) || word.EndsWith("ches", StringComparison.Ordinal) || word.EndsWith("shes", StringComparison.Ordinal) || word.EndsWith("sses", StringComparison.Ordinal) => word[..^2],
        _ when word.EndsWith('s') => word[..^1],
        _ => word,
    };

    /// <summary>The words of a name, each as one of its kind.</summary>
    public static string[] Words(string name)
    {
        var words = new List<string>();
        for (var at = 0; at < name.Length;)
        {
            if (!IsOfWord(name[at]))
            {
                at++;
                continue;
            }

            var end = at;
            while (end < name.Length && (IsOfWord(name[end]) || name[end] is '\'' or '’'))
            {
                end++;
            }

            words.Add(Singular(name[at..end].Replace("'", "", StringComparison.Ordinal).Replace("’", "", StringComparison.Ordinal).ToLowerInvariant()));
            at = end;
        }

        return [.. words];
    }

    /// <summary>What it is, without what stands after a comma or in brackets and says how it comes: "goose" of "goose, oven-ready".</summary>
    public static string Head(string name) => name.Split([',', '(', ';', ':'], 2)[0];

    /// <summary>What a name is compared by: its words in their order.</summary>
    public static string Key(string name) => string.Join(' ', Words(name));

    static bool IsOfWord(char sign) => char.IsLetterOrDigit(sign);
}
