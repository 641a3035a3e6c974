using System.Globalization;
using Bunit;
using CookAlong.Domain.FoodSafety;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Tests.Runs;
using CookAlong.Intake.MealFiles;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Dishes;
using CookAlong.Web.Features.Leftovers;
using CookAlong.Web.Features.Live.Runs;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Features.Settings;
using CookAlong.Web.Tests.Meals;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;

namespace CookAlong.Web.Tests.Leftovers;

public sealed class LeftoversPageTests : BunitContext
{
    static readonly CancellationToken Stop = Xunit.TestContext.Current.CancellationToken;

    readonly HouseholdFile household = new();
    readonly FakeTimeProvider clock = new(SmallMeal.Clock(15, 30));
    readonly HouseholdRegion region;
    readonly MealBook meals;
    readonly DishBook library;
    readonly LeftoverBook book;
    readonly LiveRuns runs;

    public LeftoversPageTests()
    {
        (region, meals, library) = (new HouseholdRegion(household), new MealBook(household, clock), new DishBook(household, clock));
        // Nothing is cooked here, so no screen is told of anything.
        runs = new LiveRuns(new EventLog(household), screens: null!, new RunClocks(clock), new HouseSettings("", "", [], []), clock);
        book = new LeftoverBook(household, meals, region, runs);
        Services.AddSingleton<TimeProvider>(clock).AddSingleton(library).AddSingleton(book);
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        book.Dispose();
        runs.Dispose();
        household.Dispose();
    }

    /// <summary>The small lunch, its goose of 4 kg for eight, never cooked with a board: its table time was 15:00.</summary>
    async Task<IRenderedComponent<LeftoversPage>> OpenAsync(Region chosen)
    {
        var kept = await KeptAsync(chosen);
        return await OpenAsync(kept.Row.Id);
    }

    async Task<IRenderedComponent<LeftoversPage>> OpenAsync(Guid meal)
    {
        var page = Render<LeftoversPage>(parameters => parameters.Add(one => one.MealId, meal));
        await page.WaitForStateAsync(() => page.FindAll("h1").Count > 0);
        return page;
    }

    async Task<KeptMeal> KeptAsync(Region chosen)
    {
        await region.ChooseAsync(chosen, Stop);
        var goose = SmallMeal.Meal.Dishes[0] with { Name = "Roast goose", Serves = 8, Ingredients = [new Ingredient("goose", 4, "kg", null, [])] };
        var meal = SmallMeal.Meal with { Dishes = [goose, .. SmallMeal.Meal.Dishes.Skip(1)] };
        return ((MealEdit.Kept)await meals.AddAsync(MealFile.Write(meal), fromNow: false, Stop)).Meal;
    }

    static Task PressAsync(IRenderedComponent<LeftoversPage> page, string name) =>
        page.FindAll("button").First(button => (button.GetAttribute("aria-label") ?? button.TextContent.Trim()) == name).ClickAsync(new());

    /// <summary>The card of what is left of it.</summary>
    static AngleSharp.Dom.IElement Goose(IRenderedComponent<LeftoversPage> page) => page.FindAll(".dishes section").Single(section => section.QuerySelector("h2")!.TextContent.StartsWith("Roast goose", StringComparison.Ordinal));

    static string Count(IRenderedComponent<LeftoversPage> page) => page.FindAll(".portions").Select(one => one.GetAttribute("aria-label")!).Single(label => label.StartsWith("Roast goose", StringComparison.Ordinal));

    static string Time(IRenderedComponent<LeftoversPage> page, string what) =>
        Goose(page).QuerySelectorAll(".times > div").Single(one => one.QuerySelector("dt")!.TextContent == what).QuerySelector("dd")!.TextContent;

    [Fact]
    public async Task Portions_are_counted_by_buttons_and_bring_the_times_of_the_households_region()
    {
        var page = await OpenAsync(Region.UnitedKingdom);
        Assert.Empty(page.FindAll(".dishes section"));

        await PressAsync(page, "One portion more of Roast goose");
        await PressAsync(page, "One portion more of Roast goose");

        Assert.Equal("Roast goose: 2 portions left", Count(page));
        // UK Food Standards Agency, home advice: in the fridge within 1 to 2 h, eaten within 2 days; frozen, within 3 months (of 30 days).
        Assert.Equal("16:00 today", Time(page, "In the fridge by"));
        Assert.Equal("Tuesday 22 December, 15:00", Time(page, "Eat by"));
        Assert.Equal("Saturday 20 March", Time(page, "Frozen, at its best until"));
        await PressAsync(page, "One portion less of Roast goose");
        Assert.Equal("Roast goose: 1 portion left", Count(page));
    }

