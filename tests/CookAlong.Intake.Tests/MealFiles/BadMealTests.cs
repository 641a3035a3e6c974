using CookAlong.Domain;
using CookAlong.Intake.MealFiles;

namespace CookAlong.Intake.Tests.MealFiles;

public sealed class BadMealTests
{
    public static TheoryData<string> Names => [.. BadMeals.All.Select(bad => bad.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Each_mistake_is_told_with_its_place_and_a_remedy(string name)
    {
        var bad = BadMeals.All.Single(one => one.Name == name);
        var read = SmallMeal.Read(bad.Spoil);
        Assert.False(read.IsGood);
        var error = Assert.Single(read.Errors, error => error.Place == bad.Place && error.Problem.Contains(bad.Says, StringComparison.Ordinal));
        Assert.NotEmpty(error.Remedy);
        Assert.EndsWith(".", error.Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void The_small_meal_itself_is_good() => Assert.Empty(SmallMeal.Read(_ => { }).Errors);

    [Fact]
    public void All_mistakes_are_found_in_one_go()
    {
        var read = SmallMeal.Read(root =>
        {
            root["name"] = 3;
            root["kitchen"]!["rings"] = -1;
            SmallMeal.Step(root, 0, 0)["minutes"] = 0;
            SmallMeal.Step(root, 0, 1)["after"] = new System.Text.Json.Nodes.JsonArray("chop");
            root["dishes"]![1]!["course"] = "starter";
        });
        Assert.Equal(
            ["/dishes/0/steps/0/minutes", "/dishes/0/steps/1/after/0", "/dishes/1/course", "/kitchen/rings", "/name"],
            read.Errors.Select(error => error.Place).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_table_time_in_the_past_is_refused_when_the_hour_is_known()
    {
        var table = SmallMeal.Meal.FirstTableTime;
        var error = Assert.Single(MealFile.Read(SmallMeal.Text, table).Errors);
        Assert.Equal("/courses/0/tableTime", error.Place);
        Assert.Contains("in the past", error.Problem, StringComparison.Ordinal);
        Assert.Empty(MealFile.Read(SmallMeal.Text, table - 1).Errors);
        Assert.Empty(MealFile.Read(SmallMeal.Text).Errors);
    }

    [Fact]
    public void A_skipped_hour_is_refused_with_the_time_that_is_meant()
    {
        // Central Europe, 28 March 2027: 02:00 becomes 03:00 (EU directive 2000/84/EC: the last Sunday of March, 01:00 UTC).
        var read = SmallMeal.Read(root => root["courses"]![0]!["tableTime"] = "2027-03-28T02:30");
        var error = Assert.Single(read.Errors);
        Assert.Contains("2027-03-28T03:30", error.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void An_unknown_reference_names_what_is_known()
    {
        var error = Assert.Single(SmallMeal.Read(root => SmallMeal.Step(root, 0, 0)["by"] = new System.Text.Json.Nodes.JsonArray("bob")).Errors);
        Assert.Contains("ada, kit", error.Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{ \"name\": \"a\", \"name\": \"b\" }", "/name", "given twice")]
    [InlineData("{ \"a/b\": { \"~\": 1, \"~\": 2 } }", "/a~1b/~0", "given twice")]
    [InlineData("{ \"name\": \"\\ud800\" }", "/name", "escape")]
    [InlineData("{ \"\\ud800\": 1 }", "", "escape")]
    [InlineData("[]", "", "not a JSON object")]
    [InlineData("", "", "empty")]
    [InlineData("{ \"name\": ", "", "line 1")]
    [InlineData("{\n  \"name\": oops }", "", "line 2")]
    public void Text_that_is_no_proper_JSON_object_is_told_where(string json, string place, string says)
    {
        var error = Assert.Single(MealFile.Read(json).Errors);
        Assert.Equal(place, error.Place);
        Assert.Contains(says, error.Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_over_10_MB_is_refused_unread()
    {
        var error = Assert.Single(MealFile.Read(new string('x', 10_000_001)).Errors);
        Assert.Equal("", error.Place);
        Assert.Contains("larger than 10 MB", error.Problem, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(9_999_999, "x")]
    [InlineData(9_999_999, "[")]
    [InlineData(3_300_000, "{\"a\":")]
    [InlineData(3_300_000, "\"\\u")]
    public void Ten_megabytes_of_nonsense_are_refused_with_a_sentence(int length, string piece)
    {
        var text = string.Concat(Enumerable.Repeat(piece, length / piece.Length));
        Assert.NotEmpty(MealFile.Read(text).Errors);
    }

    [Fact]
    public void Half_of_a_surrogate_pair_in_the_text_is_refused() =>
        Assert.Contains("Unicode", Assert.Single(MealFile.Read("{ \"name\": \"\uD800\" }").Errors).Problem, StringComparison.Ordinal);

    [Fact]
    public void More_errors_than_anybody_reads_are_cut_at_fifty()
    {
        var read = SmallMeal.Read(root => root["guests"] = new System.Text.Json.Nodes.JsonArray([.. Enumerable.Range(0, 400).Select(_ => new System.Text.Json.Nodes.JsonObject())]));
        Assert.Equal(50, read.Errors.Length);
    }
}
