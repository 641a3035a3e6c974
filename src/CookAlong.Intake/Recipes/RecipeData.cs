using System.Text.Json;

namespace CookAlong.Intake.Recipes;

/// <summary>schema.org's Recipe as JSON-LD.</summary>
static class RecipeData
{
    /// <summary>Deeper is nothing a recipe needs.</summary>
    const int Deepest = 12;

    /// <summary>Begins as data does, and not as the words of a recipe in brackets do.</summary>
    public static bool IsLike(string text)
    {
        var next = text.AsSpan(Math.Min(1, text.Length)).TrimStart();
        return (text.StartsWith('{') && next is [] or ['"' or '}', ..]) || (text.StartsWith('[') && next is [] or ['"' or '{' or '[' or ']', ..]);
    }

    /// <summary>Null when there is none in it; a page's data may be broken, then its text is read instead.</summary>
    public static RecipeRead? Read(string json)
    {
        try
        {
            using var document = JsonDocument.Parse(WholeCharacters.OfJson(json), new() { AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip, MaxDepth = 64 });
            return Find(document.RootElement, 0) is { } recipe ? OfRecipe(recipe) : null;
        }
        catch (JsonException)
        {
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

    static RecipeRead OfRecipe(JsonElement recipe) => RecipePage.Marked(
        name => Texts(recipe, name),
        recipe.TryGetProperty("recipeInstructions", out var steps) ? Steps(steps, 0) : []);

    /// <summary>A text, a list, steps, or sections of steps.</summary>
    static IEnumerable<string> Steps(JsonElement json, int depth) =>
        depth > Deepest ? []
        : json.ValueKind == JsonValueKind.String ? PageText.Plain(json.GetString()!).Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
        : json.ValueKind == JsonValueKind.Array ? json.EnumerateArray().SelectMany(one => Steps(one, depth + 1))
        : json.ValueKind != JsonValueKind.Object ? []
        : json.TryGetProperty("itemListElement", out var parts) ? Steps(parts, depth + 1)
        : Texts(json, "text").Concat(Texts(json, "name")).Take(1);

    static IEnumerable<JsonElement> OneOrMany(JsonElement json) => json.ValueKind == JsonValueKind.Array ? json.EnumerateArray().AsEnumerable() : [json];

    static IEnumerable<string> Texts(JsonElement json, string name) =>
        !json.TryGetProperty(name, out var value) ? []
        : OneOrMany(value)
            .Select(one => one.ValueKind switch { JsonValueKind.String => one.GetString()!, JsonValueKind.Number => one.GetRawText(), _ => "" })
            .Select(one => PageText.Plain(one).ReplaceLineEndings(" ").Trim())
            .Where(one => one.Length > 0);
}
