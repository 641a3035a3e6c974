namespace CookAlong.Web.Tests.Api;

/// <summary>A duck for 13:00 (UTC) on 20 December 2026, as somebody would write it by hand.</summary>
static class DuckForTwo
{
    public const string File = """
        {
          "format": "cookalong-meal/1",
          "name": "Duck for two",
          "timeZone": "Etc/UTC",
          "ourNote": "the small dish is chipped",
          "courses": [{ "id": "main", "name": "Lunch", "tableTime": "2026-12-20T13:00" }],
          "guests": [{ "name": "Ada", "portion": 1 }, { "name": "Ivo", "portion": 1 }],
          "kitchen": { "ovens": [{ "id": "oven", "name": "Oven", "shelves": 2, "fan": false, "minCelsius": 50, "maxCelsius": 250, "heatUpPerMinute": 20, "coolDownPerMinute": 5 }], "rings": 2 },
          "helpers": [{ "id": "maren", "name": "Maren", "skills": ["hot"] }],
          "dishes": [
            { "id": "duck", "name": "Duck", "course": "main", "serves": 2,
              "holds": [{ "place": "side", "bestWithin": 20, "goodFor": 30, "limit": 60 }],
              "ingredients": [{ "name": "duck", "quantity": 2, "unit": "kg" }, { "name": "salt", "quantity": 10, "unit": "g" }],
              "steps": [
                { "id": "salt", "text": "Salt the duck", "minutes": 10 },
                { "id": "roast", "text": "Roast the duck", "minutes": 90, "attention": "unattended",
                  "uses": [{ "oven": { "shelves": 1, "celsius": { "min": 170, "ideal": 180, "max": 190 } } }],
                  "core": { "celsius": 74, "cut": "wholeDuck", "kilograms": 2 } }] }
          ]
        }
        """;
}
