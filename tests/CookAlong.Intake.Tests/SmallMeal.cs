using System.Text.Json.Nodes;
using CookAlong.Domain.Meals;
using CookAlong.Intake.MealFiles;

namespace CookAlong.Intake.Tests;

/// <summary>A meal of two dishes that says no more than it must; tests spoil one thing of it at a time.</summary>
internal static class SmallMeal
{
    public const string Text =
        """
        {
          "format": "cookalong-meal/1",
          "name": "Soup and bread",
          "timeZone": "Europe/Berlin",
          "courses": [{ "id": "main", "tableTime": "2027-12-19T19:00" }],
          "kitchen": {
            "ovens": [{ "id": "oven", "shelves": 2, "minCelsius": 50, "maxCelsius": 250, "heatUpPerMinute": 10, "coolDownPerMinute": 5 }],
            "rings": 2
          },
          "helpers": [{ "id": "ada", "can": ["knife"] }, { "id": "kit", "child": true, "can": ["stir"] }],
          "dishes": [
            {
              "id": "soup", "course": "main",
              "steps": [
                { "id": "chop", "text": "Chop the leeks", "minutes": 10, "needs": ["knife"] },
                { "id": "simmer", "text": "Simmer the soup", "minutes": 30, "attention": "nearby", "uses": [{ "rings": 1 }], "tend": [{ "text": "Stir", "every": 10 }] }
              ]
            },
            {
              "id": "bread", "course": "main",
              "steps": [
                { "id": "bake", "text": "Bake the bread", "minutes": { "least": 25, "likely": 30, "most": 40 }, "attention": "unattended", "uses": [{ "oven": { "celsius": { "min": 200, "max": 221 } } }] }
              ]
            }
          ]
        }
        """;

    public static Meal Meal => Read(_ => { }).Meal!;

    public static JsonObject Node => JsonNode.Parse(Text)!.AsObject();

    public static string With(Action<JsonNode> change)
    {
        var node = Node;
        change(node);
        return node.ToJsonString();
    }

    public static MealFileRead Read(Action<JsonNode> change) => MealFile.Read(With(change));

    public static JsonNode Step(JsonNode root, int dish, int step) => root["dishes"]![dish]!["steps"]![step]!;
}
