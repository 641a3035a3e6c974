using CookAlong.Web.Data;
using CookAlong.Web.Data.Postgres;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace CookAlong.Web.Tests.Household;

public sealed class UpgradeTests : IDisposable
{
    readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("cookalong-test-");

    [Fact]
    public async Task A_confirmed_tap_survives_a_power_cut() // SQLite's documentation: with WAL, synchronous=FULL (2) syncs at each commit
    {
        await using var services = Services();
        await services.GetRequiredService<Upgrade>().RunAsync(TestContext.Current.CancellationToken);
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
        var upgrade = services.GetRequiredService<Upgrade>();
        await upgrade.RunAsync(TestContext.Current.CancellationToken);

        Assert.Empty(await upgrade.RunAsync(TestContext.Current.CancellationToken));
        Assert.False(Directory.Exists(Path.Combine(folder.FullName, "backups")));
    }

    [Fact]
    public async Task Every_shape_that_stands_beside_a_row_is_a_table()
    {
        var shaped = typeof(CookAlongDb).Assembly.GetTypes()
            .SelectMany(type => type.GetInterfaces().Where(one => one.IsGenericType && one.GetGenericTypeDefinition() == typeof(IEntityTypeConfiguration<>)))
            .Select(one => one.GetGenericArguments()[0])
            .ToArray();
        await using var services = Services();
        await using var db = await services.GetRequiredService<IDbContextFactory<CookAlongDb>>().CreateDbContextAsync(TestContext.Current.CancellationToken);

        Assert.NotEmpty(shaped);
        Assert.All(shaped, row => Assert.True(db.Model.FindEntityType(row) is not null, $"CookAlongDb.OnModelCreating does not name {row.Name}."));
    }

    [Fact]
    public async Task The_migrations_make_the_tables_that_the_code_has()
    {
        await using var services = Services();
        await using var db = await services.GetRequiredService<IDbContextFactory<CookAlongDb>>().CreateDbContextAsync(TestContext.Current.CancellationToken);

        Assert.False(db.Database.HasPendingModelChanges(), "a table changed: dotnet ef migrations add NAME --context CookAlongDb --project src/CookAlong.Web --output-dir Data/Migrations");
    }

    [Fact]
    public void The_migrations_for_PostgreSQL_make_them_too()
    {
        var options = new DbContextOptionsBuilder<PostgresDb>();
        PostgresDb.Use(options, "Host=nowhere;Database=none");
        using var db = new PostgresDb(options.Options);

        Assert.False(db.Database.HasPendingModelChanges(), "a table changed: dotnet ef migrations add NAME --context PostgresDb --project src/CookAlong.Web --output-dir Data/Postgres/Migrations");
    }

    [Fact]
    public async Task A_new_database_is_what_the_migrations_make()
    {
        const string Everything = "SELECT group_concat(name || ' ' || coalesce(sql, ''), ';') FROM (SELECT * FROM sqlite_master WHERE name <> '__EFMigrationsLock' AND tbl_name <> '__EFMigrationsLock' ORDER BY name)";
        const string Steps = "SELECT group_concat(MigrationId || ProductVersion) FROM __EFMigrationsHistory";
        await using var services = Services();
        await services.GetRequiredService<Upgrade>().RunAsync(TestContext.Current.CancellationToken);
        var migrated = Path.Combine(folder.FullName, "migrated.db");
        var options = new DbContextOptionsBuilder<CookAlongDb>();
        HouseholdData.UseFile(options, migrated);
        await using (var db = new CookAlongDb(options.Options))
        {
            await db.Database.MigrateAsync(TestContext.Current.CancellationToken);
        }

        const string Remedy = "the script of new tables is old: dotnet ef migrations script --context CookAlongDb --project src/CookAlong.Web --output src/CookAlong.Web/Data/Migrations/tables.sql";
        Assert.True(Equals(Execute(Everything, migrated), Execute(Everything)), Remedy);
        Assert.True(Equals(Execute(Steps, migrated), Execute(Steps)), Remedy);
    }

