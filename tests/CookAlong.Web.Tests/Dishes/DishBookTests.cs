using CookAlong.Domain;
using CookAlong.Intake.MealFiles;
using CookAlong.Web.Features.Dishes;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Tests.Meals;
using CookAlong.Web.Tests.Plans;
using Microsoft.Extensions.Time.Testing;

namespace CookAlong.Web.Tests.Dishes;

public sealed class DishBookTests : IDisposable
{
    static readonly CancellationToken Stop = TestContext.Current.CancellationToken;

    readonly HouseholdFile household = new();
    readonly FakeTimeProvider clock = new(new DateTimeOffset(2026, 12, 1, 12, 0, 0, TimeSpan.Zero));

    DishBook Book => new(household, clock);

    public void Dispose() => household.Dispose();

    async Task<KeptDish> AddedAsync() => Kept(await Book.AddAsync(LeekTart.Json, Stop));

    static KeptDish Kept(DishEdit edit) => Assert.IsType<DishEdit.Kept>(edit).Dish;

    static string Renamed(KeptDish dish, string name)
    {
        var document = dish.Document;
        document.Rename(name);
        return document.Text;
    }

    [Fact]
    public async Task A_dish_comes_out_as_it_went_in_unknown_fields_and_all()
    {
        var dish = await AddedAsync();

        Assert.Equal(LeekTart.Json, (await Book.OpenAsync(dish.Row.Id, Stop))!.Version.Document);
    }

    [Fact]
    public async Task Nothing_is_kept_of_what_is_no_dish()
    {
        Assert.IsType<DishEdit.Refused>(await Book.AddAsync("""{ "name": "Empty" }""", Stop));

        Assert.Empty(await Book.AllAsync(Stop));
    }

    [Fact]
    public async Task One_sitting_is_one_version_and_what_was_before_stays()
    {
        var dish = await AddedAsync();

        var first = Kept(await Book.KeepAsync(dish, Renamed(dish, "Tart"), null, Stop));
        var second = Kept(await Book.KeepAsync(first, Renamed(first, "Tart of leeks"), first.Row.Number, Stop));

        Assert.Equal("Tart of leeks", second.Row.Name);
        Assert.Equal([2, 1], (await Book.VersionsAsync(dish.Row.Id, Stop)).Select(version => version.Number));
        Assert.Equal(LeekTart.Json, await Book.DocumentAsync(dish.Row.Id, 1, Stop));
    }

    [Fact]
    public async Task Two_who_edit_at_once_do_not_overwrite_each_other()
    {
        var dish = await AddedAsync();
        await Book.KeepAsync(dish, Renamed(dish, "Hers"), null, Stop);

        Assert.IsType<DishEdit.Outdated>(await Book.KeepAsync(dish, Renamed(dish, "Mine"), null, Stop));

        Assert.Equal("Hers", (await Book.OpenAsync(dish.Row.Id, Stop))!.Row.Name);
        Assert.Equal(2, (await Book.VersionsAsync(dish.Row.Id, Stop)).Count);
    }

    [Fact]
    public async Task An_edit_that_makes_no_dish_changes_nothing()
    {
        var dish = await AddedAsync();

        var refused = Assert.IsType<DishEdit.Refused>(await Book.KeepAsync(dish, Renamed(dish, " "), null, Stop));

        Assert.Equal("/name", Assert.Single(refused.Errors).Place);
        Assert.Equal("Leek tart", (await Book.OpenAsync(dish.Row.Id, Stop))!.Row.Name);
    }

    [Fact]
    public async Task A_copy_is_a_dish_of_its_own()
    {
        var dish = await AddedAsync();

        var copy = Kept(await Book.CopyAsync(dish, Stop));

        Assert.NotEqual(dish.Row.Id, copy.Row.Id);
        Assert.Equal("Leek tart, copy", copy.Row.Name);
        Assert.Equal(2, (await Book.AllAsync(Stop)).Count);
    }

    [Fact]
    public async Task A_deleted_dish_can_be_brought_back_with_all_its_versions()
    {
        var dish = await AddedAsync();
        await Book.KeepAsync(dish, Renamed(dish, "Tart"), null, Stop);

        await Book.DeleteAsync(dish.Row.Id, Stop);
        Assert.Null(await Book.OpenAsync(dish.Row.Id, Stop));
        await Book.BringBackAsync(dish.Row.Id, Stop);

        Assert.Equal("Tart", (await Book.OpenAsync(dish.Row.Id, Stop))!.Row.Name);
        Assert.Equal(2, (await Book.VersionsAsync(dish.Row.Id, Stop)).Count);
    }

    [Fact]
    public async Task A_dish_knows_the_meals_it_is_used_in()
    {
        var dish = await AddedAsync();
        var meals = new MealBook(household, clock);
        var meal = Assert.IsType<MealEdit.Kept>(await meals.AddAsync(MealFile.Write(AlderLane.Meal), fromNow: false, Stop)).Meal;

        await meals.EditAsync(meal, document => document.Add(dish.Document, dish.Row.Id.ToString(), new CourseId("main")), fromNow: false, Stop);

        Assert.Equal((meal.Row.Id, "Midwinter lunch"), Assert.Single((await Book.UsedInAsync(Stop))[dish.Row.Id]));
        Assert.Equal((meal.Row.Id, "Midwinter lunch"), Assert.Single(await Book.UsedInAsync(dish.Row.Id, Stop)));
        Assert.Empty(await Book.UsedInAsync(meal.Row.Id, Stop));
    }

    [Theory]
    [InlineData("leek", true)]
    [InlineData("TART egg", true)]
    [InlineData("harvest", true)]
    [InlineData("tart goose", false)]
    [InlineData("", true)]
    public async Task A_dish_is_found_by_words_of_its_name_feast_and_ingredients(string words, bool isFound) =>
        Assert.Equal(isFound, DishWords.IsFound(await AddedAsync(), words));

    [Fact]
    public async Task What_a_dish_contains_is_read_from_its_ingredients_names_too() =>
        Assert.Equal("celery, egg, milk", DishWords.Contains((await AddedWithAsync("butter", "celeriac")).Dish));

    [Fact]
    public async Task What_stands_among_its_allergens_and_in_its_name_is_told_once() =>
        Assert.Equal("Peanuts", DishWords.Contains((await AddedAsync()).Dish with { Ingredients = [new("peanuts", null, null, null, ["Peanuts"])] }));

    [Fact]
    public async Task A_label_never_says_that_there_is_nothing_else_in_it()
    {
        var dish = (await AddedAsync()).Dish;
        Assert.Equal("Contains peanut. Anything else: ask the cook", DishWords.Label(dish with { Ingredients = [new("satay", null, null, null, [])] }));
        Assert.Equal("Allergens: ask the cook", DishWords.Label(dish with { Ingredients = [] }));
    }

    async Task<KeptDish> AddedWithAsync(params string[] more)
    {
        var document = System.Text.Json.Nodes.JsonNode.Parse(LeekTart.Json)!;
        foreach (var name in more)
        {
            document["ingredients"]!.AsArray().Add(new System.Text.Json.Nodes.JsonObject { ["name"] = name });
        }

        return Kept(await Book.AddAsync(document.ToJsonString(), Stop));
    }
}
