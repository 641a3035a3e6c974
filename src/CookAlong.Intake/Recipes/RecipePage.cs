using System.Globalization;
using System.Text.RegularExpressions;
using AngleSharp.Dom;

namespace CookAlong.Intake.Recipes;

/// <summary>Finds a recipe that a web page marks as one, else reads its words. Scripts are text here and never run.</summary>
static partial class RecipePage
{
    /// <summary>Null when the text is neither a page nor data.</summary>
    public static RecipeRead? Read(string text)
    {
        var trimmed = text.TrimStart('\uFEFF', ' ', '\t', '\r', '\n');
        if (RecipeData.IsLike(trimmed))
        {
            return RecipeData.Read(trimmed) ?? Other(trimmed);
        }

        if (!Beginning().IsMatch(trimmed))
        {
            return null;
        }

        var tags = PageTags.Read(trimmed);
        var body = PageText.Parse(tags);
        var read = tags.Data.Select(RecipeData.Read).FirstOrDefault(recipe => recipe is not null)
            ?? RecipeMarkup.Read(body)
            ?? Text(body, keepsBreaks: !tags.HasBlocks);
        return tags.Flattened == 0 ? read
            : read with { Unread = [FormattableString.Invariant($"The page is nested more than {PageTags.Deepest} tags deep: {tags.Flattened} tags below that were left out, their words kept."), .. read.Unread] };
    }

    /// <summary>Its words; the first heading of all names it, whatever stands above.</summary>
    static RecipeRead Text(INode body, bool keepsBreaks)
    {
        var lines = PageText.Lines(body, keepsBreaks);
        var heading = body.GetDescendants().OfType<IElement>().FirstOrDefault(one => one.LocalName == "h1") is { } first ? string.Join(' ', PageText.Lines(first)) : "";
        if (lines.Remove(heading))
        {
            lines.Insert(0, heading);
        }

        return RecipeText.Read(string.Join('\n', lines)) with { Form = RecipeForm.UnmarkedPage };
    }

    /// <summary>The start of it is kept, so that a person sees what it was.</summary>
    static RecipeRead Other(string json) =>
        RecipeRead.Of("", null, [], [], ["This is data, not words, and no recipe is marked in it; or it is not whole.", json.Length > 200 ? WholeCharacters.Of(json[..200]) + " …" : json]) with { Form = RecipeForm.OtherData };

    /// <summary>A recipe by the properties that schema.org gives it.</summary>
    /// <param name="texts">The values of a property.</param>
    public static RecipeRead Marked(Func<string, IEnumerable<string>> texts, IEnumerable<string> steps)
    {
        var unread = new List<string>();
        StatedTime? Time(params ReadOnlySpan<string> names)
        {
            foreach (var name in names)
            {
                if (texts(name).FirstOrDefault() is { } text)
                {
                    if (StatedTime.Of(text) is { } time)
                    {
                        return time;
                    }

                    if (!StatedTime.IsNone(text))
                    {
                        // A time that is none is told with what else could not be read.
                        unread.Add($"{name}: {text}");
                    }
                }
            }

            return null;
        }

        var stated = new StatedTimes(Time("prepTime"), Time("cookTime", "performTime"), Time("totalTime"));
        return RecipeRead.Of(
            texts("name").FirstOrDefault() ?? "",
            texts("recipeYield").Select(Count).FirstOrDefault(count => count is not null),
            texts("recipeIngredient").Concat(texts("ingredients")),
            steps,
            unread) with
        { Stated = stated, Form = RecipeForm.Marked };
    }

    /// <summary>"Serves 4", "4 portions": the first number from 1 to 999.</summary>
    static int? Count(string text) => Numbers().Match(text) is { Success: true } number ? int.Parse(number.Value, CultureInfo.InvariantCulture) : null;

    // A page begins as one: words with a sign in them that looks like a tag are words.
    [GeneratedRegex("^<([a-z]|!|[?])", RegexOptions.IgnoreCase)]
    private static partial Regex Beginning();

    [GeneratedRegex("(?<![0-9])[1-9][0-9]{0,2}(?![0-9])")]
    private static partial Regex Numbers();
}
