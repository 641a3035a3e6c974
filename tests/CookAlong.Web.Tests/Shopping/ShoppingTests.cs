using System.Net;
using System.Net.Http.Json;
using CookAlong.Domain.FoodSafety;
using CookAlong.Domain.Runs;
using CookAlong.Domain.Shopping;
using CookAlong.Domain.Tests.Runs;
using CookAlong.Intake.MealFiles;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Live.Line;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Features.Settings;
using CookAlong.Web.Features.Shopping;
using CookAlong.Web.Tests.Live;
using Microsoft.AspNetCore.SignalR;
using Microsoft.AspNetCore.SignalR.Client;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Tests.Shopping;

public sealed class ShoppingTests
{
    // Only for a test that fails: a busy machine may take its time.
    static readonly TimeSpan Patience = TimeSpan.FromMinutes(1);

    internal static readonly string Path = $"/meals/{LiveKitchen.MealRow}/shopping";

    static CancellationToken Stop => TestContext.Current.CancellationToken;

    internal static async Task<LiveKitchen> KitchenAsync()
    {
        var kitchen = await LiveKitchen.StartedAsync();
        var dishes = SmallMeal.Meal.Dishes;
        var meal = SmallMeal.Meal with
        {
            Dishes = [dishes[0] with { Ingredients = [new("onions", 2, null, null, [])] }, dishes[1] with { Ingredients = [new("onion", 1, null, null, []), new("flour", 500, "g", null, [])] }, dishes[2]],
        };
        await using var db = kitchen.House.NewDb();
        await db.Meals.ExecuteUpdateAsync(set => set.SetProperty(row => row.Document, MealFile.Write(meal)), Stop);
        return kitchen;
    }

    internal static async Task<TapAnswer> TapAsync(Browser phone, object command, Guid? id = null)
    {
        using var answer = await phone.PostJsonAsync($"{Path}/taps", new { commandId = id ?? LiveKitchen.NewCommand(), command });
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return (await answer.Content.ReadFromJsonAsync<TapAnswer>(Stop))!;
    }

    internal static object Mark(string line, string mark, string amount = "3") => new { kind = "mark", line, @as = mark, amount };

    internal static object Order(params string[] order) => new { kind = "aisles", order };

    internal static async Task<KeptList> ListAsync(LiveKitchen kitchen) => (await kitchen.House.Get<ShoppingBook>().OfAsync(LiveKitchen.MealRow, Stop))!;

