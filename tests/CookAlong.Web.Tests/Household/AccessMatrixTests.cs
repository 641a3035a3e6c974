using System.Net;
using System.Net.Http.Json;
using CookAlong.Domain.Runs;
using CookAlong.Web.Tests.Live;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace CookAlong.Web.Tests.Household;

/// <summary>Who may open what (OWASP ASVS 5.0.0, 8.2.1 and 8.3.1): every address there is, asked for by everybody there is.</summary>
public sealed class AccessMatrixTests
{
    /// <summary>The least that somebody must be. "kitchen" = has joined this run, as watcher or helper; "token" = a program with the right scope, and no person (Api/TokenTests).</summary>
    const string Matrix = """
        anyone   GET /
        anyone   GET /api/problems
        anyone   GET /first-start
        anyone   POST /first-start
        anyone   GET /health/live
        anyone   GET /health/ready
        anyone   GET /join
        anyone   POST /join
        anyone   GET /new-host
        anyone   POST /new-host
        anyone   GET,POST /not-found
        anyone   POST /probe/{token}
        anyone   GET /secure/
        anyone   GET /secure/authority.crt
        anyone   GET /secure/authority.mobileconfig
        anyone   GET /secure/trusted
        anyone   GET /sign-in
        anyone   POST /sign-in
        anyone   POST /sign-in/passkey
        anyone   POST /sign-in/passkey/question
        anyone   POST /sign-out
        kitchen  GET /cook/{run:guid}/
        kitchen  GET /cook/{run:guid}/board-part
        kitchen  GET /cook/{run:guid}/calls
        kitchen  GET /cook/{run:guid}/debrief
        kitchen  GET /cook/{run:guid}/debrief.csv
        kitchen  GET /cook/{run:guid}/debrief.json
        kitchen  GET /cook/{run:guid}/debrief/photos/{photo:guid}
        kitchen  GET /cook/{run:guid}/device
        kitchen  GET /cook/{run:guid}/log
        kitchen  GET /cook/{run:guid}/log-part
        kitchen  GET /cook/{run:guid}/log.csv
        kitchen  GET /cook/{run:guid}/log.json
        kitchen  GET /cook/{run:guid}/me
        kitchen  GET /cook/{run:guid}/me-part
        kitchen  GET /cook/{run:guid}/push-key
        kitchen  POST /cook/{run:guid}/push
        kitchen  POST /cook/{run:guid}/push/off
        kitchen  POST /cook/{run:guid}/push/test
        kitchen  GET /cook/{run:guid}/shopping
        kitchen  POST /cook/{run:guid}/taps
        kitchen  GET /cook/{run:guid}/wall
        kitchen  GET /cook/{run:guid}/wall-part
        kitchen  GET /meals/{meal:guid}/shopping/
        kitchen  GET /meals/{meal:guid}/shopping/part
        kitchen  POST /meals/{meal:guid}/shopping/taps
        host     GET /account/
        host     POST /account/hosts/invite
        host     POST /account/hosts/remove
        host     GET /account/log
        host     GET /account/log.csv
        host     POST /account/passkeys
        host     POST /account/passkeys/question
        host     POST /account/passkeys/remove
        host     POST /account/password
        host     POST /account/sessions/end
        host     POST /account/sessions/end-others
        host     POST /account/tokens
        host     POST /account/tokens/revoke
        host     GET /api/docs/
        host     GET /api/docs/reader.js
        host     GET /api/openapi.json
        host     POST /cook/{run:guid}/again
        host     POST /cook/{run:guid}/debrief/learn
        host     POST /cook/{run:guid}/debrief/notes
        host     POST /cook/{run:guid}/debrief/photos
        host     POST /cook/{run:guid}/debrief/photos/{photo:guid}/delete
        host     GET /cook/{run:guid}/invite
        host     GET /cook/{run:guid}/leftovers
        host     GET /cook/{run:guid}/more
        host     GET /cook/{run:guid}/more-part
        host     POST /cook/{run:guid}/put-out
        host     GET /cook/{run:guid}/thermometer/{step}
        host     POST /cook/{run:guid}/ways-out/test
        host     GET,POST /dishes
        host     GET,POST /dishes/{DishId:guid}
        host     GET /learned/
        host     POST /learned/delete
        host     GET /learned/file
        host     GET /licences
        host     GET,POST /meals
        host     GET,POST /meals/new
        host     GET,POST /meals/{MealId:guid}
        host     GET,POST /meals/{MealId:guid}/leftovers
        host     GET,POST /meals/{MealId:guid}/plan
        host     GET,POST /meals/{MealId:guid}/recipe
        host     GET /meals/{meal:guid}/debrief
        host     GET /meals/{meal:guid}/file
        host     GET /meals/{meal:guid}/leftovers/labels
        host     GET /meals/{meal:guid}/leftovers/reminders.ics
        host     GET /meals/{meal:guid}/plan/calendar.ics
        host     GET /meals/{meal:guid}/plan/file
        host     GET /meals/{meal:guid}/plan/paper
        host     POST /meals/{meal:guid}/rehearsals
        host     GET /meals/{meal:guid}/reminders.ics
        host     POST /meals/{meal:guid}/runs
        host     GET /ovens/
        host     POST /ovens/trials
        host     GET /ovens/trials/{trial:guid}
        host     POST /ovens/trials/{trial:guid}
        host     POST /ovens/trials/{trial:guid}/delete
        host     POST /ovens/use
        host     GET /server
        host     GET,POST /settings
        token    GET /api/v1/meals/
        token    DELETE /api/v1/meals/{meal:guid}
        token    GET /api/v1/meals/{meal:guid}
        token    PUT /api/v1/meals/{meal:guid}
        token    GET /api/v1/meals/{meal:guid}/plan/
        token    POST /api/v1/meals/{meal:guid}/plan/
        token    POST /api/v1/meals/{meal:guid}/runs
        token    GET /api/v1/meals/{meal:guid}/shopping/
        token    POST /api/v1/meals/{meal:guid}/shopping/commands
        token    GET /api/v1/runs
        token    GET /api/v1/runs/{run:guid}/
        token    GET /api/v1/runs/{run:guid}/calls
        token    POST /api/v1/runs/{run:guid}/commands
        token    POST /api/v1/runs/{run:guid}/readings
        """;