    [Fact]
    public async Task Another_region_has_other_times_and_one_without_limits_says_so()
    {
        var page = await OpenAsync(Region.UnitedStates);
        await PressAsync(page, "One portion more of Roast goose");
        // US Cold Food Storage Chart: cooked poultry 3 to 4 days; the shorter counts.
        Assert.Equal("Wednesday 23 December, 15:00", Time(page, "Eat by"));

        var north = await OpenAsync(Region.Canada);
        await PressAsync(north, "One portion more of Roast goose");
        Assert.Contains("No limit of Health Canada is held here", Goose(north).TextContent, StringComparison.Ordinal);
        Assert.Empty(Goose(north).QuerySelectorAll(".times"));
    }

    [Fact]
    public async Task What_it_holds_is_guessed_and_corrected_and_the_strictest_counts()
    {
        var page = await OpenAsync(Region.UnitedKingdom);
        await PressAsync(page, "One portion more of Roast goose");
        Assert.Equal("true", Goose(page).QuerySelector(".kind")!.GetAttribute("aria-pressed"));

        await PressAsync(page, "Rice");

        // UK home advice: cooked rice is cooled within the hour (from memory) and eaten within a day.
        Assert.Equal("16:00 today", Time(page, "In the fridge by"));
        Assert.Equal("Monday 21 December, 15:00", Time(page, "Eat by"));
    }

    [Fact]
    public async Task When_it_left_the_heat_is_moved_and_a_time_that_is_past_is_said_loudly()
    {
        var page = await OpenAsync(Region.UnitedKingdom);
        await PressAsync(page, "One portion more of Roast goose");
        Assert.Contains("taken from its table time", Goose(page).TextContent, StringComparison.Ordinal);

        await PressAsync(page, "15 min earlier: Roast goose");
        Assert.Equal("15:45 today", Time(page, "In the fridge by"));
        Assert.Contains("as you said", Goose(page).TextContent, StringComparison.Ordinal);

        clock.SetUtcNow(SmallMeal.Clock(17));
        await PressAsync(page, "15 min earlier: Roast goose");
        Assert.Contains("It was to be in the fridge by 15:30 today. What has stood out since then is thrown out.", Goose(page).QuerySelector("[role=alert]")!.TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Region.UnitedKingdom)]
    [InlineData(Region.UnitedStates)]
    public async Task A_whole_wrapped_roast_never_cools_in_time_and_pieces_do(Region chosen)
    {
        // J. Food Prot. 69(1), 2006: whole wrapped turkey roasts took 6.2 h from 57 to 21 °C; the Food Code allows 2.
        var page = await OpenAsync(chosen);
        foreach (var _ in Enumerable.Range(0, 6))
        {
            await PressAsync(page, "One portion more of Roast goose");
        }

        var ways = Goose(page).QuerySelectorAll(".ways li").Select(way => way.TextContent).ToList();
        Assert.StartsWith("In one piece of 3 kg, wrapped: its middle falls from 57 to 21 °C in about ", ways[0], StringComparison.Ordinal);
        Assert.InRange(int.Parse(ways[0].Split("about ")[1].Split(' ')[0], CultureInfo.InvariantCulture), 6, 12);
        Assert.EndsWith(" Too slow.", ways[0], StringComparison.Ordinal);
        Assert.DoesNotContain("Too slow", ways[1], StringComparison.Ordinal);
    }

