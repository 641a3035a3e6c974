using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace CookAlong.Intake.Reading;

/// <summary>Small pieces of the JSON that both formats write.</summary>
internal static class JsonWords
{
    /// <summary>
    /// Indented, and every letter, apostrophe and plus sign as it is: these files are read by people. They are sent as
    /// JSON and never put into a page as they are.
    /// </summary>
    public static JsonSerializerOptions Readable { get; } = new()
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        MaxDepth = JsonText.MostDepth,
    };

    public static JsonArray List(IEnumerable<JsonNode?> items) => new([.. items]);

    public static JsonArray Texts(IEnumerable<string> items) => List(items.Select(item => (JsonNode?)JsonValue.Create(item)));

    /// <summary>Without the members that say nothing (null).</summary>
    public static JsonObject Object(params ReadOnlySpan<(string Name, JsonNode? Value)> members)
    {
        var node = new JsonObject();
        foreach (var (name, value) in members)
        {
            if (value is not null)
            {
                node.Add(name, value);
            }
        }

        return node;
    }

    /// <summary>Null for an empty list, so that the member is left out.</summary>
    public static JsonArray? OrNothing(this JsonArray list) => list.Count == 0 ? null : list;

    public static string WordFor<T>(this IReadOnlyDictionary<string, T> words, T value) where T : struct =>
        words.Single(pair => pair.Value.Equals(value)).Key;
}
