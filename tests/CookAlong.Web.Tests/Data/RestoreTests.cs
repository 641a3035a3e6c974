using System.Text;
using CookAlong.Web.Data;
using CookAlong.Web.Data.Backups;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Time.Testing;

namespace CookAlong.Web.Tests.Data;

public sealed class RestoreTests : IDisposable
{
    static readonly CancellationToken Stop = TestContext.Current.CancellationToken;

    readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("cookalong-test-");
    readonly FakeTimeProvider clock = new(new DateTimeOffset(2026, 12, 20, 9, 0, 0, TimeSpan.Zero));
    readonly HouseSettings settings;

    public RestoreTests() => settings = new HouseSettings(folder.FullName, HouseSettings.DefaultUrls, [], []);

    string File(string name) => Path.Combine(folder.FullName, name);

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public async Task A_backup_takes_the_place_of_the_database_and_what_was_there_is_kept_with_all_that_was_tapped()
    {
        var backup = await HouseholdOfAsync("backup.db", "Rowan");
        await HouseholdOfAsync("cookalong.db", "Maren");
        // A process that was killed leaves the last taps in the log beside the database.
        using var killed = Open(settings.Database);
        Execute(killed, "PRAGMA journal_mode=WAL; PRAGMA wal_autocheckpoint=0; INSERT INTO Hosts VALUES ('2', 'Linden', 'linden', '-')");
        Assert.True(new FileInfo(settings.Database + "-wal").Length > 0);

        var (kept, keysFit) = await new Restore(settings, clock).FromAsync(backup, Stop);

        Assert.Equal(File("cookalong-replaced-20261220T090000Z.db"), kept);
        Assert.Null(keysFit);
        Assert.False(System.IO.File.Exists(settings.Database + "-wal"));
        Assert.False(System.IO.File.Exists(settings.Restoring));
        Assert.Equal("Rowan", Names(settings.Database));
        Assert.Equal("Maren, Linden", Names(kept!));
        Assert.Equal("Rowan", Names(backup));
    }

    [Fact]
    public async Task What_a_backups_own_log_holds_comes_along()
    {
        var backup = await HouseholdOfAsync("backup.db", "Rowan");
        using var killed = Open(backup);
        Execute(killed, "PRAGMA journal_mode=WAL; PRAGMA wal_autocheckpoint=0; INSERT INTO Hosts VALUES ('2', 'Linden', 'linden', '-')");

        Assert.Null((await new Restore(settings, clock).FromAsync(backup, Stop)).Kept);

        Assert.Equal("Rowan, Linden", Names(settings.Database));
    }

    [Fact]
    public async Task A_restore_that_was_cut_off_after_the_first_rename_goes_on_there()
    {
        var backup = await HouseholdOfAsync("backup.db", "Rowan");
        await HouseholdOfAsync("cookalong.db", "Maren");
        using (var killed = Open(settings.Database))
        {
            Execute(killed, "PRAGMA journal_mode=WAL; PRAGMA wal_autocheckpoint=0; INSERT INTO Hosts VALUES ('2', 'Linden', 'linden', '-')");
            System.IO.File.Copy(settings.Database + "-wal", File("log"));
        }

        System.IO.File.Delete(settings.Database);
        await HouseholdOfAsync("cookalong-replaced-20261220T085900Z.db", "Maren");
        System.IO.File.Move(File("log"), settings.Database + "-wal");

        var (kept, _) = await new Restore(settings, clock).FromAsync(backup, Stop);

        Assert.Equal(File("cookalong-replaced-20261220T085900Z.db"), kept);
        Assert.True(System.IO.File.Exists(kept + "-wal"));
        Assert.False(System.IO.File.Exists(settings.Database + "-wal"));
        Assert.Equal("Rowan", Names(settings.Database));
    }

