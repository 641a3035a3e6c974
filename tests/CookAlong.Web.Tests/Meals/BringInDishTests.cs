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
        var clock = new FakeTimeProvider();
        var (meals, region) = (new MealBook(household, clock), new HouseholdRegion(household));
        await region.ChooseAsync(chosen, Stop);
        Services.AddSingleton(meals).AddSingleton(region).AddSingleton(new DishBook(household, clock));
        ComponentFactories.AddStub<RecipeSource>();
        var meal = ((MealEdit.Kept)await meals.AddAsync(MealFile.Write(AlderLane.Meal), fromNow: false, Stop)).Meal.Row.Id;
        var page = Render<BringInDish>(parameters => parameters.Add(one => one.MealId, meal));
        await page.WaitForStateAsync(() => page.HasComponent<Bunit.TestDoubles.Stub<RecipeSource>>());

        await page.InvokeAsync(() => page.FindComponent<Bunit.TestDoubles.Stub<RecipeSource>>().Instance.Parameters.Get(source => source.Taken).InvokeAsync("Sweet\n\nIngredients\n1 cup plus 2 tbsp sugar\n\nMethod\nStir for 5 minutes."));

        Assert.Contains(read, page.Markup, StringComparison.Ordinal);
    }
}
