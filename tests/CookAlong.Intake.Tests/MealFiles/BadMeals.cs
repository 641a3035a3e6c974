using System.Text.Json.Nodes;
using static CookAlong.Intake.Tests.SmallMeal;

namespace CookAlong.Intake.Tests.MealFiles;

/// <param name="Name">What is wrong.</param>
/// <param name="Spoil">Does it to the small meal.</param>
/// <param name="Place">Where the error must be.</param>
/// <param name="Says">A piece of its problem.</param>
/// <param name="SchemaSays">True where a schema can say it too.</param>
public sealed record BadMeal(string Name, Action<JsonNode> Spoil, string Place, string Says, bool SchemaSays = false)
{
    public override string ToString() => Name;
}

public static class BadMeals
{
    const string Chop = "/dishes/0/steps/0";
    const string Simmer = "/dishes/0/steps/1";
    const string Bake = "/dishes/1/steps/0";

    static JsonNode Json(string text) => JsonNode.Parse(text)!;

    static BadMeal Chopping(string member, string value, string place, string says, bool schemaSays = false) =>
        new($"chop {member} {value}", root => Step(root, 0, 0)[member] = Json(value), place, says, schemaSays);

    static BadMeal Simmering(string member, string value, string place, string says, bool schemaSays = false) =>
        new($"simmer {member} {value}", root => Step(root, 0, 1)[member] = Json(value), place, says, schemaSays);

    static BadMeal Baking(string member, string value, string place, string says, bool schemaSays = false) =>
        new($"bake {member} {value}", root => Step(root, 1, 0)[member] = Json(value), place, says, schemaSays);

    static BadMeal Holding(string hold, string? place, string says, bool schemaSays = false) =>
        new($"hold {hold}", root => root["dishes"]![0]!["holds"] = new JsonArray(Json(hold)), place is null ? "/dishes/0/holds" : $"/dishes/0/holds/0{place}", says, schemaSays);

    static BadMeal Root(string member, string? value, string place, string says, bool schemaSays = false) =>
        new($"{member} {value ?? "missing"}", root => Set(root, member, value), place, says, schemaSays);

    static BadMeal InOven(string member, string? value, string place, string says, bool schemaSays = false) =>
        new($"oven {member} {value ?? "missing"}", root => Set(root["kitchen"]!["ovens"]![0]!, member, value), place, says, schemaSays);

    static BadMeal Awake(string value, string place, string says, bool schemaSays = false) =>
        new($"awake {value}", root => root["kitchen"]!["awake"] = Json(value), place, says, schemaSays);

    static void Set(JsonNode owner, string member, string? value)
    {
        owner.AsObject().Remove(member);
        if (value is not null)
        {
            owner[member] = Json(value);
        }
    }

