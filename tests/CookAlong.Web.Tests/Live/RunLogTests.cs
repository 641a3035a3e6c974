using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;
using CookAlong.Domain.Runs;
using CookAlong.Domain.Tests.Runs;

namespace CookAlong.Web.Tests.Live;

public sealed class RunLogTests
{
    [Fact]
    public async Task Everything_that_happened_is_read_by_whoever_is_in_the_kitchen()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var ivo = await kitchen.JoinAsync("Ivo");
        Assert.True((await kitchen.TapAsync(ivo, new { kind = "finishStep", step = "stuff" })).Accepted);
        var page = await ivo.ReadAsync($"/cook/{kitchen.Run}/log");
        Assert.Contains("Ivo finished", page, StringComparison.Ordinal);
        Assert.Contains("The meal began", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task It_is_taken_away_as_json_with_every_event_as_it_was_stored()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        await kitchen.TapAsync(kitchen.Host, new { kind = "addTime", step = "stuff", minutes = 5 });
        using var json = JsonDocument.Parse(await kitchen.Host.ReadAsync($"/cook/{kitchen.Run}/log.json"));
        var events = json.RootElement.GetProperty("events").EnumerateArray().ToList();
        Assert.Equal(["runStarted/1", "personJoined/1", "authoritySet/1", "timeAdded/1"], events.Select(one => one.GetProperty("kind").GetString()));
        Assert.Equal(5, events[3].GetProperty("event").GetProperty("minutes").GetInt32());
        Assert.Equal("Rowan", events[3].GetProperty("by").GetString());
    }

    [Fact]
    public async Task A_line_offers_to_be_taken_back_to_whoever_may_and_only_while_it_stands()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var ivo = await kitchen.JoinAsync("Ivo");
        await kitchen.TapAsync(ivo, new { kind = "addTime", step = "trim", minutes = 5 });
        await kitchen.TapAsync(kitchen.Host, new { kind = "dropDish", dish = "dumplings" });

        Assert.Equal(["takeBackTime"], await OfferedAsync(kitchen, ivo));
        Assert.Equal(["bringBackDish", "takeBackTime"], await OfferedAsync(kitchen, kitchen.Host));

        Assert.True((await kitchen.TapAsync(kitchen.Host, new { kind = "bringBackDish", dish = "dumplings" })).Accepted);
        Assert.True((await kitchen.TapAsync(ivo, new { kind = "takeBackTime", step = "trim", minutes = 5 })).Accepted);
        Assert.Empty(await OfferedAsync(kitchen, kitchen.Host));
        Assert.Contains("Rowan brought back dumplings", await ivo.ReadAsync($"/cook/{kitchen.Run}/log"), StringComparison.Ordinal);
        Assert.Equal(0, (await kitchen.LoadAsync()).StateOf(SmallMeal.Trim).ExtraMinutes);
    }

    [Fact]
    public async Task What_was_given_and_what_was_chosen_goes_back_by_its_line()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var ivo = await kitchen.JoinAsync("Ivo");
        await kitchen.TapAsync(kitchen.Host, new { kind = "setPlanRule", minutes = 5 });
        await kitchen.TapAsync(kitchen.Host, new { kind = "setPlanRule", minutes = 10 });
        await kitchen.TapAsync(kitchen.Host, new { kind = "giveStep", step = "trim", to = "maren" });
        Assert.Empty(await OfferedAsync(kitchen, ivo));
        Assert.Equal(["takeBackGiving", "setPlanRule"], await OfferedAsync(kitchen, kitchen.Host));
        Assert.Contains("""data-tap="{"kind":"setPlanRule","minutes":5}""", WebUtility.HtmlDecode(await kitchen.Host.ReadAsync($"/cook/{kitchen.Run}/log")), StringComparison.Ordinal);

        Assert.True((await kitchen.TapAsync(kitchen.Host, new { kind = "takeBackGiving", step = "trim" })).Accepted);
        Assert.Equal([SmallMeal.Ivo], (await kitchen.LoadAsync()).HoldersOf(SmallMeal.Trim));
        Assert.Contains("was given away", await ivo.ReadAsync($"/cook/{kitchen.Run}/log"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_watcher_is_offered_nothing()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        await kitchen.TapAsync(kitchen.Host, new { kind = "addTime", step = "trim", minutes = 5 });
        Assert.Empty(await OfferedAsync(kitchen, await kitchen.JoinAsync("Gran", Role.Watcher)));
    }

    [Fact]
    public async Task What_is_taken_back_twice_is_refused_in_words()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var answer = await kitchen.TapAsync(kitchen.Host, new { kind = "takeBackPlan" });
        Assert.Equal("The first plan still holds: there is none before it to go back to.", answer.Reason);
    }

    static async Task<IEnumerable<string>> OfferedAsync(LiveKitchen kitchen, Browser screen)
    {
        var page = System.Net.WebUtility.HtmlDecode(await screen.ReadAsync($"/cook/{kitchen.Run}/log"));
        return Regex.Matches(page, """data-tap="\{"kind":"(\w+)""").Select(found => found.Groups[1].Value);
    }

    [Fact]
    public async Task A_name_that_looks_like_a_formula_is_none_in_the_table()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        await kitchen.JoinAsync("=1+1");
        var table = await kitchen.Host.ReadAsync($"/cook/{kitchen.Run}/log.csv");
        var line = table.Split('\n').Single(one => one.Contains("=1+1", StringComparison.Ordinal));
        Assert.StartsWith("Sequence,At,By,Kind,What", table.TrimStart('\uFEFF'), StringComparison.Ordinal);
        Assert.DoesNotContain(",=1+1", line, StringComparison.Ordinal);
        Assert.DoesNotContain(",\"=1+1", line, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Nobody_from_outside_reads_it()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var stranger = kitchen.House.NewBrowser();
        foreach (var way in new[] { "log", "log-part", "log.json", "log.csv" })
        {
            using var answer = await stranger.GetAsync($"/cook/{kitchen.Run}/{way}");
            Assert.NotEqual(HttpStatusCode.OK, answer.StatusCode);
        }
    }
}