    [Fact]
    public async Task A_lock_left_by_a_killed_process_does_not_stop_the_next_start()
    {
        Execute("CREATE TABLE __EFMigrationsLock (Id INTEGER NOT NULL PRIMARY KEY, Timestamp TEXT NOT NULL); INSERT INTO __EFMigrationsLock VALUES (1, '2026-12-20 09:00:00')");
        await using var services = Services();
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        patience.CancelAfter(TimeSpan.FromSeconds(60));

        var steps = await services.GetRequiredService<Upgrade>().RunAsync(patience.Token);

        Assert.NotEmpty(steps);
    }

    [Fact]
    public async Task A_database_is_backed_up_before_it_is_changed()
    {
        Execute("CREATE TABLE Kept (Word TEXT); INSERT INTO Kept VALUES ('goose')");
        await using var services = Services();

        await services.GetRequiredService<Upgrade>().RunAsync(TestContext.Current.CancellationToken);

        var copy = Assert.Single(Directory.GetFiles(Path.Combine(folder.FullName, "backups"), "*.db"));
        Assert.Equal("goose", Execute("SELECT Word FROM Kept", copy));
        Assert.Null(Execute("SELECT name FROM sqlite_master WHERE name = 'Hosts'", copy));
    }

    [Fact]
    public async Task A_failed_update_stops_and_names_the_backup()
    {
        Execute("CREATE TABLE Hosts (InTheWay TEXT)");
        await using var services = Services();

        var failed = await Assert.ThrowsAsync<UpgradeException>(() => services.GetRequiredService<Upgrade>().RunAsync(TestContext.Current.CancellationToken));

        var copy = Assert.Single(Directory.GetFiles(Path.Combine(folder.FullName, "backups"), "*.db"));
        Assert.Contains(copy, failed.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("newer", "was made by a newer version of CookAlong (step 29991231235959_FromTheFuture)")]
    [InlineData("damaged", "cannot be opened")]
    [InlineData("cut off", "Run 'restore' once more")]
    [InlineData("restoring", "A restore is going on")]
    public async Task A_database_that_cannot_be_used_is_named_and_left_as_it_is(string state, string says)
    {
        var file = Path.Combine(folder.FullName, "cookalong.db");
        IDisposable? alone = null;
        switch (state)
        {
            case "newer":
                Execute("CREATE TABLE __EFMigrationsHistory (MigrationId TEXT, ProductVersion TEXT); INSERT INTO __EFMigrationsHistory VALUES ('29991231235959_FromTheFuture', '10.0.0')");
                break;
            case "damaged":
                await File.WriteAllTextAsync(file, new string('x', 5000), TestContext.Current.CancellationToken);
                break;
            case "cut off":
                await File.WriteAllTextAsync(file + ".restoring", "", TestContext.Current.CancellationToken);
                break;
            default:
                Assert.True(DataFolder.TryAlone(Settings, out alone, out _));
                break;
        }

        await using var services = Services();

        var failed = await Assert.ThrowsAsync<UpgradeException>(() => services.GetRequiredService<Upgrade>().RunAsync(TestContext.Current.CancellationToken));

        alone?.Dispose();
        Assert.Contains(folder.FullName, failed.Message, StringComparison.Ordinal);
        Assert.Contains(says, failed.Message, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.Combine(folder.FullName, "backups")));
    }

    public void Dispose()
    {
        SqliteConnection.ClearAllPools();
        folder.Delete(recursive: true);
    }

    HouseSettings Settings => new(folder.FullName, HouseSettings.DefaultUrls, [], []);

    ServiceProvider Services() => new ServiceCollection()
        .AddLogging()
        .AddSingleton(TimeProvider.System)
        .AddHouseholdData(Settings)
        .BuildServiceProvider();

    object? Execute(string sql, string? file = null)
    {
        using var connection = new SqliteConnection($"Data Source={file ?? Path.Combine(folder.FullName, "cookalong.db")};Pooling=False");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return command.ExecuteScalar();
    }

    static async Task<T> Pragma<T>(CookAlongDb db, string name)
    {
        await db.Database.OpenConnectionAsync(TestContext.Current.CancellationToken);
        await using var command = db.Database.GetDbConnection().CreateCommand();
        command.CommandText = $"PRAGMA {name}";
        return (T)(await command.ExecuteScalarAsync(TestContext.Current.CancellationToken))!;
    }
}
