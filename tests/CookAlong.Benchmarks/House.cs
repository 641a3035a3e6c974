using System.Net;
using System.Text.RegularExpressions;
using CookAlong.Web;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Household;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace CookAlong.Benchmarks;

/// <summary>The real server in this process, on loopback and a data folder of its own, and a host signed in.</summary>
sealed partial class House : IAsyncDisposable
{
    readonly DirectoryInfo data = Directory.CreateTempSubdirectory("cookalong-bench-");
    readonly WebApplication app;

    House(WebApplication app, DirectoryInfo data) => (this.app, this.data) = (app, data);

    public IServiceProvider Services => app.Services;

    public string Url => app.Urls.First();

    public CookieContainer Cookies { get; } = new();

    public HttpClient Client { get; private set; } = null!;

    public static async Task<House> OpenAsync()
    {
        var data = Directory.CreateTempSubdirectory("cookalong-bench-");
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions { ContentRootPath = AppContext.BaseDirectory, ApplicationName = "CookAlong.Web" });
        builder.Logging.SetMinimumLevel(LogLevel.Warning);
        var app = Program.Build(builder, new HouseSettings(data.FullName, "http://127.0.0.1:0", [], []));
        await app.Services.GetRequiredService<Upgrade>().RunAsync(CancellationToken.None);
        await app.StartAsync();
        var house = new House(app, data);
        house.Client = new HttpClient(new HttpClientHandler { CookieContainer = house.Cookies }) { BaseAddress = new Uri(house.Url) };
        var page = await house.Client.GetStringAsync("/first-start");
        await house.PostAsync("/first-start", page, new()
        {
            ["secret"] = app.Services.GetRequiredService<FirstStart>().Open(),
            ["name"] = "Maren",
            ["password"] = "a long night before midwinter",
        });
        return house;
    }

    /// <summary>Posts a form with the token of the page it stands on. Returns where it led.</summary>
    public async Task<Uri> PostAsync(string action, string page, Dictionary<string, string> fields)
    {
        fields["__RequestVerificationToken"] = Token().Match(page).Groups[1].Value;
        using var answer = await Client.PostAsync(action, new FormUrlEncodedContent(fields));
        answer.EnsureSuccessStatusCode();
        return answer.RequestMessage!.RequestUri!;
    }

    public async ValueTask DisposeAsync()
    {
        Client.Dispose();
        await app.StopAsync();
        await app.DisposeAsync();
        data.Delete(recursive: true);
    }

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex Token();
}
