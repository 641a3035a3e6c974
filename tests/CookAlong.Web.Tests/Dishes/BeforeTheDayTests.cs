using AngleSharp.Dom;
using Bunit;
using CookAlong.Domain;
using CookAlong.Domain.FoodSafety;
using CookAlong.Domain.Meals;
using CookAlong.Web.Features.Dishes;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Features.Settings;
using CookAlong.Web.Tests.Meals;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;

namespace CookAlong.Web.Tests.Dishes;

public sealed class BeforeTheDayTests : BunitContext
{
    /// <summary>A step that may begin any time stands between; it has nothing to wait for.</summary>
    const string Bird = """
        {
          "id": "bird", "name": "Feast bird", "serves": 10, "ingredients": [{ "name": "turkey", "quantity": 5, "unit": "kg" }],
          "steps": [
            { "id": "salt", "text": "Salt the bird", "minutes": 10 },
            { "id": "chop", "text": "Chop the onions", "minutes": 5, "after": [] },
            { "id": "roast", "text": "Roast the bird", "minutes": 180, "attention": "unattended", "uses": [{ "oven": { "celsius": { "min": 155, "max": 170 } } }],
              "after": [{ "step": "salt" }, { "step": "chop" }] }
          ]
        }
        """;

    static readonly CancellationToken Stop = Xunit.TestContext.Current.CancellationToken;

    readonly HouseholdFile household = new();
    readonly FakeTimeProvider clock = new(new DateTimeOffset(2026, 12, 1, 12, 0, 0, TimeSpan.Zero));
    readonly DishBook book;
    readonly HouseholdRegion region;

