using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Intake.MealFiles;
using CookAlong.Web.Features.Plans;

namespace CookAlong.Web.Tests.Plans;

public sealed class PlanWordsTests
{
    static readonly Meal Meal = MealFile.Read(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "seed-data", "meals", "weeknight-three-dishes.json"))).Meal!;
    static readonly Minute Six = Meal.FirstTableTime - 60;

    static string Say(Breach breach) => PlanWords.Facts(breach, Meal);

    public static TheoryData<RuleId> Rules => [.. PlanRules.All.Select(rule => rule.Id)];

    [Theory]
    [MemberData(nameof(Rules))]
    public void Every_rule_has_its_sentence(RuleId rule) => Assert.EndsWith(".", PlanWords.Rule(rule), StringComparison.Ordinal);

    [Fact]
    public void A_step_is_called_by_its_text_and_its_id() =>
        Assert.Equal(
            "\"Chop the onion\" (bake-chop) takes 6 min, but is planned for 4 min from 18:00.",
            Say(new(RuleId.StepLength, Step: new("bake-chop"), At: Six, Found: 4, Allowed: 6)));

    [Fact]
    public void A_step_the_meal_does_not_know_is_called_as_the_plan_calls_it() =>
        Assert.Equal("\"dance\" is planned, but the meal has no such step.", Say(new(RuleId.EveryStepOnce, Step: new("dance"), Found: 1, Allowed: 0)));

    [Theory]
    [InlineData(170, 180, "at least 180 °C")]
    [InlineData(210, 200, "at most 200 °C")]
    public void An_oven_too_cold_or_too_hot_says_which(int found, int allowed, string says) =>
        Assert.Contains(says, Say(new(RuleId.OvenTemperature, Step: new("bake-bake"), Oven: new("oven"), At: Six, Found: found, Allowed: allowed)), StringComparison.Ordinal);

    [Theory]
    [InlineData("least", 3, 5, "at least 5 min must lie between")]
    [InlineData("most", 9, 5, "at most 5 min may lie between")]
    public void A_gap_says_which_way_it_is_broken(string thing, int found, int allowed, string says) =>
        Assert.Contains(says, Say(new(RuleId.Gaps, Step: new("bake-out"), Other: new("bake-bake"), Thing: thing, At: Six, Found: found, Allowed: allowed)), StringComparison.Ordinal);

    [Theory]
    [InlineData("least", 2, 5, "White bean and tomato bake waits 2 min from 18:00; it needs 5 min of rest.")]
    [InlineData("limit", 40, 30, "White bean and tomato bake waits 40 min from 18:00; 30 min is the most.")]
    [InlineData("from", -4, 0, "White bean and tomato bake waits from 18:00, 4 min before the end of its last step.")]
    public void A_hold_says_what_is_wrong_with_it(string thing, int found, int allowed, string says) =>
        Assert.Equal(says, Say(new(RuleId.HoldLimits, Dish: new("bean-bake"), Thing: thing, At: Six, Found: found, Allowed: allowed)));

    [Theory]
    [InlineData("course", 2, 1, "Supper is planned 2 times.")]
    [InlineData("early", -5, 0, "Supper is served at 18:00, 5 min before its promised time.")]
    [InlineData("promised", 5, 0, "Supper was promised 5 min after the time that the plan says.")]
    public void A_table_time_says_what_is_wrong_with_it(string thing, int found, int allowed, string says) =>
        Assert.Equal(says, Say(new(RuleId.TableTime, Course: new("supper"), Thing: thing, At: Six, Found: found, Allowed: allowed)));

    [Fact]
    public void The_same_person_in_two_places_is_named_with_both() =>
        Assert.Equal(
            "Hanne is still at \"Chop the onion\" (bake-chop) when \"Toss the wedges with oil and salt\" (potatoes-toss) begins at 18:00.",
            Say(new(RuleId.OneJobEach, Step: new("potatoes-toss"), Other: new("bake-chop"), Helper: new("hanne"), At: Six, Found: 2, Allowed: 1)));

    [Fact]
    public void A_tend_that_is_not_planned_is_named() =>
        Assert.Equal(
            "\"Stir the sauce\" of \"Fry the onion and simmer the tomatoes\" (bake-sauce), due at 18:00, is not planned.",
            Say(new(RuleId.Tends, Step: new("bake-sauce"), Thing: "Stir the sauce", At: Six, Found: 0, Allowed: 1)));

    [Fact]
    public void A_time_on_another_day_than_the_table_names_its_day() => Assert.Equal("Tue 19:00", PlanWords.Clock(Meal.FirstTableTime - (24 * 60), Meal));
}
