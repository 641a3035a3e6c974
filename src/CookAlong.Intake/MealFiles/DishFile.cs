using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using System.Text.Json;
using System.Text.Json.Nodes;
using CookAlong.Domain.Meals;
using CookAlong.Intake.Reading;

namespace CookAlong.Intake.MealFiles;

/// <summary>A dish, or every reason found why the text holds none. Places are pointers into the dish: "/steps/2/minutes".</summary>
/// <param name="Dish">Null exactly when there are errors.</param>
public sealed record DishFileRead(Dish? Dish, ImmutableArray<FileError> Errors)
{
    [MemberNotNullWhen(true, nameof(Dish))]
    public bool IsGood => Dish is not null;
}

/// <summary>
/// A dish by itself, in the shape that a meal file's "dishes" have. It is read by the rules of meals, in a meal of its own
/// whose kitchen can do everything: whether a real kitchen can is asked when the dish comes into a meal.
/// </summary>
public static class DishFile
{
    const string InMeal = "/dishes/0";

    /// <summary>More hands than a step may take.</summary>
    const int Hands = 50;

    /// <summary>Never throws, whatever the text.</summary>
    public static DishFileRead Read(string json)
    {
        ArgumentNullException.ThrowIfNull(json);
        var findings = new Findings();
        using var document = JsonText.Parse(json, findings);
        if (document is null)
        {
            return new(null, findings.All);
        }

        if (document.RootElement.ValueKind != JsonValueKind.Object)
        {
            return new(null, [new FileError("", "This is no dish.", "Write an object with a name and steps: { \"name\": \"Leek tart\", \"steps\": [ ... ] }.")]);
        }

        var read = MealFile.Read(Around(JsonObject.Create(document.RootElement.Clone())!).ToJsonString());
        return read.IsGood
            ? new(read.Meal.Dishes[0], [])
            : new(null, [.. read.Errors.Select(error => error with { Place = error.Place.StartsWith(InMeal, StringComparison.Ordinal) ? error.Place[InMeal.Length..] : "" })]);
    }

    static JsonObject Around(JsonObject dish)
    {
        dish["course"] = "table";
        var ways = Entries(dish, "steps").SelectMany(step => Entries(step, "options").Prepend(step));
        var appliances = ways.SelectMany(way => Entries(way, "uses")).Select(use => TextOf(use["appliance"])).OfType<string>().Distinct(StringComparer.Ordinal);
        return new JsonObject
        {
            ["format"] = MealFile.Format,
            ["name"] = "One dish",
            ["timeZone"] = "UTC",
            ["courses"] = new JsonArray(new JsonObject { ["id"] = "table", ["tableTime"] = "2000-01-15T12:00" }),
            ["kitchen"] = new JsonObject
            {
                ["ovens"] = new JsonArray(new JsonObject
                {
                    ["id"] = "oven",
                    ["shelves"] = 50,
                    ["minCelsius"] = 0,
                    ["maxCelsius"] = KitchenReading.Hottest,
                    ["heatUpPerMinute"] = 100,
                    ["coolDownPerMinute"] = 100,
                }),
                ["rings"] = 50,
                ["grills"] = new JsonArray(new JsonObject { ["id"] = "grill" }),
                ["appliances"] = JsonWords.List(appliances.Take(50).Select(id => new JsonObject { ["id"] = id, ["count"] = 100 })),
            },
            ["helpers"] = JsonWords.List(Enumerable.Range(1, Hands).Select(number => new JsonObject { ["id"] = $"cook-{number}" })),
            ["dishes"] = new JsonArray(dish),
        };
    }

    internal static IEnumerable<JsonObject> Entries(JsonObject owner, string list) => owner[list] is JsonArray entries ? entries.OfType<JsonObject>() : [];

    internal static string? TextOf(JsonNode? node) => node is JsonValue value && value.TryGetValue<string>(out var text) ? text : null;
}
