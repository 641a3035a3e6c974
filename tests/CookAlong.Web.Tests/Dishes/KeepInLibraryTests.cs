using Bunit;
using CookAlong.Domain;
using CookAlong.Intake.MealFiles;
using CookAlong.Web.Features.Dishes;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Tests.Meals;
using CookAlong.Web.Tests.Plans;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;

namespace CookAlong.Web.Tests.Dishes;

public sealed class KeepInLibraryTests : BunitContext
{
    static readonly CancellationToken Stop = Xunit.TestContext.Current.CancellationToken;

    readonly HouseholdFile household = new();
    readonly DishBook dishes;
    readonly MealBook meals;

    public KeepInLibraryTests()
    {
        (dishes, meals) = (new DishBook(household, new FakeTimeProvider()), new MealBook(household, new FakeTimeProvider()));
        Services.AddSingleton(dishes);
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        household.Dispose();
    }

    async Task<KeptMeal> MealAsync() =>
        Assert.IsType<MealEdit.Kept>(await meals.AddAsync(MealFile.Write(AlderLane.Meal), fromNow: false, Stop)).Meal;

    IRenderedComponent<KeepInLibrary> Part(KeptMeal meal, string dish) => Render<KeepInLibrary>(parameters => parameters
        .Add(part => part.Meal, meal)
        .Add(part => part.Dish, meal.Meal.Dishes.Single(one => one.Name == dish)));

    [Fact]
    public async Task A_meal_s_dish_is_kept_and_the_meal_stays_as_it_was_planned()
    {
        var meal = await MealAsync();

        await Part(meal, "Nut roast").Find("button").ClickAsync(new());

        Assert.Equal("Nut roast", Assert.Single(await dishes.AllAsync(Stop)).Dish.Name);
        Assert.Equal(meal.Row.Version, (await meals.OpenAsync(meal.Row.Id, Stop))!.Row.Version);
    }

    [Fact]
    public async Task A_dish_that_came_from_the_library_becomes_its_new_version_or_stands_beside_it()
    {
        var tart = Assert.IsType<DishEdit.Kept>(await dishes.AddAsync(LeekTart.Json, Stop)).Dish;
        var meal = Assert.IsType<MealEdit.Kept>(await meals.EditAsync(await MealAsync(), document => document.Add(tart.Document, tart.Row.Id.ToString(), new CourseId("main")), fromNow: false, Stop)).Meal;
        await dishes.KeepAsync(tart, LeekTart.Json.Replace("Leek tart", "Tart", StringComparison.Ordinal), null, Stop);
        var part = Part(meal, "Leek tart");

        await part.Find("button").ClickAsync(new());
        await part.FindAll("button").Single(button => button.TextContent.Contains("new version", StringComparison.Ordinal)).ClickAsync(new());

        var kept = Assert.Single(await dishes.AllAsync(Stop));
        Assert.Equal(("Leek tart", 3), (kept.Dish.Name, kept.Row.Number));
        Assert.Equal(["slice", "sweat", "line", "bake"], kept.Dish.Steps.Select(step => step.Id.Value));
    }

    [Fact]
    public async Task A_dish_that_somebody_changed_meanwhile_is_not_written_over_and_that_is_said()
    {
        var tart = Assert.IsType<DishEdit.Kept>(await dishes.AddAsync(LeekTart.Json, Stop)).Dish;
        var meal = Assert.IsType<MealEdit.Kept>(await meals.EditAsync(await MealAsync(), document => document.Add(tart.Document, tart.Row.Id.ToString(), new CourseId("main")), fromNow: false, Stop)).Meal;
        var part = Part(meal, "Leek tart");
        AngleSharp.Dom.IElement Renew() => part.FindAll("button").Single(button => button.TextContent.Contains("new version", StringComparison.Ordinal));
        await part.Find("button").ClickAsync(new());
        await dishes.KeepAsync(tart, LeekTart.Json.Replace("Leek tart", "Hers", StringComparison.Ordinal), null, Stop);

        await Renew().ClickAsync(new());

        Assert.Contains("Somebody else changed this dish a moment ago.", part.Find("[role=alert]").TextContent, StringComparison.Ordinal);
        Assert.Contains("The library has Hers already.", part.Find("[role=status]").TextContent, StringComparison.Ordinal);
        await Renew().ClickAsync(new());
        Assert.Equal(3, Assert.Single(await dishes.AllAsync(Stop)).Row.Number);
    }
}
