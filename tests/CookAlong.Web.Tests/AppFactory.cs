using System.Net;
using System.Text.RegularExpressions;
using CookAlong.Web.Data;
using CookAlong.Web.Data.Archive;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Features.Plans;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace CookAlong.Web.Tests;

/// <summary>The real app on a real SQLite file in a folder of its own, with a clock that stands still until it is moved.</summary>
public sealed partial class AppFactory : WebApplicationFactory<Program>
{
    public const string HostName = "Rowan";
    public const string HostPassword = "seven winters and a goose";

    readonly DirectoryInfo data;
    readonly bool isDataOurs;
    readonly LogLines log = new();

    public AppFactory()
        : this(Directory.CreateTempSubdirectory("cookalong-test-"), new DateTimeOffset(2026, 12, 20, 9, 0, 0, TimeSpan.Zero))
    {
        isDataOurs = true;
        foreach (var (name, value) in StoreSettings())
        {
            Settings[name] = value;
        }
    }

    AppFactory(DirectoryInfo data, DateTimeOffset now) => (this.data, Clock) = (data, new LeapingClock(now));

    /// <summary>Settings that name an empty store, for every household; none = a SQLite file.</summary>
    public static Func<Dictionary<string, string>> StoreSettings { get; set; } = () => [];

    public LeapingClock Clock { get; }

    /// <summary>Where browsers go; https makes them think that TLS is on.</summary>
    public Uri Address { get; set; } = new("http://localhost");

    public string DataFolder => data.FullName;

    public IReadOnlyList<string> Log => log.Lines;

    /// <summary>Options of the server by their names without dashes; set before the first client is made.</summary>
    public Dictionary<string, string> Settings { get; } = [];

    /// <summary>Give the new household the invented meals it cooked before; set before the first client is made.</summary>
    public bool HasEarlierMeals { get; set; }

    /// <summary>Replaces services for a test; set before the first client is made.</summary>
    public Action<IServiceCollection>? Replace { get; set; }

    /// <summary>The secret that the log shows at the first start.</summary>
    public string FirstStartSecret
    {
        get
        {
            StartServer();
            return log.Lines.Select(line => FirstStartAddress().Match(line)).Last(match => match.Success).Groups[1].Value;
        }
    }

    /// <summary>A browser nobody is signed in with. Redirects are not followed.</summary>
    public Browser NewBrowser()
    {
        var jar = new CookieJar(Clock);
        return new Browser(CreateDefaultClient(Address, jar), jar);
    }

    /// <summary>A browser signed in as the household's host; the account is made the first time.</summary>
    public async Task<Browser> HostAsync()
    {
        var browser = NewBrowser();
        var isNew = !await Get<Features.Household.Accounts>().AnyAsync(TestContext.Current.CancellationToken);
        using var answer = isNew
            ? await browser.PostFormAsync("/first-start", new() { ["secret"] = FirstStartSecret, ["name"] = HostName, ["password"] = HostPassword })
            : await browser.PostFormAsync("/sign-in", new() { ["name"] = HostName, ["password"] = HostPassword });
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        return browser;
    }

    /// <summary>Another server on the same data, as after a restart; this one may be gone or not.</summary>
    public AppFactory Again()
    {
        var again = new AppFactory(data, Clock.GetUtcNow()) { Replace = Replace };
        foreach (var shared in Settings.Where(one => one.Key is "postgres" or "redis"))
        {
            again.Settings.Add(shared.Key, shared.Value);
        }

        return again;
    }

    public T Get<T>()
        where T : notnull => Services.GetRequiredService<T>();

    public CookAlongDb NewDb() => Get<IDbContextFactory<CookAlongDb>>().CreateDbContext();

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        builder.UseEnvironment("Production");
        builder.UseSetting("data", DataFolder);
        foreach (var (name, value) in Settings)
        {
            builder.UseSetting(name, value);
        }

        builder.ConfigureLogging(logging => logging.ClearProviders().AddProvider(log));
        builder.ConfigureTestServices(services =>
        {
            services.AddSingleton<TimeProvider>(Clock);

            // It ends by collecting all the garbage there is, which holds up the hundred servers that live here beside it.
            services.Remove(services.Single(one => one.ImplementationType == typeof(WarmSolver)));
            if (!HasEarlierMeals)
            {
                services.AddSingleton(all => new EarlierMeals(all.GetRequiredService<HouseholdArchive>(), all.GetRequiredService<IDbContextFactory<CookAlongDb>>()) { Folder = "" });
            }

            Replace?.Invoke(services);
        });
    }

    public override async ValueTask DisposeAsync()
    {
        await base.DisposeAsync();
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        if (Settings.TryGetValue("postgres", out var postgres))
        {
            Npgsql.NpgsqlConnection.ClearPool(new Npgsql.NpgsqlConnection(postgres));
        }

        if (isDataOurs)
        {
            data.Delete(recursive: true);
        }
    }

    [GeneratedRegex("/first-start#(\\S+)")]
    private static partial Regex FirstStartAddress();
}
