using CookAlong.Benchmarks.Kitchens;
using CookAlong.Web.Tests.Live;
using CookAlong.Web.Tests.Stores;

[assembly: AssemblyFixture(typeof(StorePrograms))]

namespace CookAlong.Web.Tests.Stores;

/// <summary>Where the household of a contract test is kept. What cannot be had here is skipped, and said.</summary>
public enum Store
{
    Sqlite,
    Postgres,
}

static class Stores
{
    /// <summary>Settings of a server on an empty store.</summary>
    public static async Task<Dictionary<string, string>> NewAsync(this Store store) => store switch
    {
        Store.Sqlite => [],
        Store.Postgres => new() { ["postgres"] = await (await StorePrograms.PostgresAsync()).NewDatabaseAsync() },
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    public static async Task<LiveKitchen> KitchenAsync(this Store store) => await LiveKitchen.StartedAsync(settings: await store.NewAsync());
}

/// <summary>PostgreSQL and Redis, started when the first test asks, and stopped after the last.</summary>
public sealed class StorePrograms : IAsyncDisposable
{
    static readonly Lazy<Task<OwnPostgres>> Postgres = new(() => OwnPostgres.StartAsync(isDurable: false));

    static readonly Lazy<Task<OwnRedis>> Redis = new(OwnRedis.StartAsync);

    public StorePrograms()
    {
        // COOKALONG_STORE=Postgres runs all that is tested with a server on PostgreSQL; the contract tests do so anyway.
        if (Enum.TryParse<Store>(Environment.GetEnvironmentVariable("COOKALONG_STORE"), out var store))
        {
            AppFactory.StoreSettings = () => store.NewAsync().GetAwaiter().GetResult();
        }
    }

    internal static Task<OwnPostgres> PostgresAsync()
    {
        Assert.SkipWhen(OwnPostgres.Missing is not null, OwnPostgres.Missing ?? "");
        return Postgres.Value;
    }

    internal static Task<OwnRedis> RedisAsync()
    {
        Assert.SkipWhen(OwnRedis.Missing is not null, OwnRedis.Missing ?? "");
        return Redis.Value;
    }

    public async ValueTask DisposeAsync()
    {
        if (Redis.IsValueCreated)
        {
            await (await Redis.Value).DisposeAsync();
        }

        if (Postgres.IsValueCreated)
        {
            await (await Postgres.Value).DisposeAsync();
        }
    }
}