    public static IReadOnlyList<BadMeal> All { get; } =
    [
        // The form of the file.
        Root("format", null, "/format", "missing", true),
        Root("format", "\"cookalong-meal/9\"", "/format", "cookalong-meal/9", true),
        Root("name", null, "/name", "missing", true),
        Root("name", "7", "/name", "must be a text, not 7", true),
        Root("name", "\" \"", "/name", "empty", true),
        Root("name", "\"\\u001b[31m red\"", "/name", "control characters"),
        Root("timeZone", null, "/timeZone", "missing", true),
        Root("timeZone", "\"Mars/Olympus\"", "/timeZone", "no time zone"),
        Root("timeZone", "\"../../etc/passwd\"", "/timeZone", "no time zone", true),
        Root("courses", null, "/courses", "no course", true),
        Root("courses", "{}", "/courses", "must be a list", true),
        Root("courses", "[1]", "/courses/0", "must be an object", true),
        Root("courses", """[{ "id": "main" }]""", "/courses/0/tableTime", "missing", true),
        Root("courses", """[{ "id": "main", "tableTime": "7 pm" }]""", "/courses/0/tableTime", "not a local date and time", true),
        Root("courses", """[{ "id": "main", "tableTime": "2027-12-19T19:00:30" }]""", "/courses/0/tableTime", "not a local date and time", true),
        Root("courses", """[{ "id": "main", "tableTime": "2027-02-30T19:00" }]""", "/courses/0/tableTime", "not a local date and time"),
        Root("courses", """[{ "id": "main", "tableTime": "2027-12-19T19:00" }, { "id": "main", "tableTime": "2027-12-19T20:00" }]""", "/courses/1/id", "given twice"),
        Root("kitchen", null, "/kitchen", "missing", true),
        Root("dishes", "[]", "/dishes", "no dish", true),
        Root("guests", """[{ "portion": 1 }]""", "/guests/0/name", "missing", true),
        Root("guests", """[{ "name": "Ada", "portion": -1 }]""", "/guests/0/portion", "above 0", true),
        Root("guests", """[{ "name": "Ada", "avoids": "nuts" }]""", "/guests/0/avoids", "must be a list", true),

        // The kitchen and its people.
        InOven("shelves", "0", "/kitchen/ovens/0/shelves", "out of range", true),
        InOven("shelves", "1.5", "/kitchen/ovens/0/shelves", "whole number, not 1.5", true),
        InOven("heatUpPerMinute", "0", "/kitchen/ovens/0/heatUpPerMinute", "above 0", true),
        InOven("heatUpPerMinute", "0.09", "/kitchen/ovens/0/heatUpPerMinute", "from 0.1 to 100", true),
        InOven("heatUpPerMinute", "101", "/kitchen/ovens/0/heatUpPerMinute", "No oven changes by 101", true),
        InOven("coolDownPerMinute", "0.0001", "/kitchen/ovens/0/coolDownPerMinute", "from 0.1 to 100", true),
        InOven("coolDownPerMinute", "600", "/kitchen/ovens/0/coolDownPerMinute", "from 0.1 to 100", true),
        InOven("heatUpPerMinute", null, "/kitchen/ovens/0/heatUpPerMinute", "missing", true),
        InOven("minCelsius", "260", "/kitchen/ovens/0/minCelsius", "above its highest"),
        Awake("""{ "from": "22:00", "to": "07:00" }""", "/kitchen/awake", "leaves noon out"),
        Awake("""{ "from": "07:00", "to": "07:00" }""", "/kitchen/awake", "leaves noon out"),
        Awake("""{ "from": "7", "to": "22:00" }""", "/kitchen/awake/from", "not a time of the day", true),
        Awake("""{ "from": "07:00", "to": "24:00" }""", "/kitchen/awake/to", "not a time of the day", true),
        Awake("""{ "from": "07:00" }""", "/kitchen/awake/to", "missing", true),
        Awake("\"always\"", "/kitchen/awake", "must be an object", true),
        InOven("readsHighBy", "80", "/kitchen/ovens/0/readsHighBy", "out of range", true),
        InOven("fan", "\"yes\"", "/kitchen/ovens/0/fan", "true or false", true),
        new("rings -1", root => root["kitchen"]!["rings"] = -1, "/kitchen/rings", "out of range", true),
        new("grill in an unknown oven", root => root["kitchen"]!["grills"] = Json("""[{ "id": "grill", "insideOven": "attic" }]"""), "/kitchen/grills/0/insideOven", "no oven \"attic\""),
        Root("helpers", """[{ "id": "ada", "available": [{ "from": "2027-12-19T18:00", "to": "2027-12-19T17:00" }] }]""", "/helpers/0/available/0", "not before"),
        Root("helpers", """[{ "id": "ada", "available": [{ "from": "2027-12-19T12:00", "to": "2027-12-19T17:00" }, { "from": "2027-12-19T16:00", "to": "2027-12-19T18:00" }] }]""", "/helpers/0/available/1", "overlaps"),

        // Steps.
        Chopping("id", "\"simmer\"", $"{Simmer}/id", "given twice"),
        Chopping("text", "null", $"{Chop}/text", "missing", true),
        Chopping("minutes", "null", $"{Chop}/minutes", "missing", true),
        Chopping("minutes", "-5", $"{Chop}/minutes", "-5 is out of range", true),
        Chopping("minutes", "0", $"{Chop}/minutes", "0 is out of range", true),
        Chopping("minutes", "\"ten\"", $"{Chop}/minutes", "whole number, not \"ten\"", true),
        Chopping("minutes", """{ "least": 12, "likely": 10, "most": 20 }""", $"{Chop}/minutes", "out of order"),
        Chopping("minutes", """{ "least": 5, "most": 20 }""", $"{Chop}/minutes/likely", "missing", true),
        Chopping("attention", "\"asleep\"", $"{Chop}/attention", "cannot be \"asleep\"", true),
        Chopping("people", "0", $"{Chop}/people", "out of range", true),
        Chopping("by", "[\"bob\"]", $"{Chop}/by/0", "no helper \"bob\""),
        Chopping("by", "[\"kit\"]", $"{Chop}/by", "a child"),
        Chopping("by", "[\"ada\", \"ada\"]", $"{Chop}/by", "named twice", true),
        Chopping("choice", "0", $"{Chop}/choice", "the step has 0"),
        Chopping("at", "\"2027-03-28T02:30\"", $"{Chop}/at", "does not exist in Europe/Berlin"),
        Chopping("at", "\"2027-12-19T12:00+05:00\"", $"{Chop}/at", "offset"),
        Chopping("at", "\"2027-12-25T12:00\"", $"{Chop}/at", "more than a day after"),
        Chopping("window", """{ "from": "2027-12-19T12:00", "to": "2027-12-19T12:05" }""", $"{Chop}/window", "too short"),
        Chopping("window", """{ "from": "2027-12-19T12:00" }""", $"{Chop}/window/to", "missing", true),
        Chopping("after", """[{ "step": "bakery" }]""", $"{Chop}/after/0/step", "no step \"bakery\""),
        Chopping("after", """[{ "step": "chop" }]""", $"{Chop}/after/0/step", "waits for itself"),
        Chopping("after", """[{ "step": "bake", "gap": { "least": -1 } }]""", $"{Chop}/after/0/gap/least", "-1 is out of range", true),
        Chopping("after", """[{ "step": "bake", "gap": { "least": 10, "most": 5 } }]""", $"{Chop}/after/0/gap/most", "5 min at the most"),
        new("a circle over two dishes", Circle, $"{Chop}/after", "\"chop\" waits for \"bake\" waits for \"simmer\" waits for \"chop\" again"),
        Simmering("tend", """[{ "text": "Stir" }]""", $"{Simmer}/tend/0", "neither", true),
        Simmering("tend", """[{ "text": "Stir", "every": 5, "at": 5 }]""", $"{Simmer}/tend/0", "both", true),
        Simmering("tend", """[{ "text": "Stir", "every": 0 }]""", $"{Simmer}/tend/0/every", "out of range", true),
        Simmering("tend", """[{ "text": "Stir", "every": 30 }]""", $"{Simmer}/tend/0/every", "never comes round"),
        Simmering("tend", """[{ "text": "Stir", "at": 34 }]""", $"{Simmer}/tend/0/at", "cannot lie inside"),
        Simmering("tend", """[{ "text": "Stir", "at": -40 }]""", $"{Simmer}/tend/0/at", "cannot lie inside"),
        Simmering("options", "[3]", $"{Simmer}/options/0", "must be an object", true),
        Simmering("options", """[{ "minutes": 0 }]""", $"{Simmer}/options/0/minutes", "out of range", true),
        Simmering("uses", """[{ "wok": 1 }]""", $"{Simmer}/uses/0", "names nothing", true),
        Simmering("uses", """[{ "appliance": "mixer" }]""", $"{Simmer}/uses/0/appliance", "no appliance \"mixer\""),
        Simmering("uses", """[{ "grill": "sun" }]""", $"{Simmer}/uses/0/grill", "no grill \"sun\""),
        Simmering("uses", """[{ "grill": 3 }]""", $"{Simmer}/uses/0/grill", "id or true", true),
        Baking("uses", """[{ "oven": {} }]""", $"{Bake}/uses/0/oven/celsius", "missing", true),
        Baking("uses", """[{ "oven": { "celsius": { "min": 200, "ideal": 240, "max": 220 } } }]""", $"{Bake}/uses/0/oven/celsius", "out of order"),
        Baking("uses", """[{ "oven": { "id": "attic", "celsius": { "min": 200, "max": 220 } } }]""", $"{Bake}/uses/0/oven/id", "no oven \"attic\""),
        new("an unknown course", root => root["dishes"]![0]!["course"] = "starter", "/dishes/0/course", "no course \"starter\""),
        new("no steps", root => root["dishes"]![0]!["steps"] = new JsonArray(), "/dishes/0/steps", "no step", true),
        new("minus three carrots", root => root["dishes"]![0]!["ingredients"] = Json("""[{ "name": "carrot", "quantity": -3 }]"""), "/dishes/0/ingredients/0/quantity", "above 0", true),

        new("two thousand steps", root => root["dishes"] = new JsonArray([.. Enumerable.Range(0, 20).Select(Busy)]), "/dishes", "2000 steps"),

        // Holds.
        Holding("""{ "place": "attic", "limit": 5 }""", "/place", "cannot be", true),
        Holding("""{ "place": "side" }""", "/limit", "missing", true),
        Holding("""{ "place": "side", "limit": -1 }""", "/limit", "out of range", true),
        Holding("""{ "place": "side", "least": 20, "limit": 10 }""", "/least", "must rest 20 min"),
        Holding("""{ "place": "side", "bestWithin": 9, "goodFor": 5, "limit": 10 }""", "/bestWithin", "at its best for 9 min"),
        Holding("""{ "place": "side", "goodFor": 20, "limit": 10 }""", "/goodFor", "good for 20 min"),
        Holding("""{ "place": "warmOven", "limit": 30 }""", "/celsius", "missing", true),

        // What this kitchen can never do.
        Baking("uses", """[{ "oven": { "celsius": { "min": 280, "max": 300 } } }]""", $"{Bake}/uses", "no oven here reaches"),
        Baking("uses", """[{ "oven": { "shelves": 3, "celsius": { "min": 200, "max": 220 } } }]""", $"{Bake}/uses", "3 oven shelves"),
        Baking("uses", """[{ "grill": true }]""", $"{Bake}/uses", "the kitchen has none"),
        Simmering("uses", """[{ "rings": 3 }]""", $"{Simmer}/uses", "3 rings"),
        Chopping("needs", "[\"carve\"]", $"{Chop}/needs", "needs carve"),
        new("only a child is left", root => root["helpers"]![0]!["child"] = true, $"{Chop}/childSafe", "children"),
        new("only children are nearby", root => root["helpers"]![0]!["child"] = true, $"{Simmer}/attention", "children"),
        Chopping("people", "2", $"{Chop}/people", "only 1 may"),
        new("nobody stays long enough", root => root["helpers"]![0]!["available"] = Json("""[{ "from": "2027-12-19T18:00", "to": "2027-12-19T18:05" }]"""), $"{Chop}/minutes", "in one go"),
        Holding("""{ "place": "warmOven", "limit": 30, "celsius": { "min": 20, "max": 40 } }""", null, "no oven here reaches"),
    ];

    static JsonObject Busy(int dish) => new()
    {
        ["id"] = $"dish-{dish}",
        ["course"] = "main",
        ["steps"] = new JsonArray([.. Enumerable.Range(0, 100).Select(step => new JsonObject { ["id"] = $"step-{dish}-{step}", ["text"] = "Stir", ["minutes"] = 1 })]),
    };

    static void Circle(JsonNode root)
    {
        Step(root, 0, 0)["after"] = Json("""[{ "step": "bake" }]""");
        Step(root, 1, 0)["after"] = Json("""[{ "step": "simmer" }]""");
    }
}
