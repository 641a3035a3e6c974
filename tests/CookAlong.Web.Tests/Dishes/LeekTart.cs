namespace CookAlong.Web.Tests.Dishes;

static class LeekTart
{
    /// <summary>With a field that nobody knows, a link and a job meanwhile.</summary>
    public const string Json = """
        {
          "id": "tart", "name": "Leek tart", "aunt": "Sigrun's", "kind": "gratin or bake", "occasion": "Harvest feast", "serves": 6,
          "ingredients": [{ "name": "leeks", "quantity": 4 }, { "name": "eggs", "quantity": 3, "contains": ["egg"] }],
          "holds": [{ "place": "side", "bestWithin": 10, "goodFor": 20, "limit": 30 }],
          "steps": [
            { "id": "slice", "text": "Slice the leeks", "minutes": 8 },
            { "id": "sweat", "text": "Sweat the leeks", "minutes": 12, "attention": "nearby", "uses": [{ "rings": 1 }], "tend": [{ "text": "Stir", "every": 4 }] },
            { "id": "line", "text": "Line the tin", "minutes": 6, "after": [] },
            { "id": "bake", "text": "Bake the tart", "minutes": { "least": 30, "likely": 35, "most": 45 }, "attention": "unattended",
              "uses": [{ "oven": { "celsius": { "min": 170, "max": 190 } } }],
              "after": [{ "step": "line", "gap": { "most": 60 } }, { "step": "sweat" }] }
          ]
        }
        """;
}
