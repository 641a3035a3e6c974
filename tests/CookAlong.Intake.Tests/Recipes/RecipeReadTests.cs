using CookAlong.Intake.MealFiles;
using CookAlong.Domain.Quantities;
using CookAlong.Intake.Recipes;

namespace CookAlong.Intake.Tests.Recipes;

public sealed class RecipeReadTests
{
    const string Plain =
        """
        Leek and barley bake

        Serves 4

        Ingredients
        - 3 leeks
        - 200 g pearl barley
        1/2 lemon

        Method
        1. Boil the barley for 25 minutes. Drain well.
        2. Soften the leeks in butter for 10 to 12 minutes, stirring.
        3. Bake everything at 190 °C for 35 minutes, turning once.
        4. Let stand 10 minutes before serving.
        """;

    [Fact]
    public void A_plain_text_has_its_name_its_parts_and_its_steps()
    {
        var read = RecipeRead.Of(Plain);
        Assert.Equal(("Leek and barley bake", 4), (read.Name, read.Serves));
        Assert.Equal(["3 leeks", "200 g pearl barley", "1/2 lemon"], read.Ingredients);
        Assert.Equal(4, read.Steps.Length);
        Assert.Equal("Boil the barley for 25 minutes. Drain well.", read.Steps[0].Text);
        Assert.Empty(read.Unread);
    }

    // The forms that schema.org documents for Recipe: a graph, sections of steps, steps, plain texts.
    [Theory]
    [InlineData("""{"@type":"Recipe","name":"Soup","recipeYield":"4 bowls","recipeIngredient":["1 leek"],"recipeInstructions":"Boil 20 minutes.\nServe."}""")]
    [InlineData("""{"@graph":[{"@type":"WebPage"},{"@type":["Thing","Recipe"],"name":"Soup","recipeYield":[4],"recipeIngredient":"1 leek","recipeInstructions":[{"@type":"HowToStep","text":"Boil 20 minutes."},{"@type":"HowToStep","text":"Serve."}]}]}""")]
    [InlineData("""[{"@type":"https://schema.org/Recipe","name":"Soup","recipeYield":"Serves 4","recipeIngredient":["1 leek"],"recipeInstructions":[{"@type":"HowToSection","itemListElement":[{"@type":"HowToStep","text":"Boil 20 minutes."}]},{"@type":"HowToSection","itemListElement":["<p>Serve.</p>"]}]}]""")]
    public void A_page_s_own_data_is_read_in_every_form(string json)
    {
        foreach (var text in new[] { json, $"<html><head><script type=\"application/ld+json\">{json}</script></head><body><p>Ten adverts.</p></body></html>" })
        {
            var read = RecipeRead.Of(text);
            Assert.Equal(("Soup", 4), (read.Name, read.Serves));
            Assert.Equal(["1 leek"], read.Ingredients);
            Assert.Equal(["Boil 20 minutes.", "Serve."], read.Steps.Select(step => step.Text));
        }
    }

    [Fact]
    public void Microdata_is_read()
    {
        var read = RecipeRead.Of("""
            <div itemscope itemtype="https://schema.org/Recipe"><h1 itemprop="name">Soup</h1><span itemprop="recipeYield">4</span>
            <ul><li itemprop="recipeIngredient">1 leek</li></ul><ol itemprop="recipeInstructions"><li>Boil 20 minutes.</li><li>Serve.</li></ol></div>
            """);
        Assert.Equal("Soup", read.Name);
        Assert.Equal(["Boil 20 minutes.", "Serve."], read.Steps.Select(step => step.Text));
    }

    [Fact]
    public void A_page_without_a_recipe_s_marks_is_read_as_text_and_its_scripts_are_not()
    {
        var read = RecipeRead.Of("<html><body><script>alert('Boil 5 minutes.')</script><h1>Soup</h1><p>Boil the leeks 20 minutes.</p></body></html>");
        Assert.Equal("Soup", read.Name);
        Assert.Equal(["Boil the leeks 20 minutes."], read.Steps.Select(step => step.Text));
    }

    [Theory]
    [InlineData("")]
    [InlineData("{")]
    [InlineData("[[[[[[[[[[[[[[[[[[[[[[[[[[")]
    [InlineData("<html><script type='application/ld+json'>{\"@type\":\"Recipe\"")]
    [InlineData("{\"@type\":\"Recipe\",\"recipeInstructions\":{\"itemListElement\":5},\"name\":{}}")]
    public void Nonsense_is_read_without_a_fault(string text) => Assert.Empty(RecipeRead.Of(text).Steps);

