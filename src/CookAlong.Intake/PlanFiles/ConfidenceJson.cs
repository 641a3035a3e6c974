using System.Text.Json.Nodes;
using CookAlong.Domain;
using CookAlong.Domain.Planning;
using CookAlong.Intake.Reading;
using static CookAlong.Intake.Reading.JsonWords;

namespace CookAlong.Intake.PlanFiles;

/// <summary>How sure a plan is, in its file. The figures beyond the first three are rounded: nobody asks for a fifth of a second.</summary>
internal static class ConfidenceJson
{
    private const int Most = 1_000;

    /// <summary>A year late is late enough. Minutes.</summary>
    private const int Furthest = 525_600;

    public static JsonObject Write(Confidence confidence) => Object(
        ("onTimeWithin10", confidence.OnTimeWithin10),
        ("expectedLateMinutes", confidence.ExpectedLateMinutes),
        ("decisiveSteps", Texts(confidence.DecisiveSteps.Select(step => step.Value))),
        ("decisive", List(confidence.Decisive.Select(one => Object(
            ("step", one.Step.Value),
            ("shareOfLateDays", Math.Round(one.LateShare, 4)),
            ("gainOfFiveMinutes", Math.Round(one.Gain, 4)))))),
        ("standsTooLong", confidence.TooLong),
        ("standing", List(confidence.Standing.Select(food => Object(("step", food.Step.Value), ("chance", Math.Round(food.Chance, 4)))))),
        ("tables", List(confidence.Tables.Select(table => Object(
            ("course", table.Course.Value),
            ("p10", Math.Round(table.Tenth, 1)),
            ("p50", Math.Round(table.Median, 1)),
            ("p90", Math.Round(table.Ninetieth, 1)),
            ("days", List(table.Days.Select(late => (JsonNode?)JsonValue.Create((int)Math.Round(late))))))))));

    public static Confidence Read(Place confidence) => new(
        PlanReading.Fraction(confidence, "onTimeWithin10"),
        confidence.Real("expectedLateMinutes", 0, double.MaxValue),
        [.. confidence.Texts("decisiveSteps", Most).Select(step => new StepId(step.Text))])
    {
        Decisive =
        [
            .. confidence.Objects("decisive", Most).Select(one => new DecisiveStep(
                new(one.Id("step")), PlanReading.Fraction(one, "shareOfLateDays"), PlanReading.Fraction(one, "gainOfFiveMinutes"))),
        ],
        TooLong = PlanReading.Fraction(confidence, "standsTooLong"),
        Standing = [.. confidence.Objects("standing", Most).Select(food => new StandingFood(new(food.Id("step")), PlanReading.Fraction(food, "chance")))],
        Tables = [.. confidence.Objects("tables", Most).Select(Table)],
    };

    private static TableSpread Table(Place table)
    {
        var days = table.Items("days", TableSpread.DayCount).Select(day => day.AsWhole(-Furthest, Furthest) ?? 0).Order().ToList();
        if (days.Count < TableSpread.DayCount)
        {
            table.Note("days", $"There are {days.Count} days.", $"Write {TableSpread.DayCount}, best first.");
        }

        return new(new(table.Id("course")), [.. days, .. Enumerable.Repeat(0, TableSpread.DayCount - days.Count)]);
    }
}
