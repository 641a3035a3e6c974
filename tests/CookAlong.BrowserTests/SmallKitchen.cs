namespace CookAlong.BrowserTests;

/// <summary>The kitchen and the people of the small meals, as members of a meal file.</summary>
static class SmallKitchen
{
    public const string Json =
        """
        "kitchen": {
          "ovens": [{ "id": "oven", "name": "Oven", "shelves": 2, "fan": false, "minCelsius": 50, "maxCelsius": 250,
                      "heatUpPerMinute": 20, "coolDownPerMinute": 5 }],
          "rings": 2
        },
        "helpers": [
          { "id": "maren", "name": "Maren" },
          { "id": "ivo", "name": "Ivo" },
          { "id": "tobi", "name": "Tobi", "child": true }
        ]
        """;
}
