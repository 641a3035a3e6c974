using System.Text.Json;
using CookAlong.Intake.MealFiles;
using CookAlong.Intake.PlanFiles;
using CookAlong.Intake.Tests.MealFiles;
using Json.Schema;

namespace CookAlong.Intake.Tests;

public sealed class SchemaTests
{
    static readonly JsonSchema Meal = JsonSchema.FromText(FileSchemas.Meal);
    static readonly JsonSchema Plan = JsonSchema.FromText(FileSchemas.Plan);

    public static TheoryData<string> Names => [.. SeedData.Names];

    public static TheoryData<string> Mistakes => [.. BadMeals.All.Where(bad => bad.SchemaSays).Select(bad => bad.Name)];

    static bool IsValid(JsonSchema schema, string json)
    {
        using var document = JsonDocument.Parse(json);
        return schema.Evaluate(document.RootElement).IsValid;
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_demo_meal_fits_the_schema_as_it_is_and_as_it_is_written(string name)
    {
        Assert.True(IsValid(Meal, SeedData.Text(name)));
        Assert.True(IsValid(Meal, MealFile.Write(SeedData.Meal(name))));
    }

    [Fact]
    public void The_small_meal_fits_the_schema() => Assert.True(IsValid(Meal, SmallMeal.Text));

    [Theory]
    [MemberData(nameof(Mistakes))]
    public void What_the_reader_refuses_for_its_form_the_schema_refuses_too(string name) =>
        Assert.False(IsValid(Meal, SmallMeal.With(BadMeals.All.Single(bad => bad.Name == name).Spoil)));

    [Fact]
    public void Unknown_fields_fit_the_schema() => Assert.True(IsValid(Meal, SmallMeal.With(root => root["mood"] = "calm")));

    [Fact]
    public void A_written_plan_fits_the_schema() => Assert.True(IsValid(Plan, PlanFile.Write(PlanSamples.Full(SmallMeal.Meal), SmallMeal.Meal)));

    [Theory]
    [InlineData("""{ "format": "cookalong-plan/1" }""")]
    [InlineData("""{ "format": "cookalong-plan/1", "status": "perfect" }""")]
    [InlineData("""{ "format": "cookalong-plan/1", "status": "none", "gap": 2 }""")]
    [InlineData("""{ "format": "cookalong-plan/1", "status": "none", "conflicts": [{ "change": { "kind": "pray" } }] }""")]
    public void A_broken_plan_does_not_fit_the_schema(string json) => Assert.False(IsValid(Plan, json));

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void The_schemas_are_schemas_of_2020_12(bool isMeal) =>
        Assert.True(IsValid(MetaSchemas.Draft202012, isMeal ? FileSchemas.Meal : FileSchemas.Plan));

    [Theory]
    [InlineData("meal.schema.json")]
    [InlineData("plan.schema.json")]
    public void The_schemas_lie_beside_the_program(string name) => Assert.True(File.Exists(Path.Combine(AppContext.BaseDirectory, "Schemas", name)));
}
