using System.Net;
using CookAlong.Web.Data;
using CookAlong.Web.Data.Backups;
using CookAlong.Web.Features.Health;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Time.Testing;

namespace CookAlong.Web.Tests.Health;

public sealed class CheckupTests : IDisposable
{
    static readonly CancellationToken Stop = TestContext.Current.CancellationToken;

    readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("cookalong-test-");
    readonly FakeTimeProvider clock = new(new DateTimeOffset(2026, 12, 20, 9, 0, 0, TimeSpan.Zero));
    HouseSettings settings;

    // A machine on which all is well.
    Machine machine = new(_ => 36_000_000_000, () => "/dev/vda1 / ext4 rw 0 0\n", _ => true, (_, _) => Task.FromResult<string?>(null), (_, _, _, _) => Task.FromResult<string?>(null));

    public CheckupTests() => settings = new HouseSettings(folder.FullName, HouseSettings.DefaultUrls, [], []);

    public void Dispose() => folder.Delete(recursive: true);

    async Task<Finding[]> LookAsync(bool isServing = false, bool reach = false) => [.. await new Checkup(settings, clock, machine).RunAsync(isServing, reach, Stop).ToListAsync(Stop)];

    async Task<Finding> FindAsync(string of) => Assert.Single(await LookAsync(), finding => finding.Of == of);

    async Task MakeAsync(string sql = "")
    {
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(folder.FullName, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        }

        await using var database = new SqliteConnection($"Data Source={settings.Database};Pooling=False");
        await database.OpenAsync(Stop);
        await Tables.MakeAsync(database, Stop);
        await using var more = database.CreateCommand();
        more.CommandText = sql + ";SELECT 1";
        await more.ExecuteNonQueryAsync(Stop);
    }

    static string Session(DateTimeOffset at) => $"INSERT INTO Sessions (Id, Person, BeganAt) VALUES ('s', 'p', {at.ToUnixTimeMilliseconds()})";

    static void Says(Finding finding, Grade grade, string words)
    {
        Assert.Equal(grade, finding.Grade);
        Assert.Contains(words, finding.Says, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_sound_household_has_nothing_to_do()
    {
        await MakeAsync(Session(clock.GetUtcNow()));
        new Backup(settings, clock).To(new Backup(settings, clock).NextFile("by-hand"));

        var findings = await LookAsync();

        Assert.Equal(["Folder", "File system", "Disk", "Database", "Schema", "Clock", "Backups", "HTTPS", "Address"], findings.Select(finding => finding.Of));
        Assert.All(findings, finding => Assert.Equal(finding.Of == "HTTPS" ? Grade.Heed : Grade.Well, finding.Grade));
        Assert.Contains(findings, finding => finding.Says == "36 GB are free at " + folder.FullName + ".");
        Assert.Contains(findings, finding => finding.Says.Contains("Sunday 20 December 2026, 09:00 UTC", StringComparison.Ordinal) && finding.Of == "Clock");
    }

    [Fact]
    public async Task A_new_folder_is_worth_knowing_and_no_fault() =>
        Assert.DoesNotContain(await LookAsync(isServing: true), finding => finding.Grade == Grade.Wrong && finding.Of != "Folder");

    [Fact]
    public async Task A_folder_that_others_can_look_into_is_to_be_closed()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Windows has no such modes.");
        await MakeAsync();
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(folder.FullName, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute | UnixFileMode.GroupRead);
        }

        Says(await FindAsync("Folder"), Grade.Wrong, $"chmod go-rwx {folder.FullName}");
    }

    // SQLite, "Write-Ahead Logging" (sqlite.org/wal.html): WAL does not work over a network filesystem.
    [Theory]
    [InlineData("nas:/home {0} nfs4 rw 0 0", "nfs4")]
    [InlineData("//nas/home {0} cifs rw 0 0", "cifs")]
    public async Task A_folder_on_a_network_file_system_is_to_be_moved(string mount, string kind)
    {
        machine = machine with { Mounts = () => $"/dev/vda1 / ext4 rw 0 0\n{string.Format(null, mount, Path.GetDirectoryName(folder.FullName))}\n/dev/vdb1 {folder.FullName}-other ext4 rw 0 0\n" };
        Says(await FindAsync("File system"), Grade.Wrong, $"({kind})");
    }

    [Theory]
    [InlineData("/mnt/big disk/home", "xfs")]
    [InlineData("/mnt/big", "ext4")]
    [InlineData("/mnt/bigger", "ext4")]
    [InlineData("/over", "tmpfs")]
    public void The_mount_nearest_to_a_folder_counts_and_the_latest_over_others(string at, string kind) =>
        Assert.Equal(kind, Mounts.KindOf(at, "/dev/a / ext4 rw 0 0\n/dev/b /mnt/big\\040disk xfs rw 0 0\nnas:/x /over nfs rw 0 0\ntmpfs /over tmpfs rw 0 0\n"));

    [Fact]
    public async Task A_disk_that_fills_up_is_told_by_the_folder_that_is_tightest()
    {
        var stick = folder.CreateSubdirectory("stick");
        settings = settings with { BackupsElsewhere = stick.FullName };
        machine = machine with { FreeBytes = at => at == stick.FullName ? 40_000_000 : 36_000_000_000 };
        Says(await FindAsync("Disk"), Grade.Wrong, $"Only 40 MB are free at {stick.FullName}; updates and backups need 100 MB.");
    }

