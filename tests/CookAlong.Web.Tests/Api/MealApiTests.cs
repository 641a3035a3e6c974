using System.Net;
using CookAlong.Web.Features.Api.Tokens;

namespace CookAlong.Web.Tests.Api;

public sealed class MealApiTests
{
    static readonly Guid meal = new(5, 5, 5, new byte[8]);
    static readonly string path = $"/api/v1/meals/{meal}";

    [Fact]
    public async Task A_meal_comes_back_as_it_was_put_unknown_fields_and_all()
    {
        await using var house = new AppFactory();
        var program = await StartAsync(house);

        using var answer = await program.SendAsync(HttpMethod.Get, path);

        Assert.Equal(DuckForTwo.File, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        Assert.Equal("\"1\"", answer.Headers.ETag?.Tag);
    }

    [Fact]
    public async Task A_meal_is_replaced_only_by_who_saw_its_latest_version()
    {
        await using var house = new AppFactory();
        var program = await StartAsync(house);
        var changed = DuckForTwo.File.Replace("Duck for two", "Duck for us", StringComparison.Ordinal);

        await Programs.ProblemAsync(await program.SendAsync(HttpMethod.Put, path, changed), HttpStatusCode.PreconditionRequired, "version-required");
        using (var good = await program.SendAsync(HttpMethod.Put, path, changed, "\"1\""))
        {
            Assert.Equal("\"2\"", good.Headers.ETag?.Tag);
        }

        await Programs.ProblemAsync(await program.SendAsync(HttpMethod.Put, path, changed, "\"1\""), HttpStatusCode.PreconditionFailed, "meal-changed");
        Assert.Equal("Duck for us", (await program.GetAsync(path)).GetProperty("name").GetString());
    }

    [Fact]
    public async Task Errors_of_a_file_are_named_by_their_place_and_nothing_is_kept()
    {
        await using var house = new AppFactory();
        var program = await StartAsync(house);

        var answer = await program.SendAsync(HttpMethod.Put, path, DuckForTwo.File.Replace("\"minutes\": 10", "\"minutes\": -10", StringComparison.Ordinal), "\"1\"");

        var problem = await Programs.ProblemAsync(answer, HttpStatusCode.UnprocessableEntity, "bad-file");
        Assert.StartsWith("/dishes/0/steps/0/minutes", problem.GetProperty("errors")[0].GetProperty("pointer").GetString(), StringComparison.Ordinal);
        Assert.Equal(DuckForTwo.File.Length, (await program.GetAsync(path)).GetRawText().Length);
    }

    [Fact]
    public async Task A_deleted_meal_is_gone()
    {
        await using var house = new AppFactory();
        var program = await StartAsync(house);

        using var gone = await program.SendAsync(HttpMethod.Delete, path);

        Assert.Equal(HttpStatusCode.NoContent, gone.StatusCode);
        await Programs.ProblemAsync(await program.SendAsync(HttpMethod.Get, path), HttpStatusCode.NotFound, "not-found");
    }

    [Fact]
    public async Task What_the_server_itself_turns_away_is_told_in_problem_details_too()
    {
        await using var house = new AppFactory();
        var program = await StartAsync(house);

        await Programs.ProblemAsync(await program.SendAsync(HttpMethod.Get, "/api/v1/kettles"), HttpStatusCode.NotFound, "not-found");
        await Programs.ProblemAsync(await program.SendAsync(HttpMethod.Patch, path, "{}"), HttpStatusCode.MethodNotAllowed, "other");
        await Programs.ProblemAsync(await program.SendAsync(HttpMethod.Put, path, new string(' ', 3_000_000)), HttpStatusCode.RequestEntityTooLarge, "too-large");
        await Programs.ProblemAsync(await program.SendAsync(HttpMethod.Post, $"/api/v1/runs/{meal}/readings", "{"), HttpStatusCode.BadRequest, "bad-request");
    }

    static async Task<Programs> StartAsync(AppFactory house)
    {
        var program = await Programs.WithAsync(house, await house.HostAsync(), ApiScope.MealsRead, ApiScope.MealsWrite, ApiScope.Readings);
        using var put = await program.SendAsync(HttpMethod.Put, path, DuckForTwo.File);
        Assert.Equal(HttpStatusCode.Created, put.StatusCode);
        return program;
    }
}
