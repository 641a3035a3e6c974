using System.CommandLine;
using System.Net;
using System.Net.Sockets;
using CookAlong.Web.Cli;
using Microsoft.Data.Sqlite;

namespace CookAlong.Web.Tests.Household;

public sealed class VerbTests
{
    [Theory]
    [InlineData("serve")]
    [InlineData("seed")]
    [InlineData("backup")]
    [InlineData("restore")]
    [InlineData("https")]
    [InlineData("doctor")]
    [InlineData("export")]
    [InlineData("import")]
    [InlineData("migrate")]
    [InlineData("healthcheck")]
    [InlineData("plan")]
    [InlineData("check")]
    [InlineData("simulate")]
    public async Task Every_verb_teaches(string verb)
    {
        var (exit, output, _) = await RunAsync(verb, "--help");

        Assert.Equal(0, exit);
        Assert.Contains("Usage:", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_address_that_is_taken_is_told_in_a_sentence()
    {
        using var taken = new TcpListener(IPAddress.Loopback, port: 0);
        taken.Start();
        var folder = Directory.CreateTempSubdirectory("cookalong-test-");

        var (exit, _, error) = await RunAsync("serve", "--data", folder.FullName, "--urls", $"http://{taken.LocalEndpoint}", "--applicationName", "CookAlong.Web");

        Assert.Equal(1, exit);
        Assert.StartsWith($"The server cannot listen at http://{taken.LocalEndpoint}: ", error, StringComparison.Ordinal);
        Assert.EndsWith("--urls.", error.TrimEnd(), StringComparison.Ordinal);
        folder.Delete(recursive: true);
    }

    [Fact]
    public async Task Https_is_turned_on_once_and_off_for_good()
    {
        var folder = Directory.CreateTempSubdirectory("cookalong-test-");
        string[] at = ["--data", folder.FullName, "--hosts", "192.168.1.20,cook.example"];

        var (before, off, _) = await RunAsync(["https", "status", .. at]);
        var (made, first, _) = await RunAsync(["https", "on", .. at]);
        var (again, second, _) = await RunAsync(["https", "on", .. at]);
        var (destroyed, _, _) = await RunAsync(["https", "off", .. at]);
        var (after, _, _) = await RunAsync(["https", "status", .. at]);
        var (bad, _, why) = await RunAsync(["https", "on", "--https-port", "99999", .. at]);

        Assert.Equal((1, 0, 0, 0, 1, 2), (before, made, again, destroyed, after, bad));
        Assert.Contains("'https on'", off, StringComparison.Ordinal);
        Assert.Contains("/secure", first, StringComparison.Ordinal);
        Assert.Contains("192.168.1.20", first, StringComparison.Ordinal);
        Assert.DoesNotContain("cook.example", first, StringComparison.Ordinal);
        Assert.EndsWith(second, first, StringComparison.Ordinal);
        Assert.Empty(folder.GetFileSystemInfos());
        Assert.Contains("--https-port", why, StringComparison.Ordinal);
        folder.Delete(recursive: true);
    }

    [Fact]
    public async Task A_running_household_is_backed_up_whole()
    {
        await using var app = new AppFactory();
        await app.HostAsync();
        var copy = Path.Combine(app.DataFolder, "copy.db");

        var (exit, output, _) = await RunAsync("backup", "--data", app.DataFolder, copy);

        Assert.Equal(0, exit);
        Assert.Contains(copy, output, StringComparison.Ordinal);
        if (!OperatingSystem.IsWindows())
        {
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(copy));
        }

        await using var connection = new SqliteConnection($"Data Source={copy};Mode=ReadOnly;Pooling=False");
        await connection.OpenAsync(TestContext.Current.CancellationToken);
        await using var command = connection.CreateCommand();
        command.CommandText = "SELECT Name FROM Hosts";
        Assert.Equal(AppFactory.HostName, await command.ExecuteScalarAsync(TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task A_backup_is_restored_when_the_server_has_stopped_and_not_before()
    {
        await using var app = new AppFactory();
        await app.HostAsync();
        var copy = Path.Combine(app.DataFolder, "copy.db");
        await RunAsync("backup", "--data", app.DataFolder, copy);

        var (exit, _, error) = await RunAsync("restore", "--data", app.DataFolder, copy);

        Assert.Equal(1, exit);
        Assert.Contains("Stop it, and try again", error, StringComparison.Ordinal);
        Assert.Contains(Path.Combine(app.DataFolder, "in-use.lock"), error, StringComparison.Ordinal);

        var other = Directory.CreateTempSubdirectory("cookalong-test-");
        (exit, var output, _) = await RunAsync("restore", "--data", other.FullName, copy);

        Assert.Equal(0, exit);
        Assert.Contains("There was no database before", output, StringComparison.Ordinal);
        Assert.Equal(2, (await RunAsync("restore", "--data", other.FullName, Path.Combine(other.FullName, "nothing.db"))).Exit);
        Assert.Equal(2, (await RunAsync("restore", "--data", other.FullName, Path.Combine(other.FullName, "cookalong.db"))).Exit);
        Assert.Equal(0, (await RunAsync("migrate", "--data", other.FullName)).Exit);
        SqliteConnection.ClearAllPools();
        Assert.Equal(0, (await RunAsync("restore", "--data", other.FullName, copy)).Exit);
        other.Delete(recursive: true);
    }

    [Fact]
    public async Task What_the_command_line_does_is_in_the_households_log()
    {
        await using var app = new AppFactory();
        await app.HostAsync();
        var (copy, archive, elsewhere) = (Path.Combine(app.DataFolder, "copy.db"), Path.Combine(app.DataFolder, "household.zip"), Path.Combine(app.DataFolder, "elsewhere"));
        await RunAsync("backup", "--data", app.DataFolder, copy);
        await RunAsync("export", "--data", app.DataFolder, archive);
        await RunAsync("restore", "--data", elsewhere, copy);
        await RunAsync("import", "--data", elsewhere, archive);

        Assert.Equal(["HostAdded the first", "BackupMade copy.db", "Exported household.zip"], await LogOfAsync(app.DataFolder));
        Assert.Equal(["HostAdded the first", "Restored copy.db", "Imported household.zip"], await LogOfAsync(elsewhere));
    }

    static async Task<List<string>> LogOfAsync(string data)
    {
        await using var connection = new SqliteConnection($"Data Source={Path.Combine(data, "cookalong.db")};Mode=ReadOnly;Pooling=False");
        await connection.OpenAsync(TestContext.Current.CancellationToken);
        await using var command = connection.CreateCommand();
        command.CommandText = "SELECT Deed || ' ' || About FROM Audit ORDER BY Id";
        await using var rows = await command.ExecuteReaderAsync(TestContext.Current.CancellationToken);
        List<string> all = [];
        while (await rows.ReadAsync(TestContext.Current.CancellationToken))
        {
            all.Add(rows.GetString(0));
        }

        return all;
    }

    [Fact]
    public async Task A_household_moves_by_its_archive()
    {
        await using var app = new AppFactory();
        await app.HostAsync();
        var (archive, elsewhere) = (Path.Combine(app.DataFolder, "household.zip"), Path.Combine(app.DataFolder, "elsewhere"));

        Assert.Equal(0, (await RunAsync("export", "--data", app.DataFolder, archive)).Exit);
        var (exit, output, _) = await RunAsync("import", "--data", elsewhere, archive);

        await using var db = app.NewDb();
        Assert.Equal(0, exit);
        Assert.Contains($"Added: {db.Meals.Count()} meals, {db.Dishes.Count()} dishes, 0 runs.", output, StringComparison.Ordinal);
        Assert.Single(Directory.GetFiles(Path.Combine(elsewhere, "backups"), "*-before-import.db"));
        await File.WriteAllTextAsync(archive, "no zip", TestContext.Current.CancellationToken);
        (exit, _, var error) = await RunAsync("import", "--data", elsewhere, archive);
        Assert.Equal(2, exit);
        Assert.Contains($"{archive}: This is not a zip file", error, StringComparison.Ordinal);
        Assert.Equal(2, (await RunAsync("import", "--data", elsewhere, archive + ".not")).Exit);
    }

    [Fact]
    public async Task The_doctor_looks_at_a_running_household_and_says_by_its_exit_whether_anything_is_to_be_done()
    {
        await using var app = new AppFactory();
        await app.HostAsync();
        await RunAsync("backup", "--data", app.DataFolder);

        // Port 0 is any port that is free.
        var (exit, output, _) = await RunAsync("doctor", "--data", app.DataFolder, "--urls", "http://127.0.0.1:0");

        Assert.Contains("Database: The database is sound", output, StringComparison.Ordinal);
        Assert.Contains("Backups: Last good backup", output, StringComparison.Ordinal);
        // The test's kitchen is cooking on a day that this machine's clock has not come to, or has long passed.
        Assert.Equal(output.Contains("to do    ", StringComparison.Ordinal) ? 1 : 0, exit);
        await using (var db = app.NewDb())
        {
            db.Sessions.Add(new() { Id = Guid.CreateVersion7(app.Clock.GetUtcNow()), Person = Guid.Empty, BeganAt = DateTimeOffset.MaxValue.ToUnixTimeMilliseconds() });
            await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        }

        (exit, output, _) = await RunAsync("doctor", "--data", app.DataFolder, "--urls", "http://127.0.0.1:0");
        Assert.Equal(1, exit);
        Assert.Contains("to do    Clock:", output, StringComparison.Ordinal);
        Assert.Equal(0, (await RunAsync("doctor", "--data", Path.Combine(app.DataFolder, "new"), "--urls", "http://127.0.0.1:0")).Exit);
        Assert.Equal(2, (await RunAsync("doctor", "--data", "")).Exit);
    }

    [Fact]
    public async Task A_folder_without_a_household_is_not_backed_up()
    {
        var folder = Directory.CreateTempSubdirectory("cookalong-test-");

        var (exit, _, error) = await RunAsync("backup", "--data", folder.FullName);

        Assert.Equal(2, exit);
        Assert.Contains("There is no household in", error, StringComparison.Ordinal);
        folder.Delete(recursive: true);
    }

    [Fact]
    public async Task Demo_meals_are_added_to_a_household_that_runs()
    {
        await using var app = new AppFactory();
        await app.HostAsync();
        await using var db = app.NewDb();
        var before = db.Meals.Count();

        var (exit, _, _) = await RunAsync("seed", "--data", app.DataFolder);

        Assert.Equal(0, exit);
        // The two that it cooked earlier, which this house was made without, are among them.
        Assert.Equal((2 * before) + 2, db.Meals.Count());
    }

    [Theory]
    [InlineData(0, 1, "0 dishes added")]
    [InlineData(3, 0, "3 dishes added")]
    public void Where_no_meal_lies_beside_the_program_that_is_told_and_so_are_the_dishes(int dishes, int exit, string says)
    {
        var outcome = SeedVerb.Outcome([], dishes);

        Assert.Equal(exit, outcome.Exit);
        Assert.StartsWith("There are no meal files in ", outcome.Words, StringComparison.Ordinal);
        Assert.Contains(says, outcome.Words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--urls", "localhost", "COOKALONG_URLS")]
    [InlineData("--proxies", "the one in the cellar", "COOKALONG_PROXIES")]
    [InlineData("--data", "", "COOKALONG_DATA")]
    public async Task A_wrong_setting_stops_the_start_and_is_named(string option, string value, string variable)
    {
        var (exit, _, error) = await RunAsync("serve", option, value);

        Assert.Equal(2, exit);
        Assert.Contains(option, error, StringComparison.Ordinal);
        Assert.Contains(variable, error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_unknown_option_is_refused()
    {
        var (exit, _, error) = await RunAsync("serve", "--dta", "x");

        Assert.NotEqual(0, exit);
        Assert.Contains("--dta", error, StringComparison.Ordinal);
    }

    static async Task<(int Exit, string Output, string Error)> RunAsync(params string[] args)
    {
        var how = new InvocationConfiguration { Output = new StringWriter(), Error = new StringWriter(), EnableDefaultExceptionHandler = false };
        var exit = await CommandLine.Root().Parse(args).InvokeAsync(how, TestContext.Current.CancellationToken);
        return (exit, how.Output.ToString()!, how.Error.ToString()!);
    }
}
