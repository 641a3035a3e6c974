using System.Net;
using System.Text;
using CookAlong.Domain;
using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Live.Probes;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Web.Tests.Live;

public sealed class ProbeTests
{
    static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("{\"celsius\": 61.5}")]
    [InlineData("{\"fahrenheit\": 143}")]
    [InlineData(" 61.5 \n")]
    public async Task A_reading_comes_to_the_run_and_what_has_no_core_temperature_says_so(string body)
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        using var answer = await PostAsync(kitchen, await AddressOfAsync(kitchen, Carve), body);
        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        Assert.Contains("has no core temperature", await answer.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
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
