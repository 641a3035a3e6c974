using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace CookAlong.Web.Tests.Api;

/// <summary>A program of the household, which has a token and no cookies.</summary>
sealed partial class Programs(HttpClient client, string? token)
{
    static CancellationToken Stop => TestContext.Current.CancellationToken;

    public static async Task<Programs> WithAsync(AppFactory house, Browser host, params string[] scopes) => new(house.NewBrowser().Client, await TokenAsync(host, scopes));

    public static Programs WithToken(AppFactory house, string? token) => new(house.NewBrowser().Client, token);

    /// <summary>As a host makes one on the account's page.</summary>
    public static async Task<string> TokenAsync(Browser host, params string[] scopes)
    {
        // A form sends a field for each tick.
        var page = await host.ReadAsync("/account");
        var form = scopes.Select(scope => new KeyValuePair<string, string>("scope", scope))
            .Append(new("name", "The kitchen's lights"))
            .Append(new("__RequestVerificationToken", FormToken().Match(page).Groups[1].Value));
        using var answer = await host.Client.PostAsync("/account/tokens", new FormUrlEncodedContent(form), Stop);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return Shown().Match(await answer.Content.ReadAsStringAsync(Stop)).Groups[1].Value;
    }

    public async Task<HttpResponseMessage> SendAsync(HttpMethod method, string path, string? body = null, string? ifMatch = null)
    {
        using var request = new HttpRequestMessage(method, path) { Content = body is null ? null : new StringContent(body, Encoding.UTF8, "application/json") };
        if (token is not null)
        {
            request.Headers.Authorization = new AuthenticationHeaderValue("Bearer", token);
        }

        if (ifMatch is not null)
        {
            request.Headers.Add("If-Match", ifMatch);
        }

        return await client.SendAsync(request, Stop);
    }

    public async Task<JsonElement> GetAsync(string path) => await GoodAsync(await SendAsync(HttpMethod.Get, path));

    public async Task<JsonElement> PostAsync<T>(string path, T body) => await GoodAsync(await SendAsync(HttpMethod.Post, path, JsonSerializer.Serialize(body)));

    public static async Task<JsonElement> GoodAsync(HttpResponseMessage answer)
    {
        using (answer)
        {
            var text = await answer.Content.ReadAsStringAsync(Stop);
            Assert.True(answer.IsSuccessStatusCode, $"{(int)answer.StatusCode} {text}");
            return JsonElement.Parse(text);
        }
    }

    /// <summary>Holds the answer to RFC 9457 and to what every problem here promises.</summary>
    public static async Task<JsonElement> ProblemAsync(HttpResponseMessage answer, HttpStatusCode status, string code)
    {
        using (answer)
        {
            var text = await answer.Content.ReadAsStringAsync(Stop);
            Assert.True(answer.StatusCode == status, $"{(int)answer.StatusCode} {text}");
            Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
            var problem = JsonElement.Parse(text);
            Assert.Equal($"/api/problems#{code}", problem.GetProperty("type").GetString());
            Assert.Equal((int)status, problem.GetProperty("status").GetInt32());
            Assert.NotEmpty(problem.GetProperty("title").GetString()!);
            Assert.NotEmpty(problem.GetProperty("remedy").GetString()!);
            return problem;
        }
    }

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex FormToken();

    [GeneratedRegex("<code>(cookalong_[A-Za-z0-9_-]{22})</code>")]
    private static partial Regex Shown();
}