    /// <summary>The framework's own, and files that are the same for everybody: sockets are asked at each join and each tap.</summary>
    static readonly string[] ForEverybody = ["/_blazor", "/_framework", "/hubs/live", "{**path:file}"];

    static readonly Guid Other = new(9, 9, 9, new byte[8]);

    static IEnumerable<(string Least, string[] Methods, string Pattern)> Rows => Matrix.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
        .Select(line => line.Split(' ', StringSplitOptions.RemoveEmptyEntries)).Select(words => (words[0], words[1].Split(','), words[2]));

    [Fact]
    public async Task Every_address_is_in_the_matrix()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var mapped = kitchen.House.Services.GetServices<EndpointDataSource>().SelectMany(source => source.Endpoints).OfType<RouteEndpoint>()
            .Select(one => (Methods: string.Join(',', one.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods ?? []), Pattern: one.RoutePattern.RawText!))
            .Where(one => one.Pattern[0] == '/' && !ForEverybody.Any(own => one.Pattern.StartsWith(own, StringComparison.Ordinal)))
            .Select(one => $"{one.Methods} {one.Pattern}").Distinct().Order(StringComparer.Ordinal);
        Assert.Equal(Rows.Select(row => $"{string.Join(',', row.Methods)} {row.Pattern}").Order(StringComparer.Ordinal), mapped);
    }

    [Fact]
    public void No_address_begins_like_the_path_that_may_stand_before_all() =>
        Assert.Superset(Rows.Select(row => row.Pattern.Split('/')[1]).Where(first => first.Length > 0).ToHashSet(), HouseSettings.OwnPaths.ToHashSet());

    [Fact]
    public async Task Each_opens_to_whoever_may_and_to_nobody_else()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var (watcher, helper, nobody) = (await kitchen.JoinAsync("Gran", Role.Watcher), await kitchen.JoinAsync("Ivo"), kitchen.House.NewBrowser());
        var wrong = new List<string>();
        // Signing out would end the walk, and once there is a host the first start leads everybody to the door.
        foreach (var (least, methods, pattern) in Rows.Where(row => row.Pattern is not ("/sign-out" or "/first-start")))
        {
            foreach (var method in methods)
            {
                await LookAsync("nobody", nobody, kitchen.Run, mayOpen: least == "anyone");
                await LookAsync("a guest of another kitchen", helper, Other, mayOpen: least == "anyone" || !pattern.Contains("{run", StringComparison.Ordinal) && least is not ("host" or "token"));
                await LookAsync("watcher", watcher, kitchen.Run, mayOpen: least is not ("host" or "token"));
                await LookAsync("helper", helper, kitchen.Run, mayOpen: least is not ("host" or "token"));
                await LookAsync("host", kitchen.Host, kitchen.Run, mayOpen: least != "token");

                async Task LookAsync(string who, Browser browser, Guid run, bool mayOpen)
                {
                    var path = pattern.Replace("{run:guid}", run.ToString()).Replace("{meal:guid}", LiveKitchen.MealRow.ToString()).Replace("{MealId:guid}", LiveKitchen.MealRow.ToString())
                        .Replace("{DishId:guid}", Other.ToString()).Replace("{photo:guid}", Other.ToString()).Replace("{trial:guid}", Other.ToString()).Replace("{step}", "roast").Replace("{token}", "none");
                    using var request = new HttpRequestMessage(new HttpMethod(method), path) { Content = method != "POST" ? null : TakesJson(pattern) ? JsonContent.Create(new { }) : new FormUrlEncodedContent([]) };
                    request.Headers.Add("Accept", "text/html");
                    using var answer = await browser.Client.SendAsync(request, TestContext.Current.CancellationToken);
                    var isShut = answer.StatusCode is HttpStatusCode.Unauthorized or HttpStatusCode.Forbidden
                        || answer.Headers.Location?.OriginalString.Contains("/sign-in", StringComparison.Ordinal) == true;
                    if (mayOpen ? isShut : !isShut && answer.StatusCode != HttpStatusCode.NotFound)
                    {
                        wrong.Add($"{who}: {method} {path} answered {(int)answer.StatusCode} {answer.Headers.Location}");
                    }
                }
            }
        }

        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
    }

    /// <summary>What takes JSON turns a form away before it asks whose it is.</summary>
    static bool TakesJson(string pattern) => pattern.StartsWith("/api/", StringComparison.Ordinal) || pattern.EndsWith("/taps", StringComparison.Ordinal) || pattern.EndsWith("/push", StringComparison.Ordinal) || pattern.EndsWith("/push/off", StringComparison.Ordinal)
        || pattern.EndsWith("/passkeys", StringComparison.Ordinal) || pattern.EndsWith("/passkey", StringComparison.Ordinal);
}
