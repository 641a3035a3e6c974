using CookAlong.Web.Features.Dishes;

namespace CookAlong.Web.Tests.Dishes;

public sealed class DemoDishesTests
{
    [Fact]
    public async Task A_new_household_finds_a_library_of_at_least_thirty_dishes_from_several_feasts()
    {
        await using var app = new AppFactory();

        await app.HostAsync();

        var dishes = await app.Get<DishBook>().AllAsync(TestContext.Current.CancellationToken);
        Assert.True(dishes.Count >= 30);
        Assert.True(dishes.Select(dish => dish.Document.Occasion).Distinct().Count() >= 5);
    }

    [Fact]
    public async Task Seeded_again_a_library_gets_only_what_it_has_not()
    {
        await using var app = new AppFactory();
        await app.HostAsync();
        var book = app.Get<DishBook>();
        var gone = (await book.AllAsync(TestContext.Current.CancellationToken))[0];
        await book.DeleteAsync(gone.Row.Id, TestContext.Current.CancellationToken);

        var added = await app.Get<DemoDishes>().AddAsync(TestContext.Current.CancellationToken);

        Assert.Equal([gone.Dish.Name], added);
    }

    [Fact]
    public async Task Nobody_but_a_host_sees_the_library()
    {
        await using var app = new AppFactory();
        await app.HostAsync();

        using var answer = await app.NewBrowser().GetAsync("/dishes");

        Assert.Equal(System.Net.HttpStatusCode.Redirect, answer.StatusCode);
    }
}
