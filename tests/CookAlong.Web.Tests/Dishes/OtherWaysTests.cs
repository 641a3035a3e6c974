using Bunit;
using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Web.Features.Dishes;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Features.Settings;
using CookAlong.Web.Tests.Meals;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;

namespace CookAlong.Web.Tests.Dishes;

/// <summary>A step of a dish may be done in one of several ways; all of them are edited.</summary>
public sealed class OtherWaysTests : BunitContext
{
    static readonly CancellationToken Stop = Xunit.TestContext.Current.CancellationToken;

    readonly HouseholdFile household = new();
    readonly FakeTimeProvider clock = new(new DateTimeOffset(2026, 12, 1, 12, 0, 0, TimeSpan.Zero));
    readonly DishBook book;

    public OtherWaysTests()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        book = new DishBook(household, clock);
        Services.AddSingleton(book).AddSingleton(new HouseholdRegion(household)).AddSingleton(new MealBook(household, clock)).AddSingleton<TimeProvider>(clock);
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        household.Dispose();
    }

    /// <summary>The tart's last step, opened: it bakes 35 min, or these.</summary>
    async Task<(IRenderedComponent<DishPage> Page, Guid Dish)> OpenAsync(string options = "")
    {
        const string Last = "\"text\": \"Bake the tart\",";
        var json = LeekTart.Json.Replace(Last, options == "" ? Last : $"{Last} \"options\": [{options}],", StringComparison.Ordinal);
        var dish = Assert.IsType<DishEdit.Kept>(await book.AddAsync(json, Stop)).Dish.Row.Id;
        var page = Render<DishPage>(parameters => parameters.Add(one => one.DishId, dish));
        await page.WaitForStateAsync(() => page.FindAll("h1").Count > 0);
        await page.FindAll(".headline")[^1].ClickAsync(new());
        return (page, dish);
    }

    async Task<Step> BakeAsync(Guid dish) => (await book.OpenAsync(dish, Stop))!.Dish.Steps[^1];

    static Task PressAsync(IRenderedComponent<DishPage> page, string name) =>
        page.FindAll("button").First(button => (button.GetAttribute("aria-label") ?? button.TextContent.Trim()) == name).ClickAsync(new());

    static AngleSharp.Dom.IElement Field(IRenderedComponent<DishPage> page, int way, string label) =>
        page.Find($"[aria-label='Other way {way}']").QuerySelectorAll("label").First(one => one.TextContent.Trim().StartsWith(label, StringComparison.Ordinal)).QuerySelector("input, select")!;

    [Fact]
    public async Task Another_way_begins_as_the_step_is_written_and_is_changed_by_itself()
    {
        var (page, dish) = await OpenAsync();
        await PressAsync(page, "Add another way");
        await Field(page, 1, "Takes").ChangeAsync(new() { Value = "50-60 min" });
        await Field(page, 1, "Oven °C").ChangeAsync(new() { Value = "150" });
        await Field(page, 1, "Hands").ChangeAsync(new() { Value = nameof(Attention.Nearby) });

        var bake = await BakeAsync(dish);
        Assert.Equal((new Durations(30, 35, 45), new CelsiusRange(170, 180, 190), Attention.Unattended), (bake.Way.Minutes, bake.Way.Uses.Oven!.Celsius, bake.Way.Attention));
        var other = Assert.Single(bake.Options);
        Assert.Equal((new Durations(50, 55, 60), new CelsiusRange(140, 150, 160), Attention.Nearby), (other.Minutes, other.Uses.Oven!.Celsius, other.Attention));
    }

    [Fact]
    public async Task What_another_way_uses_is_changed_and_undone()
    {
        var (page, dish) = await OpenAsync("""{ "minutes": 20 }""");
        await Field(page, 1, "Oven").ChangeAsync(new() { Value = false });
        await Field(page, 1, "Rings").ChangeAsync(new() { Value = "2" });
        await Field(page, 1, "Appliances").ChangeAsync(new() { Value = "Steam basket" });

        var uses = Assert.Single((await BakeAsync(dish)).Options).Uses;
        Assert.Equal((null, 2, "steam-basket"), (uses.Oven, uses.Rings, Assert.Single(uses.Appliances).Value));
        Assert.NotNull((await BakeAsync(dish)).Way.Uses.Oven);

        for (var taps = 0; taps < 3; taps++)
        {
            await PressAsync(page, "Undo");
        }

        Assert.NotNull(Assert.Single((await BakeAsync(dish)).Options).Uses.Oven);
    }

    [Fact]
    public async Task A_way_is_taken_away_and_the_others_keep_what_only_their_cook_knows()
    {
        var (page, dish) = await OpenAsync("""{ "minutes": 20 }, { "minutes": 25, "uncle": "Ivo's" }""");
        await PressAsync(page, "Without this way: other way 1");

        Assert.Equal(25, Assert.Single((await BakeAsync(dish)).Options).Minutes.Likely);
        Assert.Contains("Ivo's", (await book.OpenAsync(dish, Stop))!.Version.Document, StringComparison.Ordinal);

        await PressAsync(page, "Without this way: other way 1");
        Assert.Empty((await BakeAsync(dish)).Options);
        Assert.Empty(page.FindAll("[aria-label='Other way 1']"));
    }

    [Fact]
    public async Task A_way_that_cannot_be_is_named_and_nothing_is_changed()
    {
        var (page, dish) = await OpenAsync("""{ "minutes": 20 }""");
        await Field(page, 1, "Shelves").ChangeAsync(new() { Value = "70" });
        Assert.Contains("Step 4, Bake the tart, other way 1: ", page.Find(".trouble").TextContent, StringComparison.Ordinal);
        Assert.Equal(1, Assert.Single((await BakeAsync(dish)).Options).Uses.Oven!.Shelves);
    }
}