    [Fact]
    public async Task The_list_gathers_the_dishes_and_shows_what_is_ticked()
    {
        await using var kitchen = await KitchenAsync();
        var page = await kitchen.Host.ReadAsync(Path);
        Assert.Contains("onions", page, StringComparison.Ordinal);
        Assert.Contains("data-key=\"onion\" data-amount=\"3\" data-state=\"open\"", page, StringComparison.Ordinal);
        Assert.True((await TapAsync(kitchen.Host, Mark("onion", "bought"))).Accepted);
        Assert.Contains("data-key=\"onion\" data-amount=\"3\" data-state=\"bought\"", await kitchen.Host.ReadAsync($"{Path}/part"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_tap_sent_twice_counts_once_and_a_late_one_from_a_phone_that_was_away_counts_too()
    {
        await using var kitchen = await KitchenAsync();
        var ivo = await kitchen.JoinAsync("Ivo");
        var command = LiveKitchen.NewCommand();
        var first = await TapAsync(ivo, Mark("onion", "bought"), command);
        await TapAsync(kitchen.Host, Mark("onion", "open"));
        var again = await TapAsync(ivo, Mark("onion", "bought"), command);
        Assert.Equal(first, again);
        Assert.Empty((await ListAsync(kitchen)).State.Marks);

        await TapAsync(ivo, Mark("flour", "cupboard", "500 g"));
        Assert.Equal("flour", Assert.Single((await ListAsync(kitchen)).State.Marks).Key);
    }

    [Fact]
    public async Task Two_phones_that_tap_at_once_lose_nothing()
    {
        await using var kitchen = await KitchenAsync();
        var ivo = await kitchen.JoinAsync("Ivo");
        await Task.WhenAll(Enumerable.Range(0, 12).Select(i => TapAsync(i % 2 == 0 ? kitchen.Host : ivo, new { kind = "add", line = $"extra-{i}", text = $"candle {i}" })));
        var kept = await ListAsync(kitchen);
        Assert.Equal((12, 12L), (kept.State.Extras.Length, kept.Sequence));
    }

    [Fact]
    public async Task One_phone_s_tick_is_news_on_the_other()
    {
        await using var kitchen = await KitchenAsync();
        await using var phone = kitchen.Connect(await kitchen.JoinAsync("Ivo"));
        await phone.StartAsync(Stop);
        var entered = await phone.InvokeAsync<EnteredShopping>("EnterShopping", LiveKitchen.MealRow, Stop);
        Assert.Equal(kitchen.House.Clock.GetUtcNow().ToUnixTimeMilliseconds(), entered.ServerNow);
        var news = new TaskCompletionSource<ShoppingNews>();
        phone.On<ShoppingNews>("Shopping", news.SetResult);
        await TapAsync(kitchen.Host, Mark("onion", "bought"));
        Assert.Equal(1, (await news.Task.WaitAsync(Patience, Stop)).Sequence);
    }

    [Fact]
    public async Task Whoever_is_not_in_the_kitchen_neither_sees_the_list_nor_ticks_it()
    {
        await using var kitchen = await KitchenAsync();
        var watcher = await kitchen.JoinAsync("Edda", Role.Watcher);
        foreach (var (browser, status) in new[] { (watcher, HttpStatusCode.NotFound), (kitchen.House.NewBrowser(), HttpStatusCode.Redirect) })
        {
            using var seen = await browser.GetAsync(Path);
            Assert.Equal(status, seen.StatusCode);
            using var tapped = await browser.PostJsonAsync($"{Path}/taps", new { commandId = LiveKitchen.NewCommand(), command = Mark("onion", "bought") });
            Assert.False(tapped.IsSuccessStatusCode);
        }

        await using var line = kitchen.Connect(watcher);
        await line.StartAsync(Stop);
        await Assert.ThrowsAsync<HubException>(() => line.InvokeAsync("EnterShopping", LiveKitchen.MealRow, Stop));
        Assert.Equal(0, (await ListAsync(kitchen)).Sequence);
    }

    [Fact]
    public async Task A_tap_on_a_dish_with_no_possible_name_changes_nothing()
    {
        await using var kitchen = await KitchenAsync();
        Assert.False((await TapAsync(kitchen.Host, new { kind = "portions", dish = new string('x', 201), portions = 4 })).Accepted);
        Assert.False((await TapAsync(kitchen.Host, new { kind = "portions", dish = "", portions = 4 })).Accepted);
        Assert.Equal(0, (await ListAsync(kitchen)).Sequence);
    }

    [Fact]
    public async Task A_screen_of_the_kitchen_finds_its_meal_s_list()
    {
        await using var kitchen = await KitchenAsync();
        var ivo = await kitchen.JoinAsync("Ivo");
        using var answer = await ivo.GetAsync($"/cook/{kitchen.Run}/shopping");
        Assert.Equal(Path, answer.Headers.Location?.OriginalString);
    }

    [Fact]
    public async Task A_helper_of_another_meal_is_not_let_in()
    {
        await using var kitchen = await KitchenAsync();
        var ivo = await kitchen.JoinAsync("Ivo");
        using var own = await ivo.GetAsync(Path);
        Assert.Equal(HttpStatusCode.OK, own.StatusCode);
        var copy = Assert.IsType<MealEdit.Kept>(await kitchen.House.Get<MealBook>().CopyAsync((await ListAsync(kitchen)).Meal, Stop));
        using var other = await ivo.GetAsync($"/meals/{copy.Meal.Row.Id}/shopping");
        Assert.Equal(HttpStatusCode.NotFound, other.StatusCode);
    }

    [Fact]
    public async Task A_meal_that_is_not_there_has_no_list_to_tap_on()
    {
        await using var kitchen = await KitchenAsync();
        var ivo = await kitchen.JoinAsync("Ivo");
        await kitchen.House.Get<MealBook>().DeleteAsync(LiveKitchen.MealRow, Stop);
        foreach (var (browser, path) in new[] { (kitchen.Host, Path), (ivo, Path), (kitchen.Host, $"/meals/{LiveKitchen.NewCommand()}/shopping") })
        {
            using var answer = await browser.PostJsonAsync($"{path}/taps", new { commandId = LiveKitchen.NewCommand(), command = Mark("onion", "bought") });
            Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        }

        await using var db = kitchen.House.NewDb();
        Assert.Empty(await db.Set<ShoppingTapRow>().ToListAsync(Stop));
    }

    [Fact]
    public async Task A_line_more_than_a_list_takes_is_refused_with_the_reason()
    {
        await using var kitchen = await KitchenAsync();
        await using (var db = kitchen.House.NewDb())
        {
            db.AddRange(Enumerable.Range(1, ShoppingState.MostExtras).Select(line => new ShoppingTapRow
            {
                Meal = LiveKitchen.MealRow,
                Sequence = line,
                Command = LiveKitchen.NewCommand(),
                By = Guid.Empty,
                At = 0,
                Document = ShoppingTapJson.Write(new ShoppingTap.AddExtra($"extra-{line}", $"candle {line}")),
            }));
            await db.SaveChangesAsync(Stop);
        }

        Assert.Equal(new TapAnswer(false, 0, ShoppingWords.Full), await TapAsync(kitchen.Host, new { kind = "add", line = "one-more", text = "matches" }));
        Assert.True((await TapAsync(kitchen.Host, new { kind = "remove", line = "extra-7" })).Accepted);
        Assert.True((await TapAsync(kitchen.Host, new { kind = "add", line = "one-more", text = "matches" })).Accepted);
        Assert.Contains((await ListAsync(kitchen)).State.Extras, extra => extra.Text == "matches");
    }

    // NIST SP 811 (2008), appendix B: a US cup is 236.5882 mL. The British and the metric cup are 250 mL by definition.
    [Theory]
    [InlineData(Region.UnitedKingdom, 250)]
    [InlineData(Region.Scotland, 250)]
    [InlineData(Region.UnitedStates, 236.5882)]
    [InlineData(Region.Canada, 250)]
    public async Task A_recipe_s_cups_are_the_household_s(Region region, double millilitres)
    {
        await using var kitchen = await KitchenAsync();
        var dishes = SmallMeal.Meal.Dishes;
        await using (var db = kitchen.House.NewDb())
        {
            var meal = SmallMeal.Meal with { Dishes = [dishes[0] with { Ingredients = [new("milk", 1, "cup", null, [])] }, .. dishes.Skip(1)] };
            await db.Meals.ExecuteUpdateAsync(set => set.SetProperty(row => row.Document, MealFile.Write(meal)), Stop);
        }

        using var before = await kitchen.Host.GetAsync($"{Path}/part");
        await kitchen.House.Get<HouseholdRegion>().ChooseAsync(region, Stop);
        var milk = Assert.Single((await ListAsync(kitchen)).List.Lines);
        Assert.Equal(millilitres, (double)Assert.Single(milk.Amounts).Base / (double)milk.Uses[0].Amount!.Value.Value, 0.0001);
        using var after = await kitchen.Host.GetAsync($"{Path}/part");
        Assert.Equal(region is Region.UnitedKingdom or Region.Scotland, before.Headers.ETag!.Equals(after.Headers.ETag));
    }

    [Fact]
    public async Task Whether_a_fragment_has_changed_is_told_without_reading_the_recipes()
    {
        await using var kitchen = await KitchenAsync();
        using var first = await kitchen.Host.GetAsync($"{Path}/part");
        await using var db = kitchen.House.NewDb();
        await db.Meals.ExecuteUpdateAsync(set => set.SetProperty(row => row.Document, "no recipe any more"), Stop);
        using var request = new HttpRequestMessage(HttpMethod.Get, $"{Path}/part");
        request.Headers.TryAddWithoutValidation("If-None-Match", first.Headers.ETag!.ToString());
        using var again = await kitchen.Host.Client.SendAsync(request, Stop);
        Assert.Equal(HttpStatusCode.NotModified, again.StatusCode);
    }

    [Fact]
    public async Task More_wanted_than_was_bought_is_open_again_and_says_so()
    {
        await using var kitchen = await KitchenAsync();
        await TapAsync(kitchen.Host, Mark("onion", "bought"));
        await TapAsync(kitchen.Host, new { kind = "portions", dish = "goose", portions = 8 });
        var page = await kitchen.Host.ReadAsync($"{Path}/part");
        Assert.Contains("data-key=\"onion\" data-amount=\"5\" data-state=\"open\"", page, StringComparison.Ordinal);
        Assert.Contains("Bought before: 3.", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_fragment_that_has_not_changed_is_not_sent_again()
    {
        await using var kitchen = await KitchenAsync();
        using var first = await kitchen.Host.GetAsync($"{Path}/part");
        async Task<HttpStatusCode> AgainAsync()
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, $"{Path}/part");
            request.Headers.TryAddWithoutValidation("If-None-Match", first.Headers.ETag!.ToString());
            using var answer = await kitchen.Host.Client.SendAsync(request, Stop);
            return answer.StatusCode;
        }

        Assert.Equal(HttpStatusCode.NotModified, await AgainAsync());
        await TapAsync(kitchen.Host, Mark("onion", "bought"));
        Assert.Equal(HttpStatusCode.OK, await AgainAsync());
    }

    [Theory]
    [InlineData("""{"kind":"mark","line":"onion","as":"eaten"}""")]
    [InlineData("""{"kind":"add","line":"a","text":"  "}""")]
    [InlineData("""{"kind":"portions","dish":"goose","portions":0}""")]
    [InlineData("""{"kind":"moveAisle","aisle":"dryGoods","by":1}""")]
    [InlineData("""{"kind":"aisles","order":[]}""")]
    [InlineData("""{"kind":"aisles","order":["bread","bread"]}""")]
    [InlineData("""{"kind":"aisles","order":["bread","shoes"]}""")]
    [InlineData("""{"kind":"aisles","order":["bread",7]}""")]
    [InlineData("""{"kind":"remove","line":""}""")]
    [InlineData("""{"kind":"remove","line":"1234567890123456789012345678901234567890123456789012345678901"}""")]
    [InlineData("""{"kind":"burn"}""")]
    [InlineData("[]")]
    public async Task A_tap_that_no_page_makes_changes_nothing(string command)
    {
        await using var kitchen = await KitchenAsync();
        var answer = await TapAsync(kitchen.Host, System.Text.Json.Nodes.JsonNode.Parse(command)!);
        Assert.False(answer.Accepted);
        Assert.Equal(ShoppingWords.NotAList, answer.Reason);
        Assert.Equal(0, (await ListAsync(kitchen)).Sequence);
    }

    [Fact]
    public async Task A_deleted_meal_takes_its_list_along_and_leaves_the_shop_as_it_is()
    {
        await using var kitchen = await KitchenAsync();
        await TapAsync(kitchen.Host, Mark("onion", "bought"));
        await TapAsync(kitchen.Host, Order("bread"));
        await kitchen.House.Get<MealBook>().DeleteAsync(LiveKitchen.MealRow, Stop);
        await using var db = kitchen.House.NewDb();
        Assert.Equal("aisles", Assert.Single(await db.Set<ShoppingTapRow>().ToListAsync(Stop)).Setting);
    }
}
