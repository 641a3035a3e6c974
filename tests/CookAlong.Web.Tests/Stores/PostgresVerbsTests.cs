using System.Diagnostics;
using CookAlong.Benchmarks.Kitchens;
using CookAlong.Web.Cli;
using CookAlong.Web.Data.Postgres;
using CookAlong.Web.Features.Health;
using CookAlong.Web.Features.Settings;
using Microsoft.Extensions.Logging.Abstractions;
using Npgsql;

namespace CookAlong.Web.Tests.Stores;

/// <summary>What only a file can do is said in words where the household is in PostgreSQL.</summary>
public sealed class PostgresVerbsTests
{
    static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("backup")]
    [InlineData("restore", "household.db")]
    public async Task Backups_are_the_databases_own_affair(string verb, params string[] more)
    {
        var (exit, words) = await RunAsync("Host=nowhere.invalid;Database=none", [verb, .. more]);

        Assert.Equal(ExitCode.BadInput, exit);
        Assert.Contains(BackupWords.OfPostgres, words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_database_is_brought_up_to_date_once_and_found_well()
    {
        var address = (await Store.Postgres.NewAsync())["postgres"];

        var first = await RunAsync(address, ["migrate"]);
        Assert.Equal(ExitCode.Done, first.Exit);
        Assert.Contains("_Initial", first.Words, StringComparison.Ordinal);
        Assert.Equal("The database is up to date.", (await RunAsync(address, ["migrate"])).Words.Trim());
        Assert.Equal(Grade.Well, (await PostgresCheck.RunAsync(address, Stop)).Grade);
    }

    [Fact]
    public async Task Two_servers_that_start_at_once_make_the_tables_once()
    {
        var address = (await Store.Postgres.NewAsync())["postgres"];

        var steps = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => Task.Run(() => PostgresUpgrade.RunAsync(address, NullLogger.Instance, Stop))));

        Assert.Single(steps, taken => taken.Count > 0);
    }

    [Fact]
    public async Task A_database_of_a_newer_version_and_one_that_is_away_are_told_of()
    {
        var address = (await Store.Postgres.NewAsync())["postgres"];
        await PostgresUpgrade.RunAsync(address, NullLogger.Instance, Stop);
        await using (var database = new NpgsqlConnection(address))
        {
            await database.OpenAsync(Stop);
            await using var newer = new NpgsqlCommand("""INSERT INTO "__EFMigrationsHistory" VALUES ('29991231235959_FromTheFuture', '10.0.0')""", database);
            await newer.ExecuteNonQueryAsync(Stop);
        }

        var refused = await RunAsync(address, ["migrate"]);
        Assert.Equal(ExitCode.Failed, refused.Exit);
        Assert.Contains("newer version", refused.Words, StringComparison.Ordinal);

        // Port 1 of this machine has no listener.
        const string Away = "Host=127.0.0.1;Port=1;Database=none;Username=cook;Password=goose";
        var away = await RunAsync(Away, ["migrate"]);
        Assert.Equal(ExitCode.Failed, away.Exit);
        Assert.Contains("COOKALONG_POSTGRES", away.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("goose", away.Words, StringComparison.Ordinal);
        Assert.Equal(Grade.Wrong, (await PostgresCheck.RunAsync(Away, Stop)).Grade);
    }

    /// <summary>As a process of its own, since the setting comes by the environment.</summary>
    static async Task<(int Exit, string Words)> RunAsync(string address, string[] arguments)
    {
        var folder = Directory.CreateTempSubdirectory("cookalong-test-");
        try
        {
            var secret = Path.Combine(folder.FullName, "secret");
            await File.WriteAllTextAsync(secret, address, Stop);
            var start = new ProcessStartInfo("dotnet", [KitchenProcess.Server, .. arguments, "--data", folder.FullName]) { RedirectStandardOutput = true, RedirectStandardError = true };
            start.Environment["COOKALONG_POSTGRES_FILE"] = secret;
            using var verb = Process.Start(start)!;
            var words = await Task.WhenAll(verb.StandardOutput.ReadToEndAsync(Stop), verb.StandardError.ReadToEndAsync(Stop));
            await verb.WaitForExitAsync(Stop);
            return (verb.ExitCode, string.Concat(words));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