    public BeforeTheDayTests()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        (book, region) = (new DishBook(household, clock), new HouseholdRegion(household));
        Services.AddSingleton(book).AddSingleton(region).AddSingleton(new MealBook(household, clock)).AddSingleton<TimeProvider>(clock);
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        household.Dispose();
    }

    async Task<(IRenderedComponent<DishPage> Page, Func<Task<Dish>> Dish)> OpenAsync(Region chosen)
    {
        await region.ChooseAsync(chosen, Stop);
        var dish = ((DishEdit.Kept)await book.AddAsync(Bird, Stop)).Dish.Row.Id;
        var page = Render<DishPage>(parameters => parameters.Add(one => one.DishId, dish));
        await page.WaitForStateAsync(() => page.FindAll(".before .thaw").Count > 0 || page.FindAll(".before .quiet").Count > 5);
        return (page, async () => (await book.OpenAsync(dish, Stop))!.Dish);
    }

    static IElement Button(IRenderedComponent<DishPage> page, string name) => page.FindAll(".before button").Single(button => button.TextContent == name);

    static IElement Field(IRenderedComponent<DishPage> page, string label) =>
        page.FindAll(".before label").First(one => one.TextContent.Trim().StartsWith(label, StringComparison.Ordinal)).QuerySelector("input, select")!;

    [Fact]
    public async Task Thawing_in_the_fridge_comes_first_takes_the_longest_time_printed_and_keeps_a_day()
    {
        var (page, dish) = await OpenAsync(Region.UnitedKingdom);

        await Button(page, "Thaw it in the fridge").ClickAsync(new());

        var steps = (await dish()).Steps;
        Assert.Equal(["Move it from the freezer to the fridge", "Thaw it in the fridge", "Salt the bird", "Chop the onions", "Roast the bird"], steps.Select(step => step.Text));
        // UK Food Standards Agency: 10 to 12 hours a kilogram; the bird has 5 kg.
        Assert.Equal((new Durations(3000, 3600, 3600), Attention.Unattended), (steps[1].Way.Minutes, steps[1].Way.Attention));
        Assert.Equal([new After(steps[1].Id, 0, 1440)], steps[2].After);
        Assert.Empty(steps[3].After);
        Assert.Contains("UK Food Standards Agency", steps[1].How, StringComparison.Ordinal);
        Assert.Empty(steps[1].Way.Uses.Appliances);
        Assert.Contains("2 steps put in", page.Find(".before [role=status]").TextContent, StringComparison.Ordinal);

        await page.FindAll("button").First(button => button.TextContent.Trim() == "Undo").ClickAsync(new());
        Assert.Equal(3, (await dish()).Steps.Length);
    }

    [Fact]
    public async Task Cold_water_is_changed_every_half_hour_and_what_thawed_in_it_is_cooked_at_once()
    {
        var (page, dish) = await OpenAsync(Region.UnitedStates);

        await Button(page, "Thaw it in cold water").ClickAsync(new());

        var steps = (await dish()).Steps;
        // USDA FSIS: 8 to 12 lb, 4 to 6 hours in cold water, changed every 30 minutes.
        Assert.Equal(new Durations(240, 360, 360), steps[1].Way.Minutes);
        Assert.Equal(("Change the water", 30), (steps[1].Tends[0].Text, steps[1].Tends[0].Every));
        Assert.Equal(30, steps[2].After[0].Most);
    }

    [Fact]
    public async Task Where_the_authority_prints_no_time_the_page_says_so_and_offers_none()
    {
        var (page, _) = await OpenAsync(Region.UnitedKingdom);
        Assert.DoesNotContain(page.FindAll(".before button"), button => button.TextContent == "Thaw it in cold water");
        Assert.Contains("Thaw it in cold water: no time of the Food Standards Agency for such a weight is held here, and none is made up.", page.Find(".before").TextContent, StringComparison.Ordinal);
        var (north, _) = await OpenAsync(Region.Canada);
        Assert.Empty(north.FindAll(".before .thaw"));
    }

    [Fact]
    public async Task A_place_in_the_fridge_is_taken_where_places_are_counted()
    {
        var (page, dish) = await OpenAsync(Region.UnitedKingdom);
        await Field(page, "Count its place").ChangeAsync(new() { Value = true });

        await Button(page, "Thaw it in the fridge").ClickAsync(new());

        Assert.Equal([new ApplianceId("fridge")], (await dish()).Steps[1].Way.Uses.Appliances);
    }

    [Fact]
    public async Task A_brine_waits_for_what_its_step_waited_for_and_lasts_at_the_most_two_days()
    {
        var (page, dish) = await OpenAsync(Region.UnitedStates);
        await Field(page, "Before which step").ChangeAsync(new() { Value = "2" });

        await Button(page, "Brine it, overnight").ClickAsync(new());

        var steps = (await dish()).Steps;
        Assert.Equal(["Salt the bird", "Chop the onions", "Make the brine and lay it in", "Brine it in the fridge", "Roast the bird"], steps.Select(step => step.Text));
        Assert.Equal(["salt", "chop"], steps[2].After.Select(link => link.Step.Value));
        // USDA hotline: at least overnight, up to two days, 3/4 cup of salt to a gallon.
        var link = Assert.Single(steps[4].After);
        Assert.Equal((steps[3].Id, 2 * 1440), (link.Step, steps[3].Way.Minutes.Likely + link.Most));
        Assert.Contains("58 g of table salt a litre", steps[2].How, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Dough_proves_before_the_step_that_is_named()
    {
        var (page, dish) = await OpenAsync(Region.UnitedStates);
        await Field(page, "Before which step").ChangeAsync(new() { Value = "2" });

        await Button(page, "Let it prove, warm").ClickAsync(new());

        Assert.Equal("Let it prove in a warm place", (await dish()).Steps[2].Text);
    }

    [Fact]
    public async Task What_begins_more_than_three_days_before_is_told_what_to_do_in_its_meal()
    {
        var (page, _) = await OpenAsync(Region.UnitedStates);
        await Field(page, "Weight").ChangeAsync(new() { Value = "16 lb" });

        await Button(page, "Thaw it in the fridge").ClickAsync(new());

        // USDA FSIS: 14 to 18 lb, 84 to 108 hours in the fridge.
        Assert.Contains("a plan begins three days before at the earliest by itself. In a meal with it, set “Nothing before” to an earlier day.", page.Find(".before .caution").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_no_weight_stays_with_what_to_do()
    {
        var (page, _) = await OpenAsync(Region.UnitedStates);

        await Field(page, "Weight").ChangeAsync(new() { Value = "big" });

        Assert.Contains("“big” is no weight to thaw, 100 g to 25 kg.", page.Find(".before .problem").TextContent, StringComparison.Ordinal);
    }
}
