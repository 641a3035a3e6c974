using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;

namespace CookAlong.Intake.Recipes;

/// <summary>Finds a recipe that a web page marks as one: schema.org's Recipe as JSON-LD or as microdata. Scripts are text here and never run.</summary>
static partial class RecipePage
{
    /// <summary>Deeper is nothing a recipe needs.</summary>
    const int Deepest = 12;

    /// <summary>Null when there is none.</summary>
    public static RecipeRead? Read(string text)
    {
        var trimmed = text.TrimStart('\uFEFF', ' ', '\t', '\r', '\n');
        if (trimmed.StartsWith('{') || trimmed.StartsWith('['))
        {
            return OfJson(trimmed);
        }

        if (!trimmed.Contains('<', StringComparison.Ordinal) || !Markup().IsMatch(trimmed))
        {
            return null;
        }

        var page = new HtmlParser().ParseDocument(trimmed);
        return page.QuerySelectorAll("script[type='application/ld+json']").Select(script => OfJson(script.TextContent)).FirstOrDefault(recipe => recipe is not null)
            ?? OfMicrodata(page)
            ?? RecipeText.Read(string.Join('\n', page.QuerySelectorAll("h1, h2, h3, p, li").Select(one => one.TextContent.ReplaceLineEndings(" "))));
    }

    static RecipeRead? OfJson(string json)
    {
        try
        {
            using var document = JsonDocument.Parse(json, new() { AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip, MaxDepth = 64 });
            return Find(document.RootElement, 0) is { } recipe ? OfRecipe(recipe) : null;
        }
        catch (JsonException)
        {
            // A page's data may be broken; its text is read instead.
            return null;
        }
    }

    static JsonElement? Find(JsonElement json, int depth) =>
        depth > Deepest ? null
        : json.ValueKind == JsonValueKind.Array ? json.EnumerateArray().Select(one => Find(one, depth + 1)).FirstOrDefault(one => one is not null)
        : json.ValueKind != JsonValueKind.Object ? null
        : IsA(json, "Recipe") ? json
        : json.EnumerateObject().Where(one => one.Name is "@graph" or "mainEntity" or "mainEntityOfPage").Select(one => Find(one.Value, depth + 1)).FirstOrDefault(one => one is not null);

    static bool IsA(JsonElement json, string type) =>
        json.TryGetProperty("@type", out var named) && OneOrMany(named)
            .Any(one => one.ValueKind == JsonValueKind.String && (one.GetString() == type || one.GetString()!.EndsWith($"/{type}", StringComparison.Ordinal)));

    static RecipeRead OfRecipe(JsonElement recipe) => Timed(name => Texts(recipe, name), RecipeRead.Of(
        Texts(recipe, "name").FirstOrDefault() ?? "",
        Texts(recipe, "recipeYield").Select(Count).FirstOrDefault(count => count is not null),
        Texts(recipe, "recipeIngredient").Concat(Texts(recipe, "ingredients")),
        recipe.TryGetProperty("recipeInstructions", out var steps) ? Steps(steps, 0) : [],
        []));

    /// <summary>What it says of the whole; a time that is none is told with what else could not be read.</summary>
    static RecipeRead Timed(Func<string, IEnumerable<string>> texts, RecipeRead recipe)
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
                        unread.Add($"{name}: {text}");
                    }
                }
            }

            return null;
        }

        var stated = new StatedTimes(Time("prepTime"), Time("cookTime", "performTime"), Time("totalTime"));
        return recipe with { Stated = stated, Unread = [.. recipe.Unread, .. unread] };
    }

    /// <summary>A text, a list, steps, or sections of steps.</summary>
    static IEnumerable<string> Steps(JsonElement json, int depth) =>
        depth > Deepest ? []
        : json.ValueKind == JsonValueKind.String ? Plain(json.GetString()!).Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
        : json.ValueKind == JsonValueKind.Array ? json.EnumerateArray().SelectMany(one => Steps(one, depth + 1))
        : json.ValueKind != JsonValueKind.Object ? []
        : json.TryGetProperty("itemListElement", out var parts) ? Steps(parts, depth + 1)
        : Texts(json, "text").Concat(Texts(json, "name")).Take(1);

    static IEnumerable<JsonElement> OneOrMany(JsonElement json) => json.ValueKind == JsonValueKind.Array ? json.EnumerateArray().AsEnumerable() : [json];

    static IEnumerable<string> Texts(JsonElement json, string name) =>
        !json.TryGetProperty(name, out var value) ? []
        : OneOrMany(value)
            .Select(one => one.ValueKind switch { JsonValueKind.String => one.GetString()!, JsonValueKind.Number => one.GetRawText(), _ => "" })
            .Select(one => Plain(one).ReplaceLineEndings(" ").Trim())
            .Where(one => one.Length > 0);

    static RecipeRead? OfMicrodata(IParentNode page) =>
        page.QuerySelector("[itemtype*='schema.org/Recipe']") is not { } recipe ? null : Timed(name => Properties(recipe, name), RecipeRead.Of(
            Properties(recipe, "name").FirstOrDefault() ?? "",
            Properties(recipe, "recipeYield").Select(Count).FirstOrDefault(count => count is not null),
            Properties(recipe, "recipeIngredient").Concat(Properties(recipe, "ingredients")),
            Properties(recipe, "recipeInstructions").SelectMany(text => text.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)),
            []));

    static IEnumerable<string> Properties(IParentNode recipe, string name) =>
        recipe.QuerySelectorAll($"[itemprop='{name}']").SelectMany(one => one.QuerySelectorAll("li") is { Length: > 0 } items ? items.Select(item => item.TextContent) : [one.GetAttribute("content") ?? one.GetAttribute("datetime") ?? one.TextContent])
            .Select(one => one.Trim()).Where(one => one.Length > 0);

    /// <summary>"Serves 4", "4 portions": the first number from 1 to 999.</summary>
    static int? Count(string text) => Numbers().Match(text) is { Success: true } number ? int.Parse(number.Value, CultureInfo.InvariantCulture) : null;

    /// <summary>Texts inside JSON-LD are often HTML.</summary>
    static string Plain(string text) => text.Contains('<', StringComparison.Ordinal) || text.Contains('&', StringComparison.Ordinal)
        ? new HtmlParser().ParseDocument(Breaks().Replace(text, "\n")).Body!.TextContent
        : text;

    [GeneratedRegex("<(html|body|script|div|p|li|h1|article|span)[ >]", RegexOptions.IgnoreCase)]
    private static partial Regex Markup();

    [GeneratedRegex(@"</(p|li|div)>|<br\s*/?>", RegexOptions.IgnoreCase)]
    private static partial Regex Breaks();

    [GeneratedRegex(@"(?<!\d)[1-9]\d{0,2}(?!\d)")]
    private static partial Regex Numbers();
}