    [Fact]
    public async Task A_manifest_tells_a_changed_backup_and_whether_the_keys_fit()
    {
        await HouseholdOfAsync("cookalong.db", "Rowan");
        Directory.CreateDirectory(settings.Keys);
        await System.IO.File.WriteAllTextAsync(Path.Combine(settings.Keys, "key-1.xml"), "-", Stop);
        new Backup(settings, clock).To(File("backup.db"));
        await System.IO.File.WriteAllTextAsync(Path.Combine(settings.Keys, "key-2.xml"), "-", Stop);
        var restore = new Restore(settings, clock);

        Assert.True((await restore.FromAsync(File("backup.db"), Stop)).KeysFit);
        clock.Advance(TimeSpan.FromSeconds(1));
        System.IO.File.Delete(Path.Combine(settings.Keys, "key-1.xml"));
        Assert.False((await restore.FromAsync(File("backup.db"), Stop)).KeysFit);
        using (var changed = Open(File("backup.db")))
        {
            Execute(changed, "UPDATE Hosts SET Name = 'Somebody'");
        }

        var refused = await Assert.ThrowsAsync<RestoreException>(() => restore.FromAsync(File("backup.db"), Stop));
        Assert.Contains("has another SHA-256", refused.Message, StringComparison.Ordinal);
        Assert.Equal("Rowan", Names(settings.Database));
    }

    public static TheoryData<string, string> Unfit => new()
    {
        { "empty", "is a database of another program" }, // SQLite takes an empty file for an empty database.
        { "text", "cannot be read as a database" },
        { "header only", "cannot be read as a database" },
        { "half", "cannot be read as a database" },
        { "last page gone", "cannot be read as a database" },
        { "a page overwritten", "is not sound" },
        { "other program", "is a database of another program" },
        { "newer", "newer version of CookAlong (step 29991231235959_FromTheFuture)" },
        { "lost row", "a row of Plans points at a row of Meals that is not there" },
    };

    [Theory]
    [MemberData(nameof(Unfit))]
    public async Task A_file_that_is_no_sound_backup_is_refused_by_name_and_nothing_changes(string fault, string says)
    {
        var backup = await HouseholdOfAsync("backup.db", "Rowan");
        await HouseholdOfAsync("cookalong.db", "Maren");
        Spoil(backup, fault);
        var before = folder.GetFiles().Select(file => file.Name).Order().ToArray();

        var refused = await Assert.ThrowsAsync<RestoreException>(() => new Restore(settings, clock).FromAsync(backup, Stop));

        Assert.Contains(backup, refused.Message, StringComparison.Ordinal);
        Assert.Contains(says, refused.Message, StringComparison.Ordinal);
        Assert.Equal(before, folder.GetFiles().Select(file => file.Name).Order());
        Assert.Equal("Maren", Names(settings.Database));
    }

    static void Spoil(string file, string fault)
    {
        var bytes = System.IO.File.ReadAllBytes(file);
        const int Page = 4096;
        if (fault is "newer" or "lost row" or "other program")
        {
            if (fault == "other program")
            {
                System.IO.File.Delete(file);
            }

            using var database = Open(file);
            Execute(database, fault switch
            {
                "newer" => "INSERT INTO __EFMigrationsHistory VALUES ('29991231235959_FromTheFuture', '10.0.0')",
                "lost row" => "PRAGMA foreign_keys=OFF; INSERT INTO Plans VALUES ('1', '{}', 0, 'gone', 1)",
                _ => "CREATE TABLE Songs (Name TEXT)",
            });
            return;
        }

        System.IO.File.WriteAllBytes(file, fault switch
        {
            "empty" => [],
            "text" => Encoding.UTF8.GetBytes(new string('x', 5000)),
            "header only" => bytes[..100],
            "half" => bytes[..(bytes.Length / 2)],
            "last page gone" => bytes[..^Page],
            _ => [.. bytes[..^Page], .. new byte[Page].Select(_ => (byte)0xA5)],
        });
    }

    static async Task<string> NewAsync(string file)
    {
        await using var database = new SqliteConnection($"Data Source={file};Pooling=False");
        await database.OpenAsync(Stop);
        await Tables.MakeAsync(database, Stop);
        return file;
    }

    async Task<string> HouseholdOfAsync(string name, string host)
    {
        var file = await NewAsync(File(name));
        using var database = Open(file);
        Execute(database, $"INSERT INTO Hosts VALUES ('1', '{host}', '{host}', '-')");
        return file;
    }

    static SqliteConnection Open(string file)
    {
        var database = new SqliteConnection($"Data Source={file};Pooling=False");
        database.Open();
        return database;
    }

    static object? Execute(SqliteConnection database, string sql)
    {
        using var command = database.CreateCommand();
        command.CommandText = sql;
        return command.ExecuteScalar();
    }

    static string? Names(string file)
    {
        using var database = Open(file);
        return Execute(database, "SELECT group_concat(Name, ', ') FROM Hosts") as string;
    }
}
