using System.Net.Http.Json;
using System.Text.RegularExpressions;
using Microsoft.Extensions.Time.Testing;
using Microsoft.Net.Http.Headers;

namespace CookAlong.Web.Tests;

/// <summary>What a browser does, without one: keeps cookies, sends a form with the token that its page carried.</summary>
public sealed partial class Browser(HttpClient client, CookieJar cookies)
{
    public HttpClient Client => client;

    public CookieJar Cookies => cookies;

    /// <summary>Opens a page as a person would.</summary>
    public async Task<HttpResponseMessage> GetAsync(string path)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, path);
        request.Headers.Add("Accept", "text/html");
        return await client.SendAsync(request, TestContext.Current.CancellationToken);
    }

    public async Task<string> ReadAsync(string path)
    {
        using var answer = await GetAsync(path);
        return await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
    }

    /// <summary>Opens <paramref name="page"/> for its token (the action's own page when null), then posts the fields.</summary>
    public async Task<HttpResponseMessage> PostFormAsync(string action, Dictionary<string, string> fields, string? page = null)
    {
        var token = TokenIn(await ReadAsync(page ?? action));
        return await PostAsync(action, new(fields) { ["__RequestVerificationToken"] = token });
    }

    /// <summary>Posts the fields as they are: without a token unless they hold one.</summary>
    public async Task<HttpResponseMessage> PostAsync(string action, Dictionary<string, string> fields)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, action) { Content = new FormUrlEncodedContent(fields) };
        request.Headers.Add("Accept", "text/html");
        return await client.SendAsync(request, TestContext.Current.CancellationToken);
    }

    public Task<HttpResponseMessage> PostJsonAsync<T>(string path, T body) =>
        client.PostAsJsonAsync(path, body, TestContext.Current.CancellationToken);

    static string TokenIn(string html)
    {
        var match = Token().Match(html);
        Assert.True(match.Success, $"no antiforgery token in:\n{html}");
        return match.Groups[1].Value;
    }

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex Token();
}

/// <summary>Cookies by the fake clock: the framework's own jar goes by the real one and would drop them.</summary>
public sealed class CookieJar(FakeTimeProvider clock) : DelegatingHandler
{
    readonly Dictionary<string, string> cookies = [];

    /// <summary>The Set-Cookie headers of the last answer that had any.</summary>
    public IReadOnlyList<string> LastSet { get; private set; } = [];

    /// <summary>The Cookie header as it would be sent now; "" = none.</summary>
    public string Header => string.Join("; ", cookies.Select(cookie => $"{cookie.Key}={cookie.Value}"));

    protected override async Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
    {
        if (cookies.Count > 0)
        {
            request.Headers.Add("Cookie", Header);
        }

        var answer = await base.SendAsync(request, cancellationToken);
        if (answer.Headers.TryGetValues("Set-Cookie", out var set))
        {
            LastSet = [.. set];
            foreach (var cookie in SetCookieHeaderValue.ParseList([.. LastSet]))
            {
                if (cookie.Expires < clock.GetUtcNow())
                {
                    cookies.Remove(cookie.Name.ToString());
                }
                else
                {
                    cookies[cookie.Name.ToString()] = cookie.Value.ToString();
                }
            }
        }

        return answer;
    }
}
