using Bunit;
using CookAlong.Web.Features.Dishes;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Features.Settings;
using CookAlong.Web.Tests.Meals;
using CookAlong.Web.Tests.Plans;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;

namespace CookAlong.Web.Tests.Dishes;

public sealed class DishPageTests : BunitContext
{
    static readonly CancellationToken Stop = Xunit.TestContext.Current.CancellationToken;

    readonly HouseholdFile household = new();
    readonly FakeTimeProvider clock = new(new DateTimeOffset(2026, 12, 1, 12, 0, 0, TimeSpan.Zero));
    readonly DishBook book;

    public DishPageTests()
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

    async Task<(IRenderedComponent<DishPage> Page, Guid Dish)> OpenAsync()
    {
        var dish = ((DishEdit.Kept)await book.AddAsync(LeekTart.Json, Stop)).Dish.Row.Id;
        var page = Render<DishPage>(parameters => parameters.Add(one => one.DishId, dish));
        await page.WaitForStateAsync(() => page.FindAll("h1").Count > 0);
        return (page, dish);
    }

    [Fact]
    public async Task What_may_be_taken_instead_is_written_beside_its_ingredient()
    {
        var (page, dish) = await OpenAsync();
        async Task<IEnumerable<string>> InsteadAsync() => (await book.OpenAsync(dish, Stop))!.Dish.Ingredients[0].Alternatives;
        AngleSharp.Dom.IElement Field() => page.FindAll("label").First(label => label.TextContent.Trim() == "Or instead").QuerySelector("input")!;

        await Field().ChangeAsync(new() { Value = "spring onions, shallots" });
        Assert.Equal(["spring onions", "shallots"], await InsteadAsync());

        await Field().ChangeAsync(new() { Value = "" });
        Assert.Empty(await InsteadAsync());
    }

    static IEnumerable<string> Steps(IRenderedComponent<DishPage> page) => page.FindAll(".headline .text").Select(text => text.TextContent.Trim()[2..]);

    static AngleSharp.Dom.IElement Button(IRenderedComponent<DishPage> page, string name) =>
        page.FindAll("button").First(button => (button.GetAttribute("aria-label") ?? button.TextContent.Trim()) == name);

    static AngleSharp.Dom.IElement Field(IRenderedComponent<DishPage> page, string label) =>
        page.FindAll("label").First(one => one.TextContent.Trim().StartsWith(label, StringComparison.Ordinal)).QuerySelector("input, select")!;

    async Task<string> KeptAsync(Guid dish) => (await book.OpenAsync(dish, Stop))!.Version.Document;

    [Fact]
    public async Task A_step_goes_down_by_its_button_and_comes_back_by_undo()
    {
        var (page, dish) = await OpenAsync();

        await Button(page, "Down: Slice the leeks").ClickAsync(new());
        Assert.Equal(["Sweat the leeks", "Slice the leeks", "Line the tin", "Bake the tart"], Steps(page));
        Assert.Equal("Sweat the leeks", (await book.OpenAsync(dish, Stop))!.Dish.Steps[0].Text);

        await Button(page, "Undo").ClickAsync(new());
        Assert.Equal(["Slice the leeks", "Sweat the leeks", "Line the tin", "Bake the tart"], Steps(page));

        await Button(page, "Redo").ClickAsync(new());
        Assert.Equal("Sweat the leeks", (await book.OpenAsync(dish, Stop))!.Dish.Steps[0].Text);
    }

    [Fact]
    public async Task A_step_is_dragged_to_another_place()
    {
        var (page, _) = await OpenAsync();

        await page.FindAll(".handle")[2].TriggerEventAsync("ondragstart", new Microsoft.AspNetCore.Components.Web.DragEventArgs());
        await page.FindAll(".steps > li")[0].TriggerEventAsync("ondrop", new Microsoft.AspNetCore.Components.Web.DragEventArgs());

        Assert.Equal(["Line the tin", "Slice the leeks", "Sweat the leeks", "Bake the tart"], Steps(page));
    }

    [Fact]
    public async Task A_time_is_typed_as_a_cook_says_it_and_kept_at_once()
    {
        var (page, dish) = await OpenAsync();
        await page.FindAll(".headline")[0].ClickAsync(new());

        await Field(page, "Takes").ChangeAsync(new() { Value = "10-15 min" });

        Assert.Equal(new(10, 13, 15), (await book.OpenAsync(dish, Stop))!.Dish.Steps[0].Way.Minutes);
        Assert.Contains("Saved, 1 change so far", page.Find("[role=status]").TextContent, StringComparison.Ordinal);
        Assert.Equal(2, (await book.VersionsAsync(dish, Stop)).Count);
    }

    [Fact]
    public async Task What_is_no_time_stays_as_typed_with_what_to_do_and_changes_nothing()
    {
        var (page, dish) = await OpenAsync();
        await page.FindAll(".headline")[0].ClickAsync(new());

        await Field(page, "Takes").ChangeAsync(new() { Value = "a while" });

        Assert.Equal("a while", Field(page, "Takes").GetAttribute("value"));
        Assert.Contains("Write minutes, a span or hours", page.Find(".problem").TextContent, StringComparison.Ordinal);
        Assert.Equal(LeekTart.Json, await KeptAsync(dish));
    }

