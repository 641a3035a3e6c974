using System.Net;
using System.Text.Json;

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
        Assert.Equal(["runStarted/1", "personJoined/1", "timeAdded/1"], events.Select(one => one.GetProperty("kind").GetString()));
        Assert.Equal(5, events[2].GetProperty("event").GetProperty("minutes").GetInt32());
        Assert.Equal("Rowan", events[2].GetProperty("by").GetString());
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
