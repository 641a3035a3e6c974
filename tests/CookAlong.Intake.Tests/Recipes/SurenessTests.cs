using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Quantities;
using CookAlong.Intake.MealFiles;
using CookAlong.Intake.Recipes;

namespace CookAlong.Intake.Tests.Recipes;

/// <summary>How sure each thing of a draft is, and what a person's corrections make of it.</summary>
public sealed class SurenessTests
{
    [Theory]
    [InlineData("Roast in the oven at 180 °C for 40 minutes.", Sureness.Read, Sureness.Read, Sureness.Read)]
    [InlineData("Bake at gas mark 4 for 40 minutes.", Sureness.Read, Sureness.Read, Sureness.Usual)]
    [InlineData("Roast in a moderate oven for 40 minutes.", Sureness.Read, Sureness.Usual, Sureness.Read)]
    [InlineData("Bake for 40 minutes.", Sureness.Read, Sureness.Guessed, Sureness.Usual)]
    [InlineData("Simmer for 40 minutes.", Sureness.Read, Sureness.Guessed, Sureness.Usual)]
    [InlineData("Simmer in a large pan for 40 minutes.", Sureness.Read, Sureness.Guessed, Sureness.Read)]
    [InlineData("Chill overnight.", Sureness.Usual, Sureness.Guessed, Sureness.Usual)]
    [InlineData("Put it into the fridge over night.", Sureness.Usual, Sureness.Guessed, Sureness.Read)]
    [InlineData("Let rest for 10 minutes.", Sureness.Read, Sureness.Guessed, Sureness.Usual)]
    [InlineData("Chop the leeks.", Sureness.Guessed, Sureness.Guessed, Sureness.Guessed)]
    [InlineData("Boil until soft.", Sureness.Guessed, Sureness.Guessed, Sureness.Guessed)]
    public void Each_thing_of_a_step_says_whether_words_say_it(string text, Sureness time, Sureness heat, Sureness place)
    {
        var step = StepDraft.Of(StepRead.Of(text));
        Assert.Equal((time, heat, place), (step.TimeFrom, step.HeatFrom, step.PlaceFrom));
    }

    [Fact]
    public void What_a_person_corrects_is_theirs()
    {
        var step = StepDraft.Of(StepRead.Of("Roast in the oven at 180 °C for 40 minutes."));
        (step.Most, step.Celsius, step.On) = (45, 200, CookedOn.Ring);
        Assert.Equal((Sureness.Corrected, Sureness.Corrected, Sureness.Corrected), (step.TimeFrom, step.HeatFrom, step.PlaceFrom));
    }

    [Theory]
    [InlineData("2 leeks", Sureness.Read)]
    [InlineData("two leeks", Sureness.Read)]
    [InlineData("½ cup cream", Sureness.Read)]
    [InlineData("a knob of butter", Sureness.Usual)]
    [InlineData("salt to taste", Sureness.Guessed)]
    public void The_amount_of_an_ingredient_says_whether_it_was_read(string line, Sureness amount) =>
        Assert.Equal(amount, IngredientDraft.Of(IngredientRead.Of(line, SpoonSizes.Metric)).AmountFrom);

    [Fact]
    public void A_corrected_ingredient_is_written_beside_the_line_it_was()
    {
        var draft = DishDraft.Of(RecipeRead.Of("Soup\nIngredients\n- 3 leaks (washed)\n- salt\nMethod\nBoil 20 minutes."), 4, SpoonSizes.Metric);
        (draft.Ingredients[0].Quantity, draft.Ingredients[0].Unit, draft.Ingredients[0].Name) = (400, " g ", " leeks ");
        draft.Ingredients.RemoveAt(1);
        var leeks = Assert.Single(draft.ToJson("soup", "main", fridge: null)["ingredients"]!.AsArray())!;
        Assert.Equal((400m, "g", "leeks", "washed", "3 leaks (washed)"), ((decimal)leeks["quantity"]!, (string)leeks["unit"]!, (string)leeks["name"]!, (string)leeks["preparation"]!, (string)leeks["written"]!));
        Assert.Equal(Sureness.Corrected, draft.Ingredients[0].AmountFrom);
    }

    [Theory]
    [InlineData("fridge", true)]
    [InlineData("Fridge", true)]
    [InlineData("mixer", false)]
    public void What_is_chilled_takes_a_place_in_a_fridge_that_the_kitchen_counts(string appliance, bool isTaken)
    {
        var text = SmallMeal.With(root => root["kitchen"]!["appliances"] = new System.Text.Json.Nodes.JsonArray(new System.Text.Json.Nodes.JsonObject { ["id"] = appliance, ["count"] = 3 }));
        var document = MealDocument.Of(text);
        var draft = DishDraft.Of(RecipeRead.Of("Pudding\nMethod\n1. Whisk 5 minutes.\n2. Chill 2 hours."), 4, SpoonSizes.Metric);
        document.Add(draft.ToJson("pudding", SmallMeal.Meal.Courses[0].Id.Value, DishDraft.FridgeOf(MealFile.Read(text).Meal!.Kitchen)));
        var read = MealFile.Read(document.Text);
        Assert.True(read.IsGood, string.Join('\n', read.Errors));
        Assert.Equal(isTaken, read.Meal.Dishes[^1].Steps[1].Way.Uses.Appliances.Contains(new ApplianceId(appliance)));
    }
}
