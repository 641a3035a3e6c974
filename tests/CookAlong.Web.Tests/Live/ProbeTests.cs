using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using CookAlong.Domain;
using CookAlong.Domain.Doneness;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Live.Probes;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Web.Tests.Live;

public sealed class ProbeTests
{
    static CancellationToken Stop => TestContext.Current.CancellationToken;

    static readonly CoreWanted duck = new(74, new Joint(Cut.WholeDuck, 2));

    // 143 °F are 61.67 °C (NIST SP 811, B.8).
    [Theory]
    [InlineData("{\"celsius\": 61.5}", 61.5)]
    [InlineData("{\"fahrenheit\": 143}", 61.67)]
    [InlineData(" 61.5 \n", 61.5)]
    public async Task A_reading_that_is_posted_comes_to_the_run(string body, double celsius)
    {
        await using var kitchen = await RoastingAsync();
        using var answer = await PostAsync(kitchen, await AddressOfAsync(kitchen, Roast), body);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal((decimal)celsius, Assert.Single((await kitchen.LoadAsync()).StateOf(Roast).Readings).Celsius);
    }

    [Fact]
    public async Task One_that_comes_within_two_minutes_is_not_noted_unless_it_may_be_the_last()
    {
        await using var kitchen = await RoastingAsync();
        async Task<bool> NotedAsync(string body)
        {
            using var answer = await PostAsync(kitchen, await AddressOfAsync(kitchen, Roast), body);
            return (await answer.Content.ReadFromJsonAsync<JsonElement>(Stop)).GetProperty("noted").GetBoolean();
        }

        Assert.True(await NotedAsync("20"));
        kitchen.House.Clock.Advance(TimeSpan.FromSeconds(119));
        Assert.False(await NotedAsync("21"));
        Assert.True(await NotedAsync("75"));
        kitchen.House.Clock.Leap(TimeSpan.FromMinutes(2));
        Assert.True(await NotedAsync("22"));
        Assert.Equal([20, 75, 22], (await kitchen.LoadAsync()).StateOf(Roast).Readings.Select(reading => reading.Celsius));
    }

    [Fact]
    public async Task What_has_no_core_temperature_says_so()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        using var answer = await PostAsync(kitchen, await AddressOfAsync(kitchen, Carve), "61.5");
        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        Assert.Contains("has no core temperature", await answer.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
    }

    /// <summary>The duck goes in at 12:40.</summary>
    static async Task<LiveKitchen> RoastingAsync()
    {
        var kitchen = await LiveKitchen.StartedAsync(roast: duck);
        await kitchen.TapAsync(kitchen.Host, new { kind = "finishStep", step = "stuff" });
        kitchen.House.Clock.LeapTo(Clock(12, 40));
        Assert.True((await kitchen.TapAsync(kitchen.Host, new { kind = "startStep", step = "roast" })).Accepted);
        kitchen.House.Clock.Leap(TimeSpan.FromMinutes(40));
        return kitchen;
    }

    [Theory]
    [InlineData("hot")]
    [InlineData("{\"celsius\": \"61\"}")]
    [InlineData("[61]")]
    [InlineData("")]
    public async Task What_is_no_reading_is_told_what_one_is(string body)
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        using var answer = await PostAsync(kitchen, await AddressOfAsync(kitchen, Carve), body);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("celsius", await answer.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_address_that_was_never_given_out_leads_nowhere()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        using var answer = await PostAsync(kitchen, "/probe/CfDJ8NnnnnotOurs", "61.5");
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    static async Task<string> AddressOfAsync(LiveKitchen kitchen, StepId step) =>
        kitchen.House.Get<ProbeAddresses>().Of(new RunId(kitchen.Run), step, (await kitchen.LoadAsync()).People.Keys.First());

    static async Task<HttpResponseMessage> PostAsync(LiveKitchen kitchen, string address, string body)
    {
        using var client = kitchen.House.CreateClient();
        using var content = new StringContent(body, Encoding.UTF8, "text/plain");
        return await client.PostAsync(new Uri(address, UriKind.Relative), content, Stop);
    }
}
