using CookAlong.Domain.Quantities;
using CookAlong.Intake.Recipes;

namespace CookAlong.Intake.Tests.Recipes;

/// <summary>What a recipe says at its head of how long it takes, and where that cannot be.</summary>
public sealed class StatedTimesTests
{
    // Forms of ISO 8601-1:2019, 5.5.2 (durations), as schema.org's Duration wants them; 0 = no time.
    [Theory]
    [InlineData("PT20M", 20)]
    [InlineData("PT1H30M", 90)]
    [InlineData("PT90M", 90)]
    [InlineData("P0DT0H30M0S", 30)]
    [InlineData("P1DT2H", 1560)]
    [InlineData("P1W", 10080)]
    [InlineData("PT1.5H", 90)]
    [InlineData("PT0,5H", 30)]
    [InlineData("pt45m", 45)]
    [InlineData("PT90S", 1.5)]
    [InlineData("1 hour 30 minutes", 90)]
    [InlineData("about 45 min", 45)]
    [InlineData("PT0M", 0)]
    [InlineData("P", 0)]
    [InlineData("PT", 0)]
    [InlineData("P1Y", 0)]
    [InlineData("P3M", 0)]
    [InlineData("P400D", 0)]
    [InlineData("PT999999999999999999999H", 0)]
    [InlineData("-PT5M", 0)]
    [InlineData("", 0)]
    [InlineData("soon", 0)]
    [InlineData("20 minutes, then 30 minutes", 0)]
    public void A_time_of_the_whole_is_read_or_is_none(string text, double minutes) =>
        Assert.Equal(minutes, StatedTime.Of(text)?.Likely ?? 0);

    static string Page(string times, string steps = "\"Chop the leeks.\",\"Bake until golden.\"") =>
        $$"""{"@type":"Recipe","name":"Leeks",{{times}},"recipeInstructions":[{{steps}}]}""";

    [Fact]
    public void A_page_says_its_times_in_its_data_or_in_its_marks()
    {
        var json = RecipeRead.Of(Page("\"prepTime\":\"PT20M\",\"performTime\":\"PT35M\",\"totalTime\":\"PT1H\""));
        Assert.Equal((20, 35, 60), (json.Stated.Prep!.Likely, json.Stated.Cook!.Likely, json.Stated.Total!.Likely));
        Assert.Equal(40, RecipeRead.Of(Page("\"performTime\":\"PT35M\",\"cookTime\":\"PT40M\"")).Stated.Cook!.Likely);
        var marks = RecipeRead.Of("""
            <div itemscope itemtype="https://schema.org/Recipe"><h1 itemprop="name">Leeks</h1>
            <time itemprop="prepTime" datetime="PT20M">a moment</time><meta itemprop="cookTime" content="PT35M"><ol itemprop="recipeInstructions"><li>Bake.</li></ol></div>
            """);
        Assert.Equal((20, 35), (marks.Stated.Prep!.Likely, marks.Stated.Cook!.Likely));
    }

    [Fact]
    public void A_time_that_is_none_is_told_and_one_of_nought_is_not()
    {
        var read = RecipeRead.Of(Page("\"prepTime\":\"when you like\",\"cookTime\":\"PT0M\""));
        Assert.Equal(["prepTime: when you like"], read.Unread);
        Assert.True(read.Stated.IsNone);
    }

    [Theory]
    [InlineData("Prep time: 20 minutes", 20, 0, 0)]
    [InlineData("Prep: 20 min | Cook: 25-35 min | Total: 1 hr 10 min", 20, 30, 70)]
    [InlineData("Ready in 45 minutes", 0, 0, 45)]
    [InlineData("Cooking time 2 hours", 0, 120, 0)]
    [InlineData("Total time: about an hour", 0, 0, 60)]
    public void A_plain_text_says_them_at_its_head(string line, double prep, double cook, double total)
    {
        var read = RecipeRead.Of($"Leek bake\n{line}\n\nIngredients\n3 leeks\n\nMethod\nBake them.");
        Assert.Equal((prep, cook, total), (read.Stated.Prep?.Likely ?? 0, read.Stated.Cook?.Likely ?? 0, read.Stated.Total?.Likely ?? 0));
        Assert.Equal("Leek bake", read.Name);
        Assert.Empty(read.Unread);
    }

