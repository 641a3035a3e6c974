using CookAlong.Web.Data;
using CookAlong.Web.Data.Backups;
using Microsoft.Data.Sqlite;

namespace CookAlong.Web.Features.Health;

/// <summary>The database, read only: what SQLite finds, whether program and clock fit it, and its last backup.</summary>
sealed class DatabaseChecks(HouseSettings settings, TimeProvider time) : IAsyncDisposable
{
    // SQLite's own codes (sqlite.org/rescode.html): SQLITE_CORRUPT, SQLITE_NOTADB.
    const int Corrupt = 11;
    const int NoDatabase = 26;

    // Clocks of a home differ a little, and a machine sets its own by steps.
    static readonly TimeSpan ClockMayDiffer = TimeSpan.FromMinutes(5);

    // A new household's first night has not come yet.
    static readonly TimeSpan FirstBackupWithin = TimeSpan.FromDays(2);

    readonly SqliteConnection database = new(new SqliteConnectionStringBuilder { DataSource = settings.Database, Mode = SqliteOpenMode.ReadOnly, Pooling = false }.ToString());

    /// <summary>False: it is no database of ours, and the other checks have nothing to ask.</summary>
    public bool CanBeAsked { get; private set; }

    public ValueTask DisposeAsync() => database.DisposeAsync();

    public async Task<Finding> SoundnessAsync(CancellationToken stop)
    {
        try
        {
            await database.OpenAsync(stop);
            CanBeAsked = (await Tables.TakenAsync(database, stop)).Count > 0;
            return !CanBeAsked ? HealthWords.Foreign(settings.Database)
                : (Soundness.BrokenPage(database) ?? Soundness.LostRow(database)) is { } broken ? HealthWords.Damaged(settings.Database, broken)
                : HealthWords.Sound(new FileInfo(settings.Database).Length);
        }
        catch (SqliteException failure)
        {
            return failure.SqliteErrorCode is Corrupt or NoDatabase ? HealthWords.Damaged(settings.Database, failure.Message) : HealthWords.Shut(settings.Database, failure.Message);
        }
    }

    public async Task<Finding> SchemaAsync(CancellationToken stop)
    {
        var taken = await Tables.TakenAsync(database, stop);
        return Schema.Fault(taken) is { } fault ? HealthWords.Unfit(settings.Database, fault) : HealthWords.Fits(Tables.Steps.Except(taken).Count());
    }

    public async Task<Finding> ClockAsync(CancellationToken stop)
    {
        var now = time.GetUtcNow();
        var newest = new[] { await AtAsync("SELECT max(At) FROM RunEvents", stop), await AtAsync("SELECT max(BeganAt) FROM Sessions", stop) }.Max();
        return newest is { } written && now < written - ClockMayDiffer ? HealthWords.ClockBehind(now, written)
            : TimeZoneInfo.TryFindSystemTimeZoneById("Europe/London", out _) ? HealthWords.Clock(now, time.LocalTimeZone)
            : HealthWords.NoZones;
    }

    public async Task<Finding> BackupAsync(CancellationToken stop)
    {
        var now = time.GetUtcNow();
        if (KeptBackup.LastGoodIn(settings.Backups) is not { } last)
        {
            var began = await AtAsync("SELECT min(BeganAt) FROM Sessions", stop);
            return HealthWords.NoBackup(settings.Backups, isNew: began is not { } at || now - at < FirstBackupWithin);
        }

        return BackupManifest.HashOf(last.File) == last.Manifest!.Sha256
            ? HealthWords.Backup(last, now, time.LocalTimeZone)
            : HealthWords.BackupChanged(last.File);
    }

    /// <summary>Where the push services of the devices that asked for calls are.</summary>
    public async Task<IReadOnlyList<Uri>> PushAddressesAsync(CancellationToken stop)
    {
        await using var command = database.CreateCommand();
        command.CommandText = "SELECT count(*) FROM sqlite_master WHERE name = 'PushSubscriptions'";
        if (await command.ExecuteScalarAsync(stop) is 0L)
        {
            return [];
        }

        command.CommandText = "SELECT Endpoint FROM PushSubscriptions";
        List<Uri> addresses = [];
        await using var rows = await command.ExecuteReaderAsync(stop);
        while (await rows.ReadAsync(stop))
        {
            addresses.Add(new Uri(rows.GetString(0)));
        }

        return addresses;
    }

    async Task<DateTimeOffset?> AtAsync(string sql, CancellationToken stop)
    {
        await using var command = database.CreateCommand();
        command.CommandText = sql;
        return await command.ExecuteScalarAsync(stop) is long at ? DateTimeOffset.FromUnixTimeMilliseconds(at) : null;
    }
}
