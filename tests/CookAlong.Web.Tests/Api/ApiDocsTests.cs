using System.Net;
using System.Text.Json;
using CookAlong.Web.Features.Api.Tokens;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace CookAlong.Web.Tests.Api;

public sealed class ApiDocsTests
{
    static readonly CancellationToken stop = TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_description_names_every_address_of_the_api_with_its_scope()
    {
        await using var house = new AppFactory();
        var program = await Programs.WithAsync(house, await house.HostAsync(), ApiScope.Readings);
        var document = await program.GetAsync("/api/openapi.json");

        Assert.StartsWith("3.1", document.GetProperty("openapi").GetString(), StringComparison.Ordinal);
        var mapped = house.Services.GetServices<EndpointDataSource>().SelectMany(source => source.Endpoints).OfType<RouteEndpoint>()
            .Where(one => one.RoutePattern.RawText!.StartsWith("/api/v1", StringComparison.Ordinal))
            .Select(one => $"{one.Metadata.GetMetadata<HttpMethodMetadata>()!.HttpMethods.Single()} {one.RoutePattern.RawText!.Replace(":guid", "", StringComparison.Ordinal).TrimEnd('/')} {one.Metadata.GetMetadata<NeedsScope>()!.Scope}");
        var told = from path in document.GetProperty("paths").EnumerateObject()
                   from operation in path.Value.EnumerateObject()
                   select $"{operation.Name.ToUpperInvariant()} {path.Name.TrimEnd('/')} {operation.Value.GetProperty("security")[0].GetProperty("token")[0].GetString()}";
        Assert.Equal(mapped.Order(StringComparer.Ordinal), told.Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task The_page_of_the_description_takes_its_script_from_here_and_asks_nobody_else()
    {
        await using var house = new AppFactory();
        var host = await house.HostAsync();

        using var page = await host.GetAsync("/api/docs");
        using var script = await host.GetAsync("/api/docs/reader.js");

        var policy = Assert.Single(page.Headers.GetValues("Content-Security-Policy"));
        Assert.Contains("script-src 'self';", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("http", await page.Content.ReadAsStringAsync(stop), StringComparison.Ordinal);
        Assert.Equal("text/javascript", script.Content.Headers.ContentType?.MediaType);
        Assert.Equal([0x1f, 0x8b], (await script.Content.ReadAsByteArrayAsync(stop))[..2]);
    }

    [Fact]
    public async Task Every_kind_of_problem_is_told_with_its_remedy()
    {
        await using var house = new AppFactory();

        using var answer = await house.NewBrowser().GetAsync("/api/problems");

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var all = JsonElement.Parse(await answer.Content.ReadAsStringAsync(stop)).EnumerateArray().ToArray();
        Assert.Equal(all.Length, all.Select(one => one.GetProperty("code").GetString()).Distinct().Count());
        Assert.All(all, one => Assert.EndsWith(".", one.GetProperty("remedy").GetString(), StringComparison.Ordinal));
    }
}
