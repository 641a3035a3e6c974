using System.Net;
using CookAlong.Web.Features.Api.Tokens;

namespace CookAlong.Web.Tests.Api;

/// <summary>The API of a household that lives under a path of its own, https://home.example/kitchen.</summary>
public sealed class BasePathTests
{
    static readonly CancellationToken stop = TestContext.Current.CancellationToken;

    [Fact]
    public async Task Every_address_that_the_api_tells_lies_below_the_path()
    {
        await using var house = new AppFactory();
        house.Settings["base-path"] = "/kitchen";
        house.Clock.LeapTo(new DateTimeOffset(2026, 12, 20, 10, 0, 0, TimeSpan.Zero));
        var program = await Programs.WithAsync(house, await house.HostAsync(), [.. ApiScope.All.Select(scope => scope.Name)]);
        var meal = Guid.CreateVersion7(house.Clock.GetUtcNow());

        using var put = await program.SendAsync(HttpMethod.Put, $"/kitchen/api/v1/meals/{meal}", DuckForTwo.File);
        Assert.Equal(HttpStatusCode.Created, put.StatusCode);
        await program.PostAsync($"/kitchen/api/v1/meals/{meal}/plan", new { });
        using var begun = await program.SendAsync(HttpMethod.Post, $"/kitchen/api/v1/meals/{meal}/runs", "{}");
        Assert.StartsWith("/kitchen/api/v1/runs/", begun.Headers.Location!.OriginalString, StringComparison.Ordinal);
        Assert.Equal("Lunch", (await program.GetAsync(begun.Headers.Location.OriginalString)).GetProperty("courses")[0].GetProperty("name").GetString());
        using var missing = await program.SendAsync(HttpMethod.Get, $"/kitchen/api/v1/runs/{meal}");
        Assert.Equal(HttpStatusCode.NotFound, missing.StatusCode);
        Assert.Contains("\"/kitchen/api/problems#not-found\"", await missing.Content.ReadAsStringAsync(stop), StringComparison.Ordinal);

        var told = (await program.GetAsync("/kitchen/api/openapi.json")).GetProperty("servers")[0].GetProperty("url").GetString()!;
        Assert.EndsWith("/kitchen", told.TrimEnd('/'), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_page_of_the_description_asks_below_the_path()
    {
        await using var house = new AppFactory();
        house.Settings["base-path"] = "/kitchen";
        var host = await house.HostAsync();

        var page = await host.ReadAsync("/kitchen/api/docs");

        Assert.Contains("data-url=\"/kitchen/api/openapi.json\"", page, StringComparison.Ordinal);
        Assert.Contains("src=\"/kitchen/api/docs/reader.js\"", page, StringComparison.Ordinal);
        using var script = await host.GetAsync("/kitchen/api/docs/reader.js");
        Assert.Equal(HttpStatusCode.OK, script.StatusCode);
        Assert.NotEmpty(await script.Content.ReadAsByteArrayAsync(stop));
    }
}
