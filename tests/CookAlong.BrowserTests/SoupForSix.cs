using System.Globalization;

namespace CookAlong.BrowserTests;

/// <summary>
/// A small meal whose table time cannot be kept: every chain of steps is longer than the time left, so that each begins
/// at once and a test need not wait for anything to fall due.
/// </summary>
static class SoupForSix
{
    public static string Json(string name, DateTimeOffset now)
    {
        var table = now.UtcDateTime.AddMinutes(20).ToString("yyyy-MM-dd'T'HH:mm", CultureInfo.InvariantCulture);
        return $$"""
        {
          "format": "cookalong-meal/1",
          "name": "{{name}}",
          "timeZone": "Etc/UTC",
          "courses": [{ "id": "main", "name": "Soup", "tableTime": "{{table}}" }],
          "guests": [{ "name": "Ada", "portion": 1, "avoids": ["celery"] }],
          {{SmallKitchen.Json}},
          "dishes": [
            { "id": "soup", "name": "Soup", "course": "main", "serves": 6,
              "ingredients": [{ "name": "celeriac", "quantity": 1, "contains": ["celery"] }],
              "holds": [{ "place": "covered", "bestWithin": 20, "goodFor": 40, "limit": 60 }],
              "steps": [
                { "id": "chop", "text": "Chop the vegetables", "minutes": 15, "by": ["ivo"], "caution": "Sharp knife: fingertips in." },
                { "id": "boil", "text": "Boil the soup", "minutes": 25, "attention": "unattended", "uses": [{ "rings": 1 }],
                  "tend": [{ "text": "Stir the soup", "at": 10 }] }
              ] },
            { "id": "salad", "name": "Salad", "course": "main", "serves": 6,
              "holds": [{ "place": "side", "bestWithin": 30, "goodFor": 60, "limit": 90 }],
              "steps": [
                { "id": "wash", "text": "Wash the leaves", "minutes": 20, "by": ["tobi"], "childSafe": true, "pauseAfter": true },
                { "id": "dress", "text": "Dress the salad", "minutes": 20, "by": ["tobi"], "childSafe": true }
              ] },
            { "id": "stock", "name": "Stock", "course": "main", "serves": 6,
              "holds": [{ "place": "covered", "bestWithin": 30, "goodFor": 60, "limit": 90 }],
              "steps": [
                { "id": "simmer", "text": "Simmer the stock", "minutes": 38, "attention": "unattended", "uses": [{ "rings": 1 }] }
              ] },
            { "id": "bread", "name": "Bread", "course": "main", "serves": 6,
              "holds": [{ "place": "side", "bestWithin": 30, "goodFor": 60, "limit": 90 }],
              "steps": [
                { "id": "knead", "text": "Knead the dough", "minutes": 12, "by": ["maren"] },
                { "id": "bake", "text": "Bake the bread", "minutes": 28, "attention": "unattended",
                  "uses": [{ "oven": { "shelves": 1, "celsius": { "min": 190, "ideal": 200, "max": 210 } } }] }
              ] }
          ]
        }
        """;
    }
}
