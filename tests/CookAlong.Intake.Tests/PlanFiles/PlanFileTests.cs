using System.Text.Json.Nodes;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Intake.MealFiles;
using CookAlong.Intake.PlanFiles;

namespace CookAlong.Intake.Tests.PlanFiles;

public sealed class PlanFileTests
{
    static Plan Back(Plan plan, Meal meal)
    {
        var read = PlanFile.Read(PlanFile.Write(plan, meal), meal);
        Assert.Empty(read.Errors);
        return read.Plan!;
    }

    [Fact]
    public void A_plan_written_and_read_again_is_the_same() => Same.As(PlanSamples.Full(SmallMeal.Meal), Back(PlanSamples.Full(SmallMeal.Meal), SmallMeal.Meal));

    [Fact]
    public void A_plan_without_confidence_or_steps_is_the_same_too()
    {
        var none = PlanSamples.Full(SmallMeal.Meal) with { Status = PlanStatus.None, Steps = [], Tends = [], Holds = [], Ovens = [], Confidence = null };
        Same.As(none, Back(none, SmallMeal.Meal));
    }

    [Fact]
    public void Steps_in_the_second_pass_of_a_repeated_hour_keep_their_minutes()
    {
        // Clocks go back at 03:00 on 31 October 2027 in Central Europe; the plan runs across it.
        var meal = SmallMeal.Read(root => root["courses"]![0]!["tableTime"] = "2027-10-31T03:05").Meal!;
        var text = PlanFile.Write(PlanSamples.Full(meal), meal);
        Assert.Contains("T02:05+01:00", text, StringComparison.Ordinal);
        Same.As(PlanSamples.Full(meal), Back(PlanSamples.Full(meal), meal));
    }

    [Fact]
    public void A_late_course_says_by_how_much_and_a_conflict_says_what_helps()
    {
        var node = JsonNode.Parse(PlanFile.Write(PlanSamples.Full(SmallMeal.Meal), SmallMeal.Meal))!;
        Assert.Equal(12, node["courses"]![0]!["lateMinutes"]!.GetValue<int>());
        Assert.Equal("Serve main 12 minutes later: by then everything is ready.", Sentence(node, 0));
        Assert.Equal("Start 45 minutes earlier: then there is a plan.", Sentence(node, 1));
        Assert.Equal("Ask one more adult to help from 18:00 to 19:00: that serves 1 minute earlier.", Sentence(node, 4));
        Assert.Equal("leaveOut", node["conflicts"]![6]!["change"]!["kind"]!.GetValue<string>());
        Assert.Equal("Turn oven off", node["ovenProgramme"]![0]!["dial"]![1]!["words"]!.GetValue<string>());
    }

    static string Sentence(JsonNode plan, int conflict) => plan["conflicts"]![conflict]!["sentence"]!.GetValue<string>();

    /// <summary>A plan from elsewhere with the fields every plan file has, and no more.</summary>
    [Fact]
    public void What_a_plan_from_elsewhere_leaves_out_is_found_in_the_meal()
    {
        var meal = SmallMeal.Meal;
        var read = PlanFile.Read(
            """
            {
              "format": "cookalong-plan/1", "status": "feasible",
              "courses": [{ "id": "main", "tableTime": "2027-12-19T19:00" }],
              "steps": [
                { "step": "chop", "start": "2027-12-19T18:15", "end": "2027-12-19T18:25", "helpers": ["ada"] },
                { "step": "simmer", "start": "2027-12-19T18:25", "end": "2027-12-19T18:55" }
              ],
              "tends": [
                { "step": "simmer", "at": "2027-12-19T18:44", "minutes": 1, "helper": "ada" },
                { "step": "simmer", "at": "2027-12-19T18:36", "minutes": 1, "helper": "ada" }
              ],
              "holds": [{ "dish": "soup", "place": "table", "from": "2027-12-19T18:55", "to": "2027-12-19T19:00" }]
            }
            """,
            meal);
        Assert.Empty(read.Errors);
        Assert.Equal(meal.FirstTableTime - 45, read.Plan!.NotBefore);
        Assert.Equal(meal.FirstTableTime, read.Plan.Courses[0].Promised);
        Assert.Equal(-1, read.Plan.Steps[0].Option);
        Assert.Equal([1, 0], read.Plan.Tends.Select(tend => tend.Turn));
    }

    [Theory]
    [InlineData("""{ "format": "cookalong-meal/1" }""", "/format")]
    [InlineData("""{ "format": "cookalong-plan/1" }""", "/status")]
    [InlineData("""{ "format": "cookalong-plan/1", "status": "perfect" }""", "/status")]
    [InlineData("""{ "format": "cookalong-plan/1", "status": "none", "gap": 2 }""", "/gap")]
    [InlineData("""{ "format": "cookalong-plan/1", "status": "none", "steps": [{ "step": "chop", "start": "2027-12-19T18:15" }] }""", "/steps/0/end")]
    [InlineData("""{ "format": "cookalong-plan/1", "status": "none", "steps": [{ "step": "chop", "start": "2027-12-19T18:15", "end": "2027-12-19T18:05" }] }""", "/steps/0/end")]
    [InlineData("""{ "format": "cookalong-plan/1", "status": "none", "holds": [{ "dish": "soup", "place": "roof", "from": "2027-12-19T18:15", "to": "2027-12-19T18:25" }] }""", "/holds/0/place")]
    [InlineData("""{ "format": "cookalong-plan/1", "status": "none", "conflicts": [{ "change": { "kind": "pray" } }] }""", "/conflicts/0/change/kind")]
    public void A_broken_plan_file_is_told_where(string json, string place)
    {
        var error = Assert.Single(PlanFile.Read(json, SmallMeal.Meal).Errors);
        Assert.Equal(place, error.Place);
    }

    [Fact]
    public void Steps_the_meal_does_not_know_are_for_the_check_to_name() =>
        Assert.Empty(PlanFile.Read("""{ "format": "cookalong-plan/1", "status": "none", "steps": [{ "step": "dance", "start": "2027-12-19T18:15", "end": "2027-12-19T18:25" }] }""", SmallMeal.Meal).Errors);
}