    [Fact]
    public void Fifty_thousand_lines_are_cut_to_a_recipe_s_length_and_the_rest_is_said()
    {
        var read = RecipeRead.Of(string.Join('\n', Enumerable.Range(1, 50_000).Select(number => $"{number % 90 + 1}. Stir for {number % 7 + 1} minutes.")));
        Assert.Equal(RecipeRead.MostSteps, read.Steps.Length);
        Assert.True(read.Unread.Length > 40_000);
    }

    [Theory]
    [InlineData("Roast 60 minutes, basting every 15 minutes.", "Baste", 15)]
    [InlineData("Bake 40 minutes, turning once.", "Turn it", null)]
    [InlineData("Bake 40 minutes.", null, null)]
    [InlineData("Chop for 20 minutes, turning once.", null, null)]
    [InlineData("Roast 10 minutes, basting every 15 minutes.", null, null)]
    public void Tends_are_read_from_steps_that_cook_by_themselves(string text, string? job, int? every)
    {
        var tend = StepDraft.Of(StepRead.Of(text)).Tend;
        Assert.Equal((job, every), (tend?.Text, tend?.Every));
    }

    [Fact]
    public void What_was_read_becomes_a_dish_that_a_meal_takes()
    {
        var document = MealDocument.Of(SmallMeal.Text);
        var draft = DishDraft.Of(RecipeRead.Of(Plain), guests: 6, SpoonSizes.Metric);
        document.Add(draft.ToJson(document.FreeId(draft.Name), SmallMeal.Meal.Courses[0].Id.Value, fridge: null));
        var read = MealFile.Read(document.Text);
        Assert.True(read.IsGood, string.Join('\n', read.Errors));
        var dish = read.Meal.Dishes[^1];
        Assert.Equal("leek-and-barley-bake", dish.Id.Value);
        Assert.Equal([25, 11, 35, 10], dish.Steps.Select(step => step.Way.Minutes.Likely));
        Assert.Equal(190, dish.Steps[2].Way.Uses.Oven!.Celsius.Ideal);
        Assert.Equal([17], dish.Steps[2].Tends[0].Times(35));
        Assert.Equal(1, dish.Steps[0].Way.Uses.Rings);
        Assert.Equal(Domain.Meals.Attention.Unattended, dish.Steps[3].Way.Attention);
    }

    // British packs and butchers' guides: a fan oven is set 20 °C lower.
    [Theory]
    [InlineData("Roast at 160 °C fan for 40 minutes.", 180)]
    [InlineData("Roast at 180 °C for 40 minutes.", 180)]
    [InlineData("Roast at 180 °C/160 °C fan/gas 4 for 40 minutes.", 180)]
    public void A_heat_for_a_fan_oven_is_kept_as_a_conventional_one(string step, int celsius) =>
        Assert.Equal(celsius, StepDraft.Of(StepRead.Of(step)).Celsius);

    [Fact]
    public void A_dish_of_a_recipe_has_its_quantities_beside_the_words_they_came_from()
    {
        var dish = DishDraft.Of(RecipeRead.Of(Plain + "\n\nIngredients\n2-3 tbsp butter or oil (soft), melted\n"), 4, SpoonSizes.Metric).ToJson("bake", "main", fridge: null);
        var butter = dish["ingredients"]!.AsArray()[^1]!;
        Assert.Equal(("butter", 3m, "tbsp", "melted, soft", "oil", "2-3 tbsp butter or oil (soft), melted"),
            ((string?)butter["name"], (decimal?)butter["quantity"], (string?)butter["unit"], (string?)butter["preparation"], (string?)butter["alternatives"]![0], (string?)butter["written"]));
    }

    [Fact]
    public void What_may_be_taken_instead_comes_into_the_meal()
    {
        var document = MealDocument.Of(SmallMeal.Text);
        document.Add(DishDraft.Of(RecipeRead.Of(Plain + "\n\nIngredients\n3 tbsp oil or butter (contains hazelnuts)\n"), 4, SpoonSizes.Metric).ToJson("bake", SmallMeal.Meal.Courses[0].Id.Value, fridge: null));
        var oil = MealFile.Read(document.Text).Meal!.Dishes[^1].Ingredients[^1];
        Assert.Equal(("oil", "contains hazelnuts", "butter"), (oil.Name, oil.Preparation, Assert.Single(oil.Alternatives)));
    }
}
