namespace CookAlong.Benchmarks.Kitchens;

/// <summary>Two server processes of one household on a PostgreSQL and a Redis of their own, behind nginx: deploy/scale-out on loopback.</summary>
sealed class TwoNodes : IAsyncDisposable
{
    readonly Stack<IAsyncDisposable> started = [];

    /// <summary>Why there can be none here; null when there can.</summary>
    public static string? Missing => OwnPostgres.Missing ?? OwnRedis.Missing ?? OwnNginx.Missing;

    /// <summary>Devices go to nginx.</summary>
    public KitchenProcess First { get; private set; } = null!;

    public KitchenProcess Second { get; private set; } = null!;

    public static async Task<TwoNodes> StartAsync()
    {
        var nodes = new TwoNodes();
        var postgres = nodes.Keep(await OwnPostgres.StartAsync(isDurable: true));
        var redis = nodes.Keep(await OwnRedis.StartAsync());
        nodes.First = nodes.Keep(await KitchenProcess.StartAsync(new Dictionary<string, string>
        {
            ["COOKALONG_POSTGRES"] = await postgres.NewDatabaseAsync(),
            ["COOKALONG_REDIS"] = redis.NewLine(),
        }));
        nodes.Second = nodes.Keep(await nodes.First.BesideAsync());
        nodes.First.Front = nodes.Keep(await OwnNginx.StartAsync(nodes.First.Url, nodes.Second.Url)).Url;
        return nodes;
    }

    public async ValueTask DisposeAsync()
    {
        while (started.TryPop(out var last))
        {
            await last.DisposeAsync();
        }
    }

    T Keep<T>(T one)
        where T : IAsyncDisposable
    {
        started.Push(one);
        return one;
    }
}
