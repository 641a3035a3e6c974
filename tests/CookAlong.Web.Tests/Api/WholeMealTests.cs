using System.Net;
using System.Text.Json;
using CookAlong.Web.Features.Api.Tokens;

namespace CookAlong.Web.Tests.Api;

/// <summary>A meal from its file to the shop and the table, by nothing but the API.</summary>
public sealed class WholeMealTests
{
    [Fact]
    public async Task A_program_brings_a_meal_shops_for_it_plans_it_and_cooks_it()
    {
        await using var house = new AppFactory();
        house.Clock.LeapTo(new DateTimeOffset(2026, 12, 20, 10, 0, 0, TimeSpan.Zero));
        var program = await Programs.WithAsync(house, await house.HostAsync(), [.. ApiScope.All.Select(scope => scope.Name)]);
        var meal = NewId();

        using (var put = await program.SendAsync(HttpMethod.Put, $"/api/v1/meals/{meal}", DuckForTwo.File))
        {
            Assert.True(put.StatusCode == HttpStatusCode.Created, await put.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
            Assert.Equal("\"1\"", put.Headers.ETag?.Tag);
        }

        Assert.Contains((await program.GetAsync("/api/v1/meals")).EnumerateArray(), one => one.GetProperty("id").GetGuid() == meal);

        // The shop.
        var line = (await program.GetAsync($"/api/v1/meals/{meal}/shopping")).GetProperty("aisles")[0].GetProperty("lines")[0];
        var tick = new { commandId = NewId(), command = new { kind = "mark", line = line.GetProperty("line").GetString(), @as = "bought", amount = line.GetProperty("amount").GetString() } };
        await program.PostAsync($"/api/v1/meals/{meal}/shopping/commands", tick);
        await program.PostAsync($"/api/v1/meals/{meal}/shopping/commands", tick);
        var list = await program.GetAsync($"/api/v1/meals/{meal}/shopping");
        Assert.Equal("bought", list.GetProperty("aisles")[0].GetProperty("lines")[0].GetProperty("mark").GetString());
        Assert.Equal(1, list.GetProperty("sequence").GetInt64());

        // The plan.
        var early = await program.SendAsync(HttpMethod.Post, $"/api/v1/meals/{meal}/runs", "{}");
        await Programs.ProblemAsync(early, HttpStatusCode.Conflict, "no-plan");
        var plan = await program.PostAsync($"/api/v1/meals/{meal}/plan", new { });
        Assert.Equal("cookalong-plan/1", plan.GetProperty("format").GetString());
        Assert.Equal(plan.ToString(), (await program.GetAsync($"/api/v1/meals/{meal}/plan")).ToString());

        // The kitchen.
        var run = (await program.PostAsync($"/api/v1/meals/{meal}/runs", new { })).GetProperty("id").GetGuid();
        Assert.Equal(run, (await program.PostAsync($"/api/v1/meals/{meal}/runs", new { })).GetProperty("id").GetGuid());
        Assert.Equal(run, (await program.GetAsync("/api/v1/runs"))[0].GetProperty("id").GetGuid());
        Assert.NotEmpty((await program.GetAsync($"/api/v1/runs/{run}/calls")).GetProperty("calls").EnumerateArray());
        await SendAsync("salt", "startStep");
        await SendAsync("salt", "finishStep");
        var tap = await SendAsync("roast", "startStep");
        Assert.Equal("running", (await CardAsync("roast")).GetProperty("state").GetString());

        // The same tap again is the same answer and no new event.
        var again = await program.PostAsync($"/api/v1/runs/{run}/commands", tap);
        Assert.True(again.GetProperty("accepted").GetBoolean());

        // The thermometer.
        house.Clock.Leap(TimeSpan.FromMinutes(60));
        await program.PostAsync($"/api/v1/runs/{run}/readings", new { step = "roast", fahrenheit = 122 });
        Assert.Equal(50, (await CardAsync("roast")).GetProperty("core").GetProperty("lastCelsius").GetDecimal());

        var refused = await program.SendAsync(HttpMethod.Post, $"/api/v1/runs/{run}/commands", Tap("roast", "finishStep"));
        Assert.NotEmpty((await Programs.ProblemAsync(refused, HttpStatusCode.Conflict, "refused")).GetProperty("detail").GetString()!);

        Guid NewId() => Guid.CreateVersion7(house.Clock.GetUtcNow());

        string Tap(string step, string kind) => $$$"""{"runId":"{{{run}}}","commandId":"{{{NewId()}}}","saw":0,"command":{"kind":"{{{kind}}}","step":"{{{step}}}"}}""";

        async Task<JsonElement> SendAsync(string step, string kind)
        {
            var sent = Tap(step, kind);
            var answer = await Programs.GoodAsync(await program.SendAsync(HttpMethod.Post, $"/api/v1/runs/{run}/commands", sent));
            Assert.True(answer.GetProperty("accepted").GetBoolean());
            return JsonElement.Parse(sent);
        }

        async Task<JsonElement> CardAsync(string step) =>
            (await program.GetAsync($"/api/v1/runs/{run}")).GetProperty("now").EnumerateArray().Single(card => card.GetProperty("step").GetString() == step);
    }
}
