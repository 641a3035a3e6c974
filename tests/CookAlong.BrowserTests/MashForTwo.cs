using System.Globalization;

namespace CookAlong.BrowserTests;

/// <summary>
/// A small meal with one best plan: the bread is Maren's and wants to be fresh, so Ivo chops first and then makes the mash.
/// When the chopping runs over, the mash can still be on time if Maren makes it before the bread.
/// </summary>
static class MashForTwo
{
    public static string Json(string name, DateTimeOffset now)
    {
        var table = now.UtcDateTime.AddMinutes(34).ToString("yyyy-MM-dd'T'HH:mm", CultureInfo.InvariantCulture);
        return $$"""
        {
          "format": "cookalong-meal/1",
          "name": "{{name}}",
          "timeZone": "Etc/UTC",
          "courses": [{ "id": "main", "name": "Supper", "tableTime": "{{table}}" }],
          "guests": [{ "name": "Ada", "portion": 1 }],
          {{SmallKitchen.Json}},
          "dishes": [
            { "id": "slaw", "name": "Slaw", "course": "main", "serves": 2,
              "holds": [{ "place": "side", "bestWithin": 120, "goodFor": 150, "limit": 180 }],
              "steps": [{ "id": "chop", "text": "Chop the cabbage", "minutes": 10, "by": ["ivo"], "caution": "Sharp knife: fingertips in." }] },
            { "id": "mash", "name": "Mash", "course": "main", "serves": 2,
              "holds": [{ "place": "covered", "bestWithin": 5, "goodFor": 60, "limit": 90 }],
              "steps": [{ "id": "mash", "text": "Make the mash", "minutes": 14, "by": ["ivo", "maren"] }] },
            { "id": "bread", "name": "Bread", "course": "main", "serves": 2,
              "holds": [{ "place": "side", "bestWithin": 2, "goodFor": 60, "limit": 90 }],
              "steps": [{ "id": "knead", "text": "Toast the bread", "minutes": 12, "by": ["maren"] }] }
          ]
        }
        """;
    }
}