    [Theory]
    // UK home advice: rice is cool within the hour (from memory), everything else within 1 to 2 h; the Food Code allows 2 from 57 to 21 °C.
    [InlineData(Region.UnitedKingdom, "Rice", "1 cm")]
    [InlineData(Region.UnitedKingdom, "Soup or stew", "2 cm")]
    [InlineData(Region.UnitedStates, "Rice", "2 cm")]
    public async Task A_full_pot_cools_too_slowly_and_a_layer_thin_enough_in_time(Region chosen, string kind, string deep)
    {
        var page = await OpenAsync(chosen);
        await PressAsync(page, "One portion more of Roast goose");

        await PressAsync(page, kind);

        var ways = Goose(page).QuerySelectorAll(".ways li").Select(way => way.TextContent).ToList();
        Assert.StartsWith("In its full pot", ways[0], StringComparison.Ordinal);
        Assert.EndsWith("Too slow.", ways[0], StringComparison.Ordinal);
        Assert.StartsWith($"Spread {deep} deep", ways[1], StringComparison.Ordinal);
        Assert.DoesNotContain("Too slow", ways[1], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Dishes_of_the_library_that_take_the_same_are_offered()
    {
        await library.AddAsync("""{"id": "d", "name": "Goose and barley broth", "ingredients": [{"name": "cooked goose"}], "steps": [{"id": "s", "text": "Simmer", "minutes": 40}]}""", Stop);
        await library.AddAsync("""{"id": "d", "name": "Plum crumble", "ingredients": [{"name": "plums"}], "steps": [{"id": "s", "text": "Bake", "minutes": 40}]}""", Stop);
        var page = await OpenAsync(Region.UnitedKingdom);
        await PressAsync(page, "One portion more of Roast goose");
        var link = Assert.Single(Goose(page).QuerySelectorAll("a"));
        Assert.Equal("Goose and barley broth", link.TextContent);
    }

    [Fact]
    public async Task Just_now_is_when_it_is_tapped_and_not_when_the_page_was_opened()
    {
        var page = await OpenAsync(Region.UnitedKingdom);
        await PressAsync(page, "One portion more of Roast goose");
        clock.SetUtcNow(SmallMeal.Clock(15, 50));
        await PressAsync(page, "Just now: Roast goose");
        Assert.Equal("16:50 today", Time(page, "In the fridge by"));
    }

    [Fact]
    public async Task A_time_that_passes_while_the_page_lies_open_is_said_by_itself()
    {
        var page = await OpenAsync(Region.UnitedKingdom);
        await PressAsync(page, "One portion more of Roast goose");
        Assert.Empty(page.FindAll("[role=alert]"));
        clock.Advance(TimeSpan.FromMinutes(31));
        page.WaitForAssertion(() => Assert.Contains("It was to be in the fridge by 16:00 today.", Goose(page).QuerySelector("[role=alert]")!.TextContent, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Kinds_are_stored_as_they_always_were()
    {
        // The list only ever grows.
        string[] frozen = ["EggDish", "Gravy", "Ham", "MeatPoultryOrFish", "Pasta", "Rice", "Salad", "SoupOrStew", "Stuffing", "Vegetables"];
        var kept = await KeptAsync(Region.UnitedKingdom);
        foreach (var kind in Enum.GetValues<LeftoverKind>())
        {
            await book.SwitchKindAsync(kept.Row.Id, kept.Meal.Dishes[0].Id, kind, isHeld: true, Stop);
        }

        await using var db = household.CreateDbContext();
        Assert.Equal(frozen, (await db.Set<LeftoverRow>().SingleAsync(Stop)).Kinds!.Split(',').Order());
    }

    [Fact]
    public async Task Two_who_say_what_it_holds_at_once_are_both_heard()
    {
        var kept = await KeptAsync(Region.UnitedKingdom);
        var hers = await OpenAsync(kept.Row.Id);
        await PressAsync(hers, "One portion more of Roast goose");
        var his = await OpenAsync(kept.Row.Id);
        await PressAsync(hers, "Rice");
        await PressAsync(his, "Soup or stew");
        Assert.Equal(
            [LeftoverKind.MeatPoultryOrFish, LeftoverKind.Rice, LeftoverKind.SoupOrStew],
            (await book.OfAsync(kept.Row.Id, Stop))!.Dishes[0].Kinds);
    }

    [Fact]
    public async Task A_meal_that_was_deleted_meanwhile_is_told_to_whoever_counts_on()
    {
        var kept = await KeptAsync(Region.UnitedKingdom);
        var page = await OpenAsync(kept.Row.Id);
        await meals.DeleteAsync(kept.Row.Id, Stop);
        await PressAsync(page, "One portion more of Roast goose");
        Assert.Equal("This meal is not here", page.Find("h1").TextContent);
    }
}
