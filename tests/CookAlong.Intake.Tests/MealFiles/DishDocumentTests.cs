using System.Text.Json.Nodes;
using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Intake.MealFiles;

namespace CookAlong.Intake.Tests.MealFiles;

public sealed class DishDocumentTests
{
    const string Tart = """
        {
          "id": "tart", "name": "Leek tart", "aunt": "Sigrun's", "kind": "gratin or bake",
          "ingredients": [{ "name": "leeks", "quantity": 4, "bed": "the far one" }, { "name": "eggs" }],
          "steps": [
            { "id": "slice", "text": "Slice the leeks", "minutes": 8, "ours": true },
            { "id": "sweat", "text": "Sweat the leeks", "minutes": { "least": 9, "likely": 10, "most": 14 }, "attention": "nearby", "uses": [{ "rings": 1 }] },
            { "id": "line", "text": "Line the tin", "minutes": 6, "after": [] },
            { "id": "bake", "text": "Bake the tart", "minutes": 35, "attention": "unattended",
              "uses": [{ "oven": { "celsius": { "min": 170, "max": 190 } } }],
              "after": [{ "step": "line", "gap": { "most": 60 }, "why": "it dries" }, { "step": "sweat" }] }
          ]
        }
        """;

    static string Only(string steps) => $$"""{ "id": "d", "name": "D", "steps": {{steps}} }""";

    [Fact]
    public void A_dish_alone_is_read_by_the_rules_of_meals_with_places_inside_the_dish()
    {
        var read = DishFile.Read(Only("""[{ "id": "a", "text": "A", "minutes": 5 }, { "id": "b", "text": "B", "minutes": "soon" }]"""));

        var error = Assert.Single(read.Errors);
        Assert.Equal("/steps/1/minutes", error.Place);
        Assert.NotEmpty(error.Remedy);
    }

    [Theory]
    [InlineData("")]
    [InlineData("[]")]
    [InlineData("nonsense")]
    [InlineData("{}")]
    [InlineData("""{ "steps": 4 }""")]
    [InlineData("""{ "id": 3, "name": [], "steps": [{}] }""")]
    public void Whatever_the_text_it_is_refused_in_words(string text) => Assert.NotEmpty(DishFile.Read(text).Errors);

    [Fact]
    public void Any_kitchen_will_do_for_a_dish_of_the_library()
    {
        var read = DishFile.Read(Only("""[{ "id": "a", "text": "A", "minutes": 5, "people": 12, "uses": [{ "appliance": "tandoor" }, { "rings": 9 }, { "grill": true }] }]"""));

        Assert.Empty(read.Errors);
    }

    [Fact]
    public void A_change_writes_what_it_changes_and_leaves_all_else()
    {
        var document = DishDocument.Of(Tart);

        document.Change(3, step => step with { Way = step.Way with { Minutes = new(30, 35, 45) } });
        document.Change(dish => dish with { Ingredients = dish.Ingredients.SetItem(0, dish.Ingredients[0] with { Quantity = 5 }) });

        var expected = JsonNode.Parse(Tart)!;
        expected["steps"]![3]!["minutes"] = new JsonObject { ["least"] = 30, ["likely"] = 35, ["most"] = 45 };
        expected["ingredients"]![0]!["quantity"] = 5;
        Assert.True(JsonNode.DeepEquals(expected, JsonNode.Parse(document.Text)), document.Text);
    }

    [Fact]
    public void An_entry_taken_out_takes_nothing_of_the_others_with_it()
    {
        var document = DishDocument.Of(Tart);

        document.RemoveEntry("ingredients", 1);

        Assert.Equal("the far one", JsonNode.Parse(document.Text)!["ingredients"]![0]!["bed"]!.GetValue<string>());
        Assert.Equal("leeks", Assert.Single(DishFile.Read(document.Text).Dish!.Ingredients).Name);
    }

    [Fact]
    public void A_step_that_follows_the_order_follows_whatever_comes_to_stand_before_it()
    {
        var document = DishDocument.Of(Only("""[{ "id": "a", "text": "A", "minutes": 5 }, { "id": "b", "text": "B", "minutes": 5 }, { "id": "c", "text": "C", "minutes": 5 }]"""));

        Assert.Empty(document.MoveStep(2, 1));

        var dish = DishFile.Read(document.Text).Dish!;
        Assert.Equal(["a", "c", "b"], dish.Steps.Select(step => step.Id.Value));
        Assert.Equal("c", Assert.Single(dish.Steps[2].After).Step.Value);
    }

    [Fact]
    public void A_step_moved_behind_one_that_waits_for_it_is_waited_for_no_more_and_that_is_said()
    {
        var document = DishDocument.Of(Tart);

        var freed = document.MoveStep(2, 3);

        Assert.Equal(["Bake the tart"], freed);
        var read = DishFile.Read(document.Text);
        Assert.Empty(read.Errors);
        Assert.Equal("sweat", Assert.Single(read.Dish!.Steps.Single(step => step.Id.Value == "bake").After).Step.Value);
    }

