using System.Globalization;
using System.Text.Json.Nodes;
using CookAlong.Domain.Quantities;
using CookAlong.Intake.Recipes;

namespace CookAlong.Intake.Tests.Recipes;

public sealed class OverlapTests
{
    [Fact]
    public void Meanwhile_goes_on_beside_the_last_step_that_needs_no_hands_and_what_follows_waits_for_both() =>
        Assert.Equal("-; 0; 0; 1 2", Waits(
            "Peel the potatoes, 10 minutes.",
            "Roast the potatoes in the oven for 50 minutes.",
            "Meanwhile, whisk the dressing for 3 minutes.",
            "Toss everything."));

    [Fact]
    public void While_names_the_step_it_means() =>
        Assert.Equal("-; 0; 1; 1; 2 3", Waits(
            "Soak the beans for 8 hours.",
            "Roast the squash in the oven for 40 minutes.",
            "Simmer the beans for 50 minutes.",
            "While the beans simmer, chop the parsley.",
            "Mix and serve."));

    [Fact]
    public void A_step_beside_one_beside_another_begins_with_them() =>
        Assert.Equal("-; -; -; 0 1 2", Waits(
            "Bake the tart in the oven for 30 minutes.",
            "In the meantime, poach the pears for 20 minutes.",
            "While the pears are poaching, toast the nuts.",
            "Serve."));

    [Theory]
    [InlineData("Stir until thick, 5 minutes.", "Meanwhile chop.")]
    [InlineData("Bake for 20 minutes.", "Chop the herbs while whistling.")]
    [InlineData("Bake for 20 minutes.", "Cool it while warm.")]
    public void Hands_that_are_busy_and_a_while_inside_a_sentence_let_nothing_overlap(string first, string second) => Assert.Equal("-; 0", Waits(first, second));

    [Fact]
    public void A_step_whose_other_was_left_out_follows_like_any()
    {
        var draft = Draft("Chop.", "Bake in the oven for 20 minutes.", "Meanwhile grate the cheese.");
        draft.Steps.RemoveAt(1);
        Assert.Equal("-; 0", Waits(draft));
    }

    [Fact]
    public void The_file_says_it()
    {
        var json = Draft("Bake in the oven for 20 minutes.", "Meanwhile grate the cheese.", "Serve.").ToJson("bake", "main", fridge: null);
        var steps = json["steps"]!.AsArray();
        Assert.Null(steps[0]!["after"]);
        Assert.Equal("[]", steps[1]!["after"]!.ToJsonString());
        Assert.Equal("""[{"step":"bake-1"},{"step":"bake-2"}]""", steps[2]!["after"]!.ToJsonString());
    }

    static DishDraft Draft(params string[] steps) =>
        DishDraft.Of(RecipeRead.Of(string.Join('\n', ["A dish", "Method", .. steps.Select((step, i) => $"{i + 1}. {step}")])), 4, SpoonSizes.Metric);

    static string Waits(params string[] steps) => Waits(Draft(steps));

    /// <summary>The steps that each waits for, by place; "-" = none.</summary>
    static string Waits(DishDraft draft) => string.Join("; ", draft.ToJson("d", "main", fridge: null)["steps"]!.AsArray().Select((step, i) =>
        step!["after"] is JsonArray { Count: var count } after ? (count == 0 ? "-" : string.Join(' ', after.Select(one => int.Parse(((string)one!["step"]!)[2..], CultureInfo.InvariantCulture) - 1)))
        : i == 0 ? "-" : $"{i - 1}"));
}
