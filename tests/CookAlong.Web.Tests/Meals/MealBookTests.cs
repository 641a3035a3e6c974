using CookAlong.Intake.MealFiles;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Tests.Plans;
using Microsoft.Extensions.Time.Testing;

namespace CookAlong.Web.Tests.Meals;

public sealed class MealBookTests : IDisposable
{
    static readonly CancellationToken Stop = TestContext.Current.CancellationToken;

    readonly HouseholdFile household = new();
    readonly FakeTimeProvider clock = new(new DateTimeOffset(2026, 12, 1, 12, 0, 0, TimeSpan.Zero));

    MealBook Book => new(household, clock);

    public void Dispose() => household.Dispose();

    async Task<KeptMeal> AddedAsync(string? file = null) =>
        Assert.IsType<MealEdit.Kept>(await Book.AddAsync(file ?? MealFile.Write(AlderLane.Meal), fromNow: false, Stop)).Meal;

    [Fact]
    public async Task A_meal_comes_out_as_it_went_in()
    {
        var file = "{ \"ourNote\": \"aunt Sigrun sits by the door\"," + MealFile.Write(AlderLane.Meal).TrimStart()[1..];

        var meal = await AddedAsync(file);

        Assert.Equal(file, (await Book.OpenAsync(meal.Row.Id, Stop))!.Row.Document);
    }

    [Fact]
    public async Task Nothing_is_kept_of_a_file_with_errors()
    {
        var refused = Assert.IsType<MealEdit.Refused>(await Book.AddAsync("{ \"format\": \"cookalong-meal/1\" }", fromNow: false, Stop));

        Assert.NotEmpty(refused.Errors);
        Assert.Empty(await Book.AllAsync(Stop));
    }

    [Fact]
    public async Task An_edit_is_kept_at_once_and_counted()
    {
        var meal = await AddedAsync();

        var edited = await Book.EditAsync(meal, document => document.Serve(new("main"), AlderLane.At("15:30")), fromNow: true, Stop);

        var kept = Assert.IsType<MealEdit.Kept>(edited).Meal;
        Assert.Equal(AlderLane.At("15:30"), kept.Meal.FirstTableTime);
        Assert.Equal(2, kept.Row.Version);
    }

    [Fact]
    public async Task An_edit_made_on_an_older_version_is_refused_and_changes_nothing()
    {
        var meal = await AddedAsync();
        await Book.EditAsync(meal, document => document.Rename("Lunch of the others"), fromNow: false, Stop);

        var second = await Book.EditAsync(meal, document => document.Rename("Mine"), fromNow: false, Stop);

        Assert.IsType<MealEdit.Outdated>(second);
        Assert.Equal("Lunch of the others", (await Book.OpenAsync(meal.Row.Id, Stop))!.Row.Name);
    }

    [Fact]
    public async Task A_table_time_that_is_past_is_refused_with_its_place()
    {
        var meal = await AddedAsync();

        var refused = await Book.EditAsync(meal, document => document.MoveTo(new DateOnly(2026, 11, 1)), fromNow: true, Stop);

        Assert.Contains(Assert.IsType<MealEdit.Refused>(refused).Errors, error => error.Place == "/courses/0/tableTime");
        Assert.Equal(1, (await Book.OpenAsync(meal.Row.Id, Stop))!.Row.Version);
    }

    [Fact]
    public async Task A_copy_is_a_meal_of_its_own()
    {
        var meal = await AddedAsync();

        var copy = Assert.IsType<MealEdit.Kept>(await Book.CopyAsync(meal, Stop)).Meal;

        Assert.NotEqual(meal.Row.Id, copy.Row.Id);
        Assert.Equal("Midwinter lunch, copy", copy.Meal.Name);
    }

    [Fact]
    public async Task A_deleted_meal_is_gone()
    {
        var meal = await AddedAsync();

        await Book.DeleteAsync(meal.Row.Id, Stop);

        Assert.Null(await Book.OpenAsync(meal.Row.Id, Stop));
    }
}
