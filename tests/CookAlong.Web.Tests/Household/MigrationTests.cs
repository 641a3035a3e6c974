using CookAlong.Web.Data;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace CookAlong.Web.Tests.Household;

public sealed class MigrationTests : IDisposable
{
    readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("cookalong-test-");

    [Fact]
    public async Task A_confirmed_tap_survives_a_power_cut() // SQLite's documentation: with WAL, synchronous=FULL (2) syncs at each commit
    {
        await using var services = Services();
        await services.GetRequiredService<Migration>().RunAsync(TestContext.Current.CancellationToken);
        await using var db = await services.GetRequiredService<IDbContextFactory<CookAlongDb>>().CreateDbContextAsync(TestContext.Current.CancellationToken);

        Assert.Equal("wal", await Pragma<string>(db, "journal_mode"));
        Assert.Equal(2, await Pragma<long>(db, "synchronous"));
        Assert.Equal(1, await Pragma<long>(db, "foreign_keys"));
        Assert.Equal(5000, await Pragma<long>(db, "busy_timeout"));
    }

    [Fact]
    public async Task A_second_start_finds_nothing_to_do()
    {
        await using var services = Services();
        var migration = services.GetRequiredService<Migration>();
        await migration.RunAsync(TestContext.Current.CancellationToken);

        Assert.Empty(await migration.RunAsync(TestContext.Current.CancellationToken));
        Assert.False(Directory.Exists(Path.Combine(folder.FullName, "backups")));
    }

    public void Dispose()
    {
        SqliteConnection.ClearAllPools();
        folder.Delete(recursive: true);
    }

    ServiceProvider Services() => new ServiceCollection()
        .AddLogging()
        .AddSingleton(TimeProvider.System)
        .AddHouseholdData(new HouseSettings(folder.FullName, HouseSettings.DefaultUrls, [], []))
        .BuildServiceProvider();

    static async Task<T> Pragma<T>(CookAlongDb db, string name)
    {
        await db.Database.OpenConnectionAsync(TestContext.Current.CancellationToken);
        await using var command = db.Database.GetDbConnection().CreateCommand();
        command.CommandText = $"PRAGMA {name}";
        return (T)(await command.ExecuteScalarAsync(TestContext.Current.CancellationToken))!;
    }
}
