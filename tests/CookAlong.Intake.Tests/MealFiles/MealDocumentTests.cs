using System.Text.Json.Nodes;
using CookAlong.Domain;
using CookAlong.Intake.MealFiles;

namespace CookAlong.Intake.Tests.MealFiles;

public sealed class MealDocumentTests
{
    static readonly string Lunch = SeedData.Text("midwinter-lunch.json");

    static string WithUnknownFields()
    {
        var root = JsonNode.Parse(Lunch)!;
        root["mood"] = new JsonObject { ["music"] = "slow", ["candles"] = 7 };
        root["dishes"]![0]!["steps"]![0]!["photo"] = "goose.jpg";
        root["courses"]![0]!["wine"] = new JsonArray("red", "cider");
        return root.ToJsonString();
    }

    [Fact]
    public void Edits_keep_unknown_fields_and_change_nothing_else()
    {
        var text = WithUnknownFields();
        var document = MealDocument.Of(text);
        var meal = MealFile.Read(text).Meal!;
        document.Serve(new("main"), meal.FirstTableTime + 15);
        document.Fix(new("goose-fill"), meal.FirstTableTime - 300);
        document.Give(new("goose-carve"), [new("maren")]);
        document.Choose(new("cabbage-heat"), 0);

        var expected = JsonNode.Parse(text)!;
        expected["courses"]![0]!["tableTime"] = "2027-12-19T15:15";
        Step(expected, "goose-fill")["at"] = "2027-12-19T10:00";
        Step(expected, "goose-carve")["by"] = new JsonArray("maren");
        Step(expected, "cabbage-heat")["choice"] = 0;
        Assert.True(JsonNode.DeepEquals(expected, JsonNode.Parse(document.Text)));
        Assert.Empty(MealFile.Read(document.Text).Errors);
    }

    [Fact]
    public void What_was_set_can_be_cleared_again()
    {
        var document = MealDocument.Of(Lunch);
        document.Fix(new("goose-fill"), MealFile.Read(Lunch).Meal!.FirstTableTime - 300);
        document.Give(new("goose-carve"), [new("maren")]);
        document.Choose(new("cabbage-heat"), -1);
        document.Fix(new("goose-fill"), null);
        document.Give(new("goose-carve"), []);
        document.Choose(new("cabbage-heat"), null);
        Assert.True(JsonNode.DeepEquals(JsonNode.Parse(Lunch), JsonNode.Parse(document.Text)));
    }

    [Fact]
    public void A_meal_moved_to_another_day_keeps_its_wall_clock()
    {
        var document = MealDocument.Of(Lunch);

        // Over a change of the clocks: days on the wall, not minutes.
        document.MoveTo(new DateOnly(2028, 6, 4));
        var moved = MealFile.Read(document.Text).Meal!;
        var zone = moved.TimeZone;
        Assert.Equal(new DateTime(2028, 6, 4, 15, 0, 0), LocalTime.Show(moved.Courses[0].TableTime, zone).DateTime);
        Assert.Equal(new DateTime(2028, 6, 4, 16, 10, 0), LocalTime.Show(moved.Courses[1].TableTime, zone).DateTime);
        Assert.Equal(new DateTime(2028, 6, 3, 16, 0, 0), LocalTime.Show(moved.NotBefore!.Value, zone).DateTime);
        Assert.Equal(new DateTime(2028, 6, 4, 11, 30, 0), LocalTime.Show(moved.Helpers[1].Available[0].From, zone).DateTime);

        document.MoveTo(new DateOnly(2027, 12, 19));
        Assert.True(JsonNode.DeepEquals(JsonNode.Parse(Lunch), JsonNode.Parse(document.Text)));
    }

    [Fact]
    public void Fixed_starts_and_windows_move_with_the_meal()
    {
        var text = SmallMeal.With(root =>
        {
            SmallMeal.Step(root, 0, 0)["at"] = "2027-12-19T17:00";
            SmallMeal.Step(root, 1, 0)["window"] = JsonNode.Parse("""{ "from": "2027-12-18T20:00", "to": "2027-12-19T18:00" }""");
        });
        var document = MealDocument.Of(text);
        document.MoveTo(new DateOnly(2028, 1, 1));
        Assert.Contains("2028-01-01T17:00", document.Text, StringComparison.Ordinal);
        Assert.Contains("2027-12-31T20:00", document.Text, StringComparison.Ordinal);
        Assert.Contains("2028-01-01T18:00", document.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_text_that_is_no_meal_makes_no_document() =>
        Assert.Throws<ArgumentException>(() => MealDocument.Of("{}"));

    static JsonNode Step(JsonNode root, string id) =>
        root["dishes"]!.AsArray().SelectMany(dish => dish!["steps"]!.AsArray()).Single(step => step!["id"]!.GetValue<string>() == id)!;
}
