using System.Text.Json.Nodes;
using CookAlong.Domain;
using CookAlong.Intake.Reading;

namespace CookAlong.Intake.MealFiles;

/// <summary>
/// A meal file that is edited as a document, so that fields this program does not know, and the author's own order,
/// stay. Made from a text that <see cref="MealFile.Read"/> accepts; after an edit read the <see cref="Text"/> again
/// before keeping it, for an edit may make a meal that cannot be.
/// </summary>
public sealed partial class MealDocument
{
    private readonly JsonObject root;
    private readonly TimeZoneInfo zone;

    private MealDocument(JsonObject root, TimeZoneInfo zone) => (this.root, this.zone) = (root, zone);

    /// <exception cref="ArgumentException">The text is not a meal file; ask <see cref="MealFile.Read"/> first.</exception>
    public static MealDocument Of(string json)
    {
        var read = MealFile.Read(json);
        return read.IsGood
            ? new MealDocument(JsonNode.Parse(json.TrimStart('\uFEFF'))!.AsObject(), read.Meal.TimeZone)
            : throw new ArgumentException($"not a meal file: {read.Errors[0].Place} {read.Errors[0].Problem}", nameof(json));
    }

    public string Text => root.ToJsonString(JsonWords.Readable);

    public void Rename(string name) => root["name"] = name;

    public void Serve(CourseId course, Minute at) => Entry("courses", course.Value)["tableTime"] = WallClock.Write(at, zone);

    /// <summary>Adds a dish at the end.</summary>
    public void Add(JsonObject dish)
    {
        if (root["dishes"] is not JsonArray dishes)
        {
            root["dishes"] = dishes = [];
        }

        dishes.Add(dish);
    }

    /// <summary>An id that neither a dish nor a step has, made of a name: "Leek tart" is "leek-tart", or "leek-tart-2".</summary>
    public string FreeId(string name)
    {
        var id = Plain(name, "dish");
        var taken = Entries("dishes").Concat(Steps).Select(IdOf).OfType<string>().ToHashSet(StringComparer.Ordinal);
        return Enumerable.Range(1, taken.Count + 1).Select(number => number == 1 ? id : $"{id}-{number}").First(one => !taken.Any(other => other == one || other.StartsWith($"{one}-", StringComparison.Ordinal)));
    }

    /// <summary>Fixes a step's start; null lets the planner choose again.</summary>
    public void Fix(StepId step, Minute? at) => Set(Step(step), "at", at is { } minute ? WallClock.Write(minute, zone) : null);

    /// <summary>Gives a step to helpers; none lets the planner choose again.</summary>
    public void Give(StepId step, IReadOnlyCollection<HelperId> helpers) =>
        Set(Step(step), "by", helpers.Count == 0 ? null : JsonWords.Texts(helpers.Select(helper => helper.Value)));

    /// <param name="option">-1 = as written; null lets the planner choose again.</param>
    public void Choose(StepId step, int? option) => Set(Step(step), "choice", option);

    /// <summary>
    /// Moves the whole meal so that its first table is on <paramref name="day"/>: every time keeps its wall clock and
    /// its distance in days. An offset (the second pass of a repeated hour) belongs to the old day and is dropped.
    /// </summary>
    public void MoveTo(DateOnly day)
    {
        var tables = Entries("courses").Select(course => Local(course["tableTime"])).OfType<DateTime>();
        var days = day.DayNumber - DateOnly.FromDateTime(tables.Min()).DayNumber;
        Shift(root, "notBefore", days);
        foreach (var course in Entries("courses"))
        {
            Shift(course, "tableTime", days);
        }

        foreach (var span in Entries("helpers").SelectMany(helper => Entries(helper, "available")))
        {
            Shift(span, "from", days);
            Shift(span, "to", days);
        }

        foreach (var step in Steps)
        {
            Shift(step, "at", days);
            if (step["window"] is JsonObject window)
            {
                Shift(window, "from", days);
                Shift(window, "to", days);
            }
        }
    }

    private IEnumerable<JsonObject> Steps => Entries("dishes").SelectMany(dish => Entries(dish, "steps"));

    private JsonObject Step(StepId id) => Steps.Single(step => IdOf(step) == id.Value);

    private JsonObject Entry(string list, string id) => Entries(list).Single(entry => IdOf(entry) == id);

    private IEnumerable<JsonObject> Entries(string list) => Entries(root, list);

    private static IEnumerable<JsonObject> Entries(JsonObject owner, string list) =>
        owner[list] is JsonArray entries ? entries.OfType<JsonObject>() : [];

    private static string? IdOf(JsonObject entry) => entry["id"]?.GetValue<string>();

    private static void Set(JsonObject owner, string name, JsonNode? value)
    {
        if (value is null)
        {
            owner.Remove(name);
        }
        else
        {
            owner[name] = value;
        }
    }

    private static DateTime? Local(JsonNode? time) => time is null ? null : WallClock.Split(time.GetValue<string>())?.Local;

    private static void Shift(JsonObject owner, string name, int days)
    {
        if (Local(owner[name]) is { } local)
        {
            owner[name] = WallClock.Write(local.AddDays(days));
        }
    }
}
