using System.Text.Json.Nodes;
using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Intake.MealFiles;
using CookAlong.Planner.Quick;

namespace CookAlong.Planner.Tests;

/// <summary>The dishes that come with the house. Their figures are common practice, no source.</summary>
public sealed class SeedDishesTests
{
    static readonly IReadOnlyDictionary<string, string> dishes = Directory.GetFiles(Path.Combine(SeedMealsTests.Root(), "seed-data", "dishes"), "*.json")
        .SelectMany(file => JsonNode.Parse(File.ReadAllText(file))!["dishes"]!.AsArray())
        .ToDictionary(dish => dish!["name"]!.GetValue<string>(), dish => dish!.ToJsonString());

    public static TheoryData<string> Names => [.. dishes.Keys.Order(StringComparer.Ordinal)];

    [Fact]
    public void There_are_at_least_thirty_of_several_kinds()
    {
        Assert.True(dishes.Count >= 30);
        var kinds = dishes.Values.Select(dish => KindsOfFood.Of(DishDocument.Of(dish).Kind)).ToList();
        Assert.DoesNotContain(null, kinds);
        Assert.True(kinds.Distinct().Count() >= 10);
        Assert.True(dishes.Values.Select(DishFile.Read).Count(read => read.Dish!.Steps.Any(step => step.Tends.Length > 0)) >= 10);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_dish_is_read_without_an_error_and_says_what_a_cook_would_ask(string name)
    {
        var read = DishFile.Read(dishes[name]);

        Assert.Empty(read.Errors);
        Assert.NotEmpty(read.Dish!.Ingredients);
        Assert.All(read.Dish.Holds, hold => Assert.True(hold.Limit > 0));
        Assert.Contains(read.Dish.Steps, step => step.Way.Minutes.Least < step.Way.Minutes.Most);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Whoever_has_a_knife_raw_poultry_or_hot_oil_in_hand_is_cautioned(string name) =>
        Assert.All(
            DishFile.Read(dishes[name]).Dish!.Steps.Where(step => step.Needs.Contains("knife") || step.Text.Contains("chicken", StringComparison.Ordinal) && step.Way.Attention == Attention.HandsOn || step.Text.StartsWith("Fry the fritters", StringComparison.Ordinal)),
            step => Assert.False(string.IsNullOrEmpty(step.Caution), step.Text));

    [Theory]
    [MemberData(nameof(Names))]
    public void Two_cooks_in_an_ordinary_kitchen_bring_every_dish_to_the_table_on_time(string name)
    {
        var meal = Alone(dishes[name]);

        var plan = new QuickPlanner().Plan(new PlanRequest(meal, new PlanLimits(TimeSpan.FromSeconds(20), Deterministic: 1)), stop: TestContext.Current.CancellationToken);

        Assert.NotEqual(PlanStatus.None, plan.Status);
        Assert.Equal(0, plan.Cost.LateMinutes);
        Assert.Empty(PlanCheck.Check(meal, plan));
    }

    static Meal Alone(string dish)
    {
        const string Kitchen = """
            {
              "format": "cookalong-meal/1", "name": "One dish", "timeZone": "UTC", "courses": [{ "id": "main", "tableTime": "2031-02-08T13:00" }],
              "kitchen": {
                "ovens": [{ "id": "oven", "shelves": 3, "minCelsius": 50, "maxCelsius": 250, "heatUpPerMinute": 12, "coolDownPerMinute": 6 }],
                "rings": 4, "grills": [{ "id": "grill" }],
                "appliances": [{ "id": "mixer" }, { "id": "blender" }, { "id": "microwave" }, { "id": "food-processor" }, { "id": "pressure-cooker" }]
              },
              "helpers": [{ "id": "oda" }, { "id": "finn" }],
              "dishes": [{ "id": "water", "course": "main", "steps": [{ "id": "jug", "text": "Put water on the table", "minutes": 1 }] }]
            }
            """;
        var document = MealDocument.Of(Kitchen);
        document.Add(DishDocument.Of(dish), "none", new CourseId("main"));
        var read = MealFile.Read(document.Text);
        Assert.Empty(read.Errors);
        return read.Meal!;
    }
}
