using System.Text.Json.Nodes;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Intake.Reading;

namespace CookAlong.Intake.PlanFiles;

/// <summary>The open format that carries a plan in and out: "cookalong-plan/1".</summary>
public static class PlanFile
{
    public const string Format = "cookalong-plan/1";

    /// <summary>The plan as a file; reading it with the same meal gives an equal plan.</summary>
    public static string Write(Plan plan, Meal meal)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(meal);
        return new PlanWriting(meal).Plan(plan).ToJsonString(JsonWords.Readable);
    }

    /// <summary>How sure a plan is, as the plan file says it.</summary>
    public static JsonObject Confidence(Confidence confidence)
    {
        ArgumentNullException.ThrowIfNull(confidence);
        return ConfidenceJson.Write(confidence);
    }

    /// <summary>
    /// Reads the form of a plan; never throws, whatever the text. Whether it is a good plan of this meal, unknown ids
    /// included, is for <see cref="PlanCheck"/> to say.
    /// </summary>
    public static PlanFileRead Read(string json, Meal meal)
    {
        ArgumentNullException.ThrowIfNull(json);
        ArgumentNullException.ThrowIfNull(meal);
        var findings = new Findings();
        using var document = JsonText.Parse(json, findings);
        if (document is null)
        {
            return new(null, findings.All);
        }

        var root = new Place(document.RootElement, "", findings);
        var format = root.Text("format");
        if (format != Format)
        {
            if (format.Length > 0)
            {
                root.Note("format", $"The format is \"{Place.Short(format)}\", not \"{Format}\".", "Choose a plan file; a meal or a newer version cannot be read as one.");
            }

            return new(null, findings.All);
        }

        var plan = new PlanReading(meal, WallClock.ZoneOf(root) ?? meal.TimeZone).Plan(root);
        return findings.Count == 0 ? new(plan, []) : new(null, findings.All);
    }
}
