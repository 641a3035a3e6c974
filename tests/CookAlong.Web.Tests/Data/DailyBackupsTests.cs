using System.Security.Cryptography;
using System.Text.Json.Nodes;
using CookAlong.Web.Data;
using CookAlong.Web.Data.Backups;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Time.Testing;

namespace CookAlong.Web.Tests.Data;

public sealed class DailyBackupsTests : IAsyncDisposable
{
    static readonly CancellationToken Stop = TestContext.Current.CancellationToken;

    readonly AppFactory app = new();

    // Not the server's, which stands still with its own loop: the looks here are the only ones.
    readonly FakeTimeProvider clock = new(new DateTimeOffset(2026, 12, 20, 9, 0, 0, TimeSpan.Zero));

    string Folder => Path.Combine(app.DataFolder, "backups");

    string[] Files => Directory.Exists(Folder) ? [.. Directory.GetFiles(Folder).Select(file => Path.GetFileName(file)).Order()] : [];

    DailyBackups Daily => DailyIn(app.Get<HouseSettings>());

    public ValueTask DisposeAsync() => app.DisposeAsync();

    [Fact]
    public async Task A_household_is_backed_up_in_its_first_night_with_a_manifest_beside()
    {
        var daily = Daily;
        Assert.False(await daily.LookAsync(Stop)); // nobody's household yet
        await app.HostAsync();
        Assert.False(await daily.LookAsync(Stop));
        clock.SetUtcNow(new DateTimeOffset(2026, 12, 21, 3, 10, 0, TimeSpan.Zero));

        Assert.True(await daily.LookAsync(Stop));
        Assert.False(await daily.LookAsync(Stop));

        var file = Path.Combine(Folder, Files[0]);
        await using var db = app.NewDb();
        var manifest = JsonNode.Parse(await File.ReadAllTextAsync(file + ".json", Stop))!;
        Assert.EndsWith("-daily.db", file, StringComparison.Ordinal);
        Assert.Equal(2, Files.Length);
        Assert.Equal("cookalong-backup/1", (string?)manifest["format"]);
        Assert.Equal(Convert.ToHexStringLower(SHA256.HashData(await File.ReadAllBytesAsync(file, Stop))), (string?)manifest["sha256"]);
        Assert.Equal(new FileInfo(file).Length, (long?)manifest["bytes"]);
        Assert.Equal(Tables.Steps[^1], (string?)manifest["schema"]);
        Assert.Equal((await db.Meals.CountAsync(Stop), await db.Dishes.CountAsync(Stop), 0), ((int)manifest["meals"]!, (int)manifest["dishes"]!, (int)manifest["runs"]!));
        Assert.All(manifest["keys"]!.AsArray(), key => Assert.StartsWith("key-", (string?)key, StringComparison.Ordinal));
    }

    [Fact]
    public async Task While_somebody_cooks_it_waits_for_a_day_and_a_run_that_nobody_ended_is_not_waited_for()
    {
        await app.HostAsync();
        var night = new DateTimeOffset(2026, 12, 21, 3, 10, 0, TimeSpan.Zero);
        var run = Guid.CreateVersion7(night);
        await using (var db = app.NewDb())
        {
            db.Add(new RunRow { Id = run, Meal = run, Name = "Night bread", Began = night.AddDays(-1).ToUnixTimeMilliseconds() });
            db.Add(new RunEventRow { Run = run, Sequence = 1, Command = run, Part = 0, By = null, At = night.AddHours(-5).ToUnixTimeMilliseconds(), Kind = "heldAll/1", Document = "{}" });
            await db.SaveChangesAsync(Stop);
        }

        clock.SetUtcNow(night);
        Assert.False(await Daily.LookAsync(Stop));
        clock.SetUtcNow(night.AddMinutes(70)); // the last tap was more than six hours ago
        Assert.True(await Daily.LookAsync(Stop));
    }

    [Fact]
    public async Task Old_daily_backups_go_and_those_made_by_hand_stay()
    {
        await app.HostAsync();
        clock.SetUtcNow(new DateTimeOffset(2027, 1, 29, 3, 10, 0, TimeSpan.Zero));
        var one = KeptBackup.FileOf(Folder, clock.GetUtcNow().AddDays(-30), "by-hand");
        new Backup(app.Get<HouseSettings>(), clock).To(one);
        for (var day = 1; day < 40; day++)
        {
            var old = KeptBackup.FileOf(Folder, clock.GetUtcNow().AddDays(-day), "daily");
            File.Copy(one, old);
            File.Copy(one + ".json", old + ".json");
        }

        Assert.True(await Daily.LookAsync(Stop));

        // 29 January 2027 is a Friday: 23-29, the Sundays 24 (among them), 17 and 10, and 31 December; nothing is older.
        var daily = KeptBackup.AllIn(Folder).Where(backup => backup.Why == "daily").Select(backup => $"{backup.Made:MM-dd}");
        Assert.Equal(["01-29", "01-28", "01-27", "01-26", "01-25", "01-24", "01-23", "01-17", "01-10", "12-31"], daily);
        Assert.Single(Files, file => file.EndsWith("-by-hand.db", StringComparison.Ordinal));
        Assert.Equal(11 * 2, Files.Length);
    }

    [Fact]
    public async Task A_failed_backup_is_told_with_the_folder_and_tried_again_after_an_hour()
    {
        await app.HostAsync();
        var elsewhere = Path.Combine(app.DataFolder, "stick");
        var settings = app.Get<HouseSettings>() with { BackupsElsewhere = elsewhere };
        var daily = DailyIn(settings);
        clock.SetUtcNow(new DateTimeOffset(2026, 12, 21, 3, 10, 0, TimeSpan.Zero));

        Assert.False(await daily.LookAsync(Stop));

        Assert.Contains($"The folder for backups, {elsewhere}, is not there", daily.Failure!.Message, StringComparison.Ordinal);
        Assert.Contains(app.Log, line => line.StartsWith("Error: The daily backup failed.", StringComparison.Ordinal) && line.Contains(elsewhere, StringComparison.Ordinal));
        Directory.CreateDirectory(elsewhere);
        clock.Advance(TimeSpan.FromMinutes(50));
        Assert.False(await daily.LookAsync(Stop));
        clock.Advance(TimeSpan.FromMinutes(10));
        Assert.True(await daily.LookAsync(Stop));
        Assert.Null(daily.Failure);
        Assert.Empty(Files);
    }

    [Fact]
    public async Task A_backup_that_was_cut_short_since_does_not_count_as_the_last_good_one()
    {
        await app.HostAsync();
        clock.SetUtcNow(new DateTimeOffset(2026, 12, 21, 3, 10, 0, TimeSpan.Zero));
        await Daily.LookAsync(Stop);
        var file = Assert.Single(KeptBackup.AllIn(Folder)).File;
        await File.WriteAllBytesAsync(file, (await File.ReadAllBytesAsync(file, Stop))[..5000], Stop);

        Assert.Null(KeptBackup.LastGoodIn(Folder));
    }

    DailyBackups DailyIn(HouseSettings settings) =>
        new(settings, new Backup(settings, clock), app.Get<IDbContextFactory<CookAlongDb>>(), clock, app.Get<ILogger<DailyBackups>>());
}
