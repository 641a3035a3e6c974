using System.Text.RegularExpressions;

namespace CookAlong.Intake.Recipes;

/// <summary>Tells the parts of a recipe in plain text: its name, how many it serves, ingredients, steps.</summary>
static partial class RecipeText
{
    /// <summary>Longer lines are sentences, not ingredients.</summary>
    const int LongestIngredient = 90;

    public static RecipeRead Read(string text)
    {
        var (name, serves) = ("", (int?)null);
        var (ingredients, steps, unread) = (new List<string>(), new List<string>(), new List<string>());
        var (part, stated) = (Part.Unknown, StatedTimes.None);
        foreach (var line in text.ReplaceLineEndings("\n").Split('\n').Select(line => line.Trim()).Where(line => line.Length > 0))
        {
            if (HeadingOf(line) is { } heading)
            {
                part = heading;
            }
            else if (serves is null && line.Length < 80 && Serving().Match(line) is { Success: true } serving)
            {
                serves = int.Parse(serving.Groups["many"].Value, System.Globalization.CultureInfo.InvariantCulture);
            }
            else if (line.Length < 120 && stated.With(line) is { } more)
            {
                stated = more;
            }
            else if (name == "" && part == Part.Unknown && steps.Count + ingredients.Count == 0 && line.Length < 100 && !IsIngredient(line) && !line.EndsWith('.'))
            {
                name = line.Trim('*', '#', '_', ' ');
            }
            else if (part == Part.Ingredients || (part == Part.Unknown && IsIngredient(line)))
            {
                ingredients.Add(Bullet().Replace(line, ""));
            }
            else if (part == Part.Steps || Number().IsMatch(line) || line.EndsWith('.') || line.Length > LongestIngredient)
            {
                steps.Add(Number().Replace(Bullet().Replace(line, ""), ""));
            }
            else
            {
                unread.Add(line);
            }
        }

        return RecipeRead.Of(name, serves, ingredients, steps, unread) with { Stated = stated };
    }

    /// <summary>Short, and begins with a quantity or a bullet, and is no sentence.</summary>
    static bool IsIngredient(string line) =>
        line.Length <= LongestIngredient && !line.EndsWith('.') && !Number().IsMatch(line) && (Bullet().IsMatch(line) || Amount().IsMatch(line));

    static Part? HeadingOf(string line) => line.Trim('*', '#', '_', ':', ' ').ToLowerInvariant() switch
    {
        "ingredients" or "you need" or "you will need" => Part.Ingredients,
        "method" or "directions" or "instructions" or "preparation" or "steps" or "how to" => Part.Steps,
        _ => null,
    };

    enum Part
    {
        Unknown,
        Ingredients,
        Steps,
    }

    [GeneratedRegex(@"^\W*(serves|serving|servings|makes|yield|yields|for)\W+(about\s+)?(?<many>[1-9][0-9]{0,2})\b(?!\s*(min|hour|°|g\b|kg|ml|cm))", RegexOptions.IgnoreCase)]
    private static partial Regex Serving();

    [GeneratedRegex(@"^[-*•·–]\s+")]
    private static partial Regex Bullet();

    [GeneratedRegex(@"^([0-9]{1,2}[.)]|step\s+[0-9]{1,2}[:.]?)\s+", RegexOptions.IgnoreCase)]
    private static partial Regex Number();

    [GeneratedRegex(@"^([0-9]|[¼½¾⅓⅔⅛]|(a|an|one|two|three|four|half|some|a pinch|a knob|salt|pepper)\b)", RegexOptions.IgnoreCase)]
    private static partial Regex Amount();
}
