using System.Net;
using System.Text.Json;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Api;
using CookAlong.Web.Features.Api.Tokens;
using CookAlong.Web.Tests.Live;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Tests.Api;

public sealed class TokenTests
{
    static readonly CancellationToken stop = TestContext.Current.CancellationToken;

    /// <summary>Every address of the API with the one scope that opens it.</summary>
    public static TheoryData<string, string, string> Doors => new()
    {
        { ApiScope.MealsRead, "GET", "/meals" },
        { ApiScope.MealsRead, "GET", "/meals/{meal}" },
        { ApiScope.MealsWrite, "PUT", "/meals/{meal}" },
        { ApiScope.MealsWrite, "DELETE", "/meals/{other}" },
        { ApiScope.Plans, "GET", "/meals/{meal}/plan" },
        { ApiScope.Plans, "POST", "/meals/{other}/plan" },
        { ApiScope.RunsRead, "GET", "/runs" },
        { ApiScope.RunsRead, "GET", "/runs/{run}" },
        { ApiScope.RunsRead, "GET", "/runs/{run}/calls" },
        { ApiScope.RunsWrite, "POST", "/meals/{meal}/runs" },
        { ApiScope.RunsWrite, "POST", "/runs/{run}/commands" },
        { ApiScope.Readings, "POST", "/runs/{run}/readings" },
        { ApiScope.Shopping, "GET", "/meals/{meal}/shopping" },
        { ApiScope.Shopping, "POST", "/meals/{meal}/shopping/commands" },
    };

    [Fact]
    public async Task Each_address_opens_to_its_scope_alone()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var wrong = new List<string>();
        foreach (var (scope, method, pattern) in Doors.Select(row => row.Data))
        {
            var path = "/api/v1" + pattern.Replace("{meal}", LiveKitchen.MealRow.ToString(), StringComparison.Ordinal).Replace("{run}", kitchen.Run.ToString(), StringComparison.Ordinal)
                .Replace("{other}", Guid.Empty.ToString(), StringComparison.Ordinal);
            var others = ApiScope.All.Select(one => one.Name).Where(one => one != scope).ToArray();
            using var with = await (await Programs.WithAsync(kitchen.House, kitchen.Host, scope)).SendAsync(new HttpMethod(method), path, method == "GET" ? null : "{}");
            using var without = await (await Programs.WithAsync(kitchen.House, kitchen.Host, others)).SendAsync(new HttpMethod(method), path, method == "GET" ? null : "{}");
            if (with.StatusCode is HttpStatusCode.Unauthorized or HttpStatusCode.Forbidden || without.StatusCode != HttpStatusCode.Forbidden || !$"{without.Headers.WwwAuthenticate}".Contains(scope, StringComparison.Ordinal))
            {
                wrong.Add($"{method} {path}: {(int)with.StatusCode} with {scope}, {(int)without.StatusCode} without");
            }
        }

        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
    }

    [Fact]
    public async Task A_revoked_token_is_dead_at_once_and_the_log_says_who_did_it()
    {
        await using var house = new AppFactory();
        var host = await house.HostAsync();
        var program = await Programs.WithAsync(house, host, ApiScope.MealsRead);
        await program.GetAsync("/api/v1/meals");
        await using var db = house.NewDb();
        var row = await db.Set<ApiTokenRow>().AsNoTracking().SingleAsync(stop);
        Assert.Equal(house.Clock.GetUtcNow().ToUnixTimeMilliseconds(), row.LastUsedAt);

        using var revoked = await host.PostFormAsync("/account/tokens/revoke", new() { ["id"] = row.Id.ToString() }, page: "/account");

        Assert.Equal("/account?done=token", revoked.Headers.Location?.OriginalString);
        var answer = await program.SendAsync(HttpMethod.Get, "/api/v1/meals");
        Assert.Equal("Bearer error=\"invalid_token\"", $"{answer.Headers.WwwAuthenticate}");
        await Programs.ProblemAsync(answer, HttpStatusCode.Unauthorized, "no-token");
        var log = await host.ReadAsync("/account/log");
        Assert.Contains("Made a token for a program", log, StringComparison.Ordinal);
        Assert.Contains("Revoked a token", log, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_token_is_kept_as_a_hash_and_shown_once()
    {
        await using var house = new AppFactory();
        var host = await house.HostAsync();

        var token = await Programs.TokenAsync(host, ApiScope.MealsRead);

        await using var db = house.NewDb();
        Assert.DoesNotContain(token[10..], JsonSerializer.Serialize(await db.Set<ApiTokenRow>().SingleAsync(stop)), StringComparison.Ordinal);
        Assert.DoesNotContain(token, await host.ReadAsync("/account"), StringComparison.Ordinal);
        Assert.DoesNotContain(token, string.Join('\n', house.Log), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_token_opens_nothing_from_an_address_and_no_page_and_a_cookie_no_part_of_the_api()
    {
        await using var house = new AppFactory();
        var host = await house.HostAsync();
        var token = await Programs.TokenAsync(host, ApiScope.MealsRead);
        var nobody = Programs.WithToken(house, token: null);

        await Programs.ProblemAsync(await nobody.SendAsync(HttpMethod.Get, $"/api/v1/meals?access_token={token}"), HttpStatusCode.Unauthorized, "no-token");
        await Programs.ProblemAsync(await host.GetAsync("/api/v1/meals"), HttpStatusCode.Unauthorized, "no-token");
        using var page = await Programs.WithToken(house, token).SendAsync(HttpMethod.Get, "/account");
        Assert.Equal(HttpStatusCode.Unauthorized, page.StatusCode);
    }

    [Fact]
    public async Task A_removed_hosts_tokens_go_with_them()
    {
        await using var house = new AppFactory();
        var (rowan, linden) = (await house.HostAsync(), house.NewBrowser());
        using var come = await linden.PostFormAsync("/new-host", new() { ["secret"] = await Household.HostsTests.InviteAsync(rowan), ["name"] = "Linden", ["password"] = "nine kettles on a cold morning" });
        var program = await Programs.WithAsync(house, linden, ApiScope.MealsRead);
        await program.GetAsync("/api/v1/meals");
        await using var db = house.NewDb();

        using var removed = await rowan.PostFormAsync("/account/hosts/remove", new() { ["id"] = db.Hosts.Single(one => one.Name == "Linden").Id.ToString() }, page: "/account");

        await Programs.ProblemAsync(await program.SendAsync(HttpMethod.Get, "/api/v1/meals"), HttpStatusCode.Unauthorized, "no-token");
    }

    [Fact]
    public async Task More_requests_than_a_household_makes_are_told_to_wait()
    {
        await using var house = new AppFactory();
        var program = await Programs.WithAsync(house, await house.HostAsync(), ApiScope.RunsRead);
        for (var request = 0; request < ApiFeature.RequestsAMinute; request++)
        {
            using var good = await program.SendAsync(HttpMethod.Get, "/api/v1/meals");
        }

        var answer = await program.SendAsync(HttpMethod.Get, "/api/v1/meals");

        Assert.Equal(TimeSpan.FromMinutes(1), answer.Headers.RetryAfter?.Delta);
        await Programs.ProblemAsync(answer, HttpStatusCode.TooManyRequests, "too-many");
    }
}