    [Fact]
    public async Task A_clock_behind_what_was_written_down_is_to_be_set()
    {
        await MakeAsync(Session(clock.GetUtcNow().AddMinutes(6)));
        Says(await FindAsync("Clock"), Grade.Wrong, "something was written down at Sunday 20 December 2026, 09:06 UTC");
        clock.Advance(TimeSpan.FromMinutes(1));
        Assert.Equal(Grade.Well, (await FindAsync("Clock")).Grade);
    }

    [Fact]
    public async Task A_damaged_database_is_to_be_restored()
    {
        await MakeAsync();
        var bytes = await File.ReadAllBytesAsync(settings.Database, Stop);
        await File.WriteAllBytesAsync(settings.Database, bytes[..^4096], Stop);
        Says(await FindAsync("Database"), Grade.Wrong, "with 'restore'");
        await File.WriteAllTextAsync(settings.Database, new string('x', 5000), Stop);
        Says(await FindAsync("Database"), Grade.Wrong, "is damaged");
    }

    [Fact]
    public async Task A_database_of_another_version_or_program_is_told()
    {
        await MakeAsync($"DELETE FROM __EFMigrationsHistory WHERE MigrationId = '{Tables.Steps[^1]}'");
        Says(await FindAsync("Schema"), Grade.Heed, "1 step behind");
        File.Delete(settings.Database);
        await MakeAsync("INSERT INTO __EFMigrationsHistory VALUES ('29991231235959_FromTheFuture', '10')");
        Says(await FindAsync("Schema"), Grade.Wrong, "newer version of CookAlong");
        File.Delete(settings.Database);
        await MakeAsync("DROP TABLE __EFMigrationsHistory");
        Says(await FindAsync("Database"), Grade.Wrong, "is not a database of CookAlong");
    }

    [Fact]
    public async Task A_backup_that_is_missing_old_or_changed_is_told()
    {
        await MakeAsync(Session(clock.GetUtcNow()));
        Says(await FindAsync("Backups"), Grade.Heed, "within a day");
        clock.Advance(TimeSpan.FromDays(2));
        Says(await FindAsync("Backups"), Grade.Wrong, "'backup' makes one now");
        var file = new Backup(settings, clock).NextFile("by-hand");
        new Backup(settings, clock).To(file);
        Assert.Equal(Grade.Well, (await FindAsync("Backups")).Grade);
        clock.Advance(TimeSpan.FromDays(3));
        Says(await FindAsync("Backups"), Grade.Wrong, "is old: Tuesday 22 December 2026, 09:00 UTC, 3 days ago");
        var bytes = await File.ReadAllBytesAsync(file, Stop);
        bytes[^1] ^= 1;
        await File.WriteAllBytesAsync(file, bytes, Stop);
        Says(await FindAsync("Backups"), Grade.Wrong, "is not what was backed up");
    }

    [Theory]
    [InlineData("alive", Grade.Well, "The server answers at")]
    [InlineData("It works!", Grade.Wrong, "Another program listens at")]
    [InlineData(null, Grade.Wrong, "Another program listens at")]
    public async Task A_port_that_is_taken_is_ours_or_anothers(string? answer, Grade grade, string says)
    {
        machine = machine with { IsFree = at => !at.Equals(new IPEndPoint(IPAddress.Loopback, 5080)), AnswerOf = (at, _) => Task.FromResult(at == new Uri("http://localhost:5080/health/live") ? answer : null) };
        Says(await FindAsync("Address"), grade, says);
        Assert.DoesNotContain(await LookAsync(isServing: true), finding => finding.Of == "Address");
    }

    [Fact]
    public async Task Ways_out_are_dialled_only_when_asked_and_only_those_of_devices_must_be_public()
    {
        List<(string, int, bool)> dialled = [];
        machine = machine with
        {
            WhyNotReached = (host, port, isPublic, _) =>
            {
                dialled.Add((host, port, isPublic));
                return Task.FromResult(host == "speaker.lan" ? "no route" : null);
            },
        };
        await MakeAsync();
        await LookAsync();
        Assert.Contains(await LookAsync(reach: true), finding => finding == HealthWords.NothingToReach);
        Assert.Empty(dialled);

        settings = settings with { Webhook = new Uri("http://speaker.lan/call"), Broker = new Uri("mqtt://broker.lan/calls") };
        File.Delete(settings.Database);
        await MakeAsync(string.Join(';', new[] { "a", "b" }.Select(id => $"INSERT INTO PushSubscriptions (Id, Run, Person, Endpoint, P256dh, Auth) VALUES ('{id}', 'r', 'p', 'https://push.example.org/{id}', '', '')")));
        var findings = await LookAsync(reach: true);

        Assert.Equal([("push.example.org", 443, true), ("speaker.lan", 80, false), ("broker.lan", 1883, false)], dialled);
        Says(Assert.Single(findings, finding => finding.Grade == Grade.Wrong), Grade.Wrong, "speaker.lan cannot be reached: no route.");
    }
}
