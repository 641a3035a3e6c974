using System.Net;
using AngleSharp.Html.Parser;
using CookAlong.Domain.Tests.Runs;
using CookAlong.Web.Features.Dishes;

namespace CookAlong.Web.Tests.Live;

public sealed class MoreDishesTests
{
    const string Pears = """
        {
          "id": "pears", "name": "Baked pears", "serves": 4, "ingredients": [{ "name": "pears", "quantity": 4 }, { "name": "ground almonds", "quantity": 50, "unit": "g" }],
          "steps": [
            { "id": "peel", "text": "Peel the pears", "minutes": 10 },
            { "id": "bake", "text": "Bake them", "minutes": 30, "attention": "unattended", "uses": [{ "oven": { "celsius": { "min": 160, "ideal": 170, "max": 180 } } }] }
          ]
        }
        """;

    static readonly CancellationToken Stop = Xunit.TestContext.Current.CancellationToken;

    static async Task<(LiveKitchen Kitchen, Guid Dish)> WithPearsAsync()
    {
        var kitchen = await LiveKitchen.StartedAsync();
        return (kitchen, ((DishEdit.Kept)await kitchen.House.Get<DishBook>().AddAsync(Pears, Stop)).Dish.Row.Id);
    }

    [Fact]
    public async Task A_dish_of_the_library_is_cooked_as_well()
    {
        var (kitchen, dish) = await WithPearsAsync();
        await using var _ = kitchen;
        var page = new HtmlParser().ParseDocument(await kitchen.Host.ReadAsync($"/cook/{kitchen.Run}/more"));
        var line = page.QuerySelectorAll("li").Single(one => one.QuerySelector("h3")!.TextContent == "Baked pears");
        Assert.Contains("In time for 15:00", line.TextContent, StringComparison.Ordinal);
        using var tap = System.Text.Json.JsonDocument.Parse(line.QuerySelector("[data-tap]")!.GetAttribute("data-tap")!);

        Assert.True((await kitchen.TapAsync(kitchen.Host, tap.RootElement)).Accepted);

        var run = await kitchen.LoadAsync();
        Assert.Equal("Baked pears", run.Meal.Dishes[^1].Name);
        Assert.Equal(["Peel the pears", "Bake them"], run.Meal.Dishes[^1].Steps.Select(step => step.Text));
        Assert.Contains("Rowan added Baked pears", await kitchen.Host.ReadAsync($"/cook/{kitchen.Run}/log"), StringComparison.Ordinal);
        Assert.Contains("On the menu", await kitchen.Host.ReadAsync($"/cook/{kitchen.Run}/more-part"), StringComparison.Ordinal);
        Assert.False((await kitchen.TapAsync(kitchen.Host, new { kind = "addDish", dish, course = "supper" })).Accepted);
    }

    [Fact]
    public async Task One_that_is_not_in_the_library_any_more_is_refused_in_words()
    {
        var (kitchen, dish) = await WithPearsAsync();
        await using var _ = kitchen;
        await kitchen.House.Get<DishBook>().DeleteAsync(dish, Stop);
        var answer = await kitchen.TapAsync(kitchen.Host, new { kind = "addDish", dish, course = SmallMeal.Main.Value });
        Assert.Equal((false, "That dish is not in the library any more, or cannot be cooked in this kitchen."), (answer.Accepted, answer.Reason));
    }

    [Fact]
    public async Task The_page_is_the_hosts()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var ivo = await kitchen.JoinAsync("Ivo");
        using var answer = await ivo.GetAsync($"/cook/{kitchen.Run}/more");
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }
}