    [Fact]
    public async Task What_cannot_be_names_the_step_and_the_remedy_and_changes_nothing()
    {
        var (page, dish) = await OpenAsync();
        await page.FindAll(".headline")[1].ClickAsync(new());

        await Field(page, "Takes").ChangeAsync(new() { Value = "3" });

        Assert.Contains("Step 2, Sweat the leeks: Every 4 min never comes round in the step's 3 min. Choose a shorter time", page.Find(".trouble").TextContent, StringComparison.Ordinal);
        Assert.Equal(LeekTart.Json, await KeptAsync(dish));
    }

    [Fact]
    public async Task The_usual_holds_of_a_kind_are_taken_at_one_touch()
    {
        var (page, dish) = await OpenAsync();
        await Field(page, "Kind of food").ChangeAsync(new() { Value = "soup" });

        await Button(page, "Take the usual of a soup").ClickAsync(new());

        Assert.Equal(Intake.MealFiles.KindsOfFood.Of("soup")!.Holds, (await book.OpenAsync(dish, Stop))!.Dish.Holds);
    }

    [Fact]
    public async Task An_older_version_is_gone_back_to_and_nothing_is_lost_by_it()
    {
        var (page, dish) = await OpenAsync();
        await Field(page, "Name").ChangeAsync(new() { Value = "Onion tart" });

        await Button(page, "Go back to this one: version 1").ClickAsync(new());

        Assert.Equal("Leek tart", page.Find("h1").TextContent);
        string[] said = [await book.DocumentAsync(dish, 3, Stop), await book.DocumentAsync(dish, 2, Stop), await book.DocumentAsync(dish, 1, Stop)];
        Assert.Equal(["Leek tart", "Onion tart", "Leek tart"], said.Select(document => Intake.MealFiles.DishFile.Read(document).Dish!.Name));
        Assert.Equal([3, 2, 1], (await book.VersionsAsync(dish, Stop)).Select(version => version.Number));
    }

    [Fact]
    public async Task A_version_s_time_is_the_kitchens_and_not_the_servers()
    {
        var (page, _) = await OpenAsync();
        Assert.Equal("1 Dec 2026 12:00 UTC", page.Find(".versions .clock").TextContent);

        var meal = AlderLane.Meal with { TimeZone = TimeZoneInfo.FindSystemTimeZoneById("Pacific/Auckland") };
        Assert.IsType<MealEdit.Kept>(await new MealBook(household, clock).AddAsync(Intake.MealFiles.MealFile.Write(meal), fromNow: false, Stop));
        var (there, _) = await OpenAsync();
        // Summer time in the south: UTC + 13 h.
        Assert.Equal("2 Dec 2026 01:00", there.Find(".versions .clock").TextContent);
    }

    [Fact]
    public async Task Made_ahead_a_dish_may_wait_before_its_next_step()
    {
        var (page, dish) = await OpenAsync();

        await Button(page, "Say so").ClickAsync(new());

        Assert.Equal(new Domain.Meals.After(new("slice"), 0, 1440), Assert.Single((await book.OpenAsync(dish, Stop))!.Dish.Steps[1].After));
    }

    [Fact]
    public async Task Undo_tapped_twice_before_the_page_could_say_that_nothing_is_left_undoes_once()
    {
        var (page, dish) = await OpenAsync();
        await Field(page, "Name").ChangeAsync(new() { Value = "Onion tart" });

        // As the browser sends it: the second tap of the same button, before the first has greyed it out.
        var undo = Button(page, "Undo");
        await page.InvokeAsync(() => Task.WhenAll(undo.ClickAsync(new()), undo.ClickAsync(new())));

        Assert.Equal("Leek tart", (await book.OpenAsync(dish, Stop))!.Row.Name);
    }

    [Fact]
    public async Task What_waits_is_still_made_after_its_step_was_left_out()
    {
        var (page, dish) = await OpenAsync();
        await Field(page, "It can be made ahead").ChangeAsync(new() { Value = "2" });
        await page.FindAll(".headline")[2].ClickAsync(new());
        await Button(page, "Leave this step out").ClickAsync(new());

        await Button(page, "Say so").ClickAsync(new());

        Assert.Equal(new Domain.Meals.After(new("sweat"), 0, 1440), Assert.Single((await book.OpenAsync(dish, Stop))!.Dish.Steps[2].After));
    }

    [Fact]
    public async Task A_dish_of_one_step_has_no_others_to_wait_for()
    {
        var dish = ((DishEdit.Kept)await book.AddAsync(Intake.MealFiles.DishDocument.New("A new dish").Text, Stop)).Dish.Row.Id;
        var page = Render<DishPage>(parameters => parameters.Add(one => one.DishId, dish));
        await page.WaitForStateAsync(() => page.FindAll("h1").Count > 0);
        await page.Find(".headline").ClickAsync(new());

        Assert.Equal(["first, it waits for nothing"], Field(page, "It begins").QuerySelectorAll("option").Select(option => option.TextContent));
    }

    [Theory]
    [InlineData(Domain.FoodSafety.Region.UnitedKingdom, "must be in the fridge within 1 to 2 h of leaving the heat (rice: 1 h)")]
    [InlineData(Domain.FoodSafety.Region.UnitedStates, "must be in the fridge within 2 h of leaving the heat;")]
    [InlineData(Domain.FoodSafety.Region.Canada, "No limit of Health Canada is held here")]
    public async Task How_soon_what_waits_is_cold_is_said_by_the_households_authority(Domain.FoodSafety.Region chosen, string says)
    {
        await new HouseholdRegion(household).ChooseAsync(chosen, Stop);
        var (page, _) = await OpenAsync();
        page.WaitForAssertion(() => Assert.Contains(says, page.Find("section[aria-labelledby=ahead-title]").TextContent, StringComparison.Ordinal));
    }
}