    [Theory]
    [InlineData("Bake 20 minutes.")]
    [InlineData("Cook: 20 minutes on one side, then turn.")]
    [InlineData("Cooking time depends on the oven.")]
    public void A_step_is_no_such_line(string line)
    {
        var read = RecipeRead.Of($"Leek bake\n\nMethod\n{line}");
        Assert.True(read.Stated.IsNone);
        Assert.Equal(line, Assert.Single(read.Steps).Text);
    }

    static DishDraft Draft(string times, string steps) => DishDraft.Of(RecipeRead.Of(Page(times, steps)), 4, SpoonSizes.UnitedKingdom);

    [Fact]
    public void Steps_without_a_time_share_what_the_whole_leaves_for_them()
    {
        var draft = Draft("\"prepTime\":\"PT20M\",\"cookTime\":\"PT1H\"", "\"Chop the leeks.\",\"Fry them in a pan for 10 minutes.\",\"Grate the cheese.\",\"Bake in the oven until golden.\"");
        Assert.Equal([(10, CookedOn.Nothing), (10, CookedOn.Ring), (10, CookedOn.Nothing), (50, CookedOn.Oven)], draft.Steps.Select(step => (step.Likely, step.On)));
        Assert.Equal([true, false, true, true], draft.Steps.Select(step => step.IsGuessed && step.IsByTheWhole));
        Assert.Empty(draft.Doubts);
        // Of two on the heat nobody can say which takes how much.
        Assert.All(Draft("\"cookTime\":\"PT1H\"", "\"Fry them in a pan.\",\"Bake in the oven until golden.\"").Steps, step => Assert.False(step.IsByTheWhole));
    }

    [Fact]
    public void Times_that_contradict_each_other_are_named()
    {
        Assert.Equal(new TimeDoubt.PartsBeyondTotal(30, 60, 45), Assert.Single(Draft("\"prepTime\":\"PT30M\",\"cookTime\":\"PT1H\",\"totalTime\":\"PT45M\"", "\"Serve.\"").Doubts));
        Assert.Equal(new TimeDoubt.StepsBeyondTotal(130, 30), Assert.Single(Draft("\"totalTime\":\"PT30M\"", "\"Let the dough rise for 2 hours.\",\"Knead it for 10 minutes.\"").Doubts));
        Assert.Equal(new TimeDoubt.HeatIsOther(90, 90, 30), Assert.Single(Draft("\"cookTime\":\"PT30M\"", "\"Bake in the oven for 90 minutes.\"").Doubts));
        Assert.Equal(new TimeDoubt.HeatIsOther(20, 20, 120), Assert.Single(Draft("\"cookTime\":\"PT2H\"", "\"Bake in the oven for 20 minutes.\"").Doubts));
        Assert.Equal(
            new TimeDoubt.SumOfStep("Roast 20 minutes at 220 °C and 30 minutes at 180 °C, a total of 90", 50, 90),
            Assert.Single(Draft("\"recipeYield\":4", "\"Roast 20 minutes at 220 °C and 30 minutes at 180 °C, a total of 90 minutes.\"").Doubts));
    }

    [Fact]
    public void Times_that_agree_are_not_doubted()
    {
        // Meanwhile: the sauce does not lengthen the whole. Rests count to the whole, not to the cooking.
        Assert.Empty(Draft(
            "\"prepTime\":\"PT15M\",\"cookTime\":\"PT1H\",\"totalTime\":\"PT1H40M\"",
            "\"Chop the leeks for 15 minutes.\",\"Roast the leeks in the oven for 60 minutes.\",\"Meanwhile, simmer the sauce for 45 minutes.\",\"Let stand 20 minutes.\"").Doubts);
        Assert.Empty(Draft("\"cookTime\":\"PT40M\"", "\"Roast for 10 minutes, then for 30 minutes more, a total of 40 minutes.\"").Doubts);
    }
}
