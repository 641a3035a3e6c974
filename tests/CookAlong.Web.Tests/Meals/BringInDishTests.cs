using Bunit;
using CookAlong.Domain.FoodSafety;
using CookAlong.Intake.MealFiles;
using CookAlong.Web.Features.Dishes;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Features.Meals.Recipes;
using CookAlong.Web.Features.Settings;
using CookAlong.Web.Tests.Plans;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;

namespace CookAlong.Web.Tests.Meals;

public sealed class BringInDishTests : BunitContext
{
    static readonly CancellationToken Stop = Xunit.TestContext.Current.CancellationToken;

    readonly HouseholdFile household = new();

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        household.Dispose();
    }

    // NIST Handbook 44, appendix C: a US cup is 16 tablespoons; of 250 and 15 mL 2 tbsp are 0.12 of a cup.
    [Theory]
    [InlineData(Region.UnitedStates, "1 1/8 cup · sugar")]
    [InlineData(Region.UnitedKingdom, "1.12 cup · sugar")]
    public async Task Spoons_and_cups_are_the_household_s(Region chosen, string read)
    {
        var page = await ReadAsync("Sweet\n\nIngredients\n1 cup plus 2 tbsp sugar\n\nMethod\nStir for 5 minutes.", chosen);
        Assert.Contains(read, page.Markup, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("<h1>Soup</h1><p>Boil 20 minutes.</p>", true)]
    [InlineData("<script type='application/ld+json'>{\"@type\":\"Recipe\",\"recipeInstructions\":\"Boil 20 minutes.\"}</script>", false)]
    [InlineData("Soup\nBoil 20 minutes.", false)]
    public async Task A_page_that_marks_no_recipe_is_said_to_be_none(string text, bool isSaid) =>
        Assert.Equal(isSaid, (await ReadAsync(text)).Markup.Contains("This page marks no recipe as one", StringComparison.Ordinal));

    [Fact]
    public async Task Data_that_is_no_recipe_does_not_become_a_dish_s_name()
    {
        var page = await ReadAsync("""{"@type":"WebPage","name":"Our kitchen"}""");
        Assert.Contains("This is data without a recipe in it", page.Markup, StringComparison.Ordinal);
        Assert.Equal("A dish without a name", page.Find("input").GetAttribute("value"));
    }

    // A pound is 0.45359237 kg exactly (NIST Handbook 44, appendix C).
    [Theory]
    [InlineData("2 kg beef", "2 kg of beef at 20 min a pound, and 20 min more.")]
    [InlineData("a joint of beef", "It goes by weight, and no weight of a main food is written among the ingredients: 1.5 kg is a guess, at 20 min a pound, and 20 min more.")]
    public async Task A_time_by_weight_says_by_which(string ingredient, string said) =>
        Assert.Contains(said, (await ReadAsync($"Roast\nIngredients\n{ingredient}\nMethod\nRoast 20 minutes to the pound plus 20 minutes.")).Markup, StringComparison.Ordinal);

    [Fact]
    public async Task Each_field_says_how_sure_it_is_until_it_is_corrected()
    {
        var page = await ReadAsync("Roast\nIngredients\na knob of butter\nMethod\nBake in a moderate oven for 40 minutes.");
        string[] Words() => [.. page.FindAll("label, .times > span").Select(one => one.TextContent.Trim().Replace("\n", "", StringComparison.Ordinal)).Where(one => one.EndsWith("read", StringComparison.Ordinal) || one.EndsWith("usual", StringComparison.Ordinal) || one.EndsWith("yours", StringComparison.Ordinal))];
        Assert.Equal(["Amount usual", "Minutes read", "°C usual"], Words().Where(one => !one.StartsWith("Where", StringComparison.Ordinal)));

        await page.Find("input[min='40']").ChangeAsync(new() { Value = "200" });
        await page.Find("input[inputmode='decimal']").ChangeAsync(new() { Value = "2" });
        Assert.Equal(["Amount yours", "Minutes read", "°C yours"], Words().Where(one => !one.StartsWith("Where", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task An_ingredient_without_an_amount_says_that_none_was_read() =>
        Assert.Contains("none read", (await ReadAsync("Soup\nIngredients\nsalt to taste\nMethod\nBoil 20 minutes.")).Markup, StringComparison.Ordinal);

    /// <summary>The page after a text was pasted.</summary>
    async Task<IRenderedComponent<BringInDish>> ReadAsync(string text, Region chosen = Region.UnitedKingdom)
    {
        var clock = new FakeTimeProvider();
        var (meals, region) = (new MealBook(household, clock), new HouseholdRegion(household));
        await region.ChooseAsync(chosen, Stop);
        Services.AddSingleton(meals).AddSingleton(region).AddSingleton(new DishBook(household, clock));
        ComponentFactories.AddStub<RecipeSource>();
        var meal = ((MealEdit.Kept)await meals.AddAsync(MealFile.Write(AlderLane.Meal), fromNow: false, Stop)).Meal.Row.Id;
        var page = Render<BringInDish>(parameters => parameters.Add(one => one.MealId, meal));
        await page.WaitForStateAsync(() => page.HasComponent<Bunit.TestDoubles.Stub<RecipeSource>>());

        await page.InvokeAsync(() => page.FindComponent<Bunit.TestDoubles.Stub<RecipeSource>>().Instance.Parameters.Get(source => source.Taken).InvokeAsync(text));
        return page;
    }
}