    [Fact]
    public void What_waited_only_for_a_step_that_is_left_out_follows_the_order_again()
    {
        var document = DishDocument.Of(Only("""[{ "id": "a", "text": "A", "minutes": 5 }, { "id": "b", "text": "B", "minutes": 5 }, { "id": "c", "text": "C", "minutes": 5, "after": [{ "step": "a" }] }]"""));

        document.RemoveStep(0);

        var dish = DishFile.Read(document.Text).Dish!;
        Assert.True(document.FollowsOrder(1));
        Assert.Equal("b", Assert.Single(dish.Steps[1].After).Step.Value);
    }

    [Fact]
    public void A_new_step_has_an_id_of_its_own_whatever_the_others_are_called()
    {
        var document = DishDocument.Of(Only("""[{ "id": "step-2", "text": "A", "minutes": 5 }]"""));

        document.AddStep("B", 10);
        document.AddStep("C", 10);

        Assert.Empty(DishFile.Read(document.Text).Errors);
        Assert.Equal(3, DishFile.Read(document.Text).Dish!.Steps.Length);
    }

    [Fact]
    public void In_a_meal_it_has_ids_of_its_own_however_often_it_comes()
    {
        var meal = MealDocument.Of(SeedData.Text("weeknight-three-dishes.json"));
        var course = MealFile.Read(meal.Text).Meal!.Courses[0].Id;

        meal.Add(DishDocument.Of(Tart), "its-name-there", course);
        meal.Add(DishDocument.Of(Tart), "its-name-there", course);

        var read = MealFile.Read(meal.Text);
        Assert.Empty(read.Errors);
        Assert.Equal(2, read.Meal!.Dishes.Count(dish => dish.Name == "Leek tart"));
        Assert.Equal(2, meal.FromDishes.Values.Count(from => from == "its-name-there"));
        Assert.All(read.Meal.Dishes.TakeLast(2), dish => Assert.Equal([$"{dish.Id}-line", $"{dish.Id}-sweat"], dish.Steps[3].After.Select(link => link.Step.Value)));
    }

    [Fact]
    public void What_a_dish_cannot_do_without_comes_into_the_kitchen_and_ways_that_need_more_stay_behind()
    {
        var meal = MealDocument.Of(SeedData.Text("midwinter-lunch.json"));

        meal.Add(DishDocument.Of(Only("""
            [{ "id": "beat", "text": "Beat", "minutes": 5, "uses": [{ "appliance": "mixer" }] },
             { "id": "boil", "text": "Boil", "minutes": 60, "uses": [{ "rings": 1 }], "options": [{ "minutes": 20, "uses": [{ "appliance": "pressure-cooker" }] }, { "minutes": 30, "uses": [{ "appliance": "microwave" }] }] }]
            """)), "x", new CourseId("main"));

        var read = MealFile.Read(meal.Text);
        Assert.Empty(read.Errors);
        Assert.Equal(["microwave", "mixer"], read.Meal!.Kitchen.Appliances.Select(one => one.Id.Value).Order());
        Assert.Equal(30, Assert.Single(read.Meal.Dishes[^1].Steps[1].Options).Minutes.Likely);
    }

    [Fact]
    public void Out_of_a_meal_and_into_it_again_it_is_the_same_dish()
    {
        var meal = MealDocument.Of(SeedData.Text("weeknight-three-dishes.json"));
        meal.Add(DishDocument.Of(Tart), "x", MealFile.Read(meal.Text).Meal!.Courses[0].Id);
        var id = MealFile.Read(meal.Text).Meal!.Dishes[^1].Id;

        var alone = JsonNode.Parse(meal.Alone(id).Text)!;

        alone["id"] = "tart";
        Assert.True(JsonNode.DeepEquals(JsonNode.Parse(Tart), alone), alone.ToJsonString());
    }

    [Fact]
    public void Every_dish_of_a_demo_meal_stands_alone_without_its_meal_s_people_times_and_neighbours()
    {
        var meal = MealDocument.Of(SeedData.Text("midwinter-lunch.json"));

        Assert.All(SeedData.Meal("midwinter-lunch.json").Dishes, dish =>
        {
            var read = DishFile.Read(meal.Alone(dish.Id).Text);
            Assert.Empty(read.Errors);
            Assert.Equal(dish.Steps.Length, read.Dish!.Steps.Length);
            Assert.All(read.Dish.Steps, step => Assert.Null(step.At));
        });
    }

    [Fact]
    public void A_chosen_way_is_the_same_one_after_one_before_it_is_taken_away_and_nobodys_when_it_goes_itself()
    {
        var document = DishDocument.Of(Only("""[{ "id": "a", "text": "A", "minutes": 5, "choice": 1, "options": [{ "minutes": 6 }, { "minutes": 7, "uncle": "Ivo" }] }]"""));

        document.RemoveOption(0, 0);
        Assert.Equal((0, 7), (DishFile.Read(document.Text).Dish!.Steps[0].Choice, DishFile.Read(document.Text).Dish!.Steps[0].Options[0].Minutes.Likely));
        Assert.Contains("Ivo", document.Text, StringComparison.Ordinal);

        document.RemoveOption(0, 0);
        Assert.Null(DishFile.Read(document.Text).Dish!.Steps[0].Choice);
        Assert.Equal(Only("""[{ "id": "a", "text": "A", "minutes": 5 }]"""), JsonNode.Parse(document.Text)!.ToJsonString(), ignoreAllWhiteSpace: true);
    }
}
