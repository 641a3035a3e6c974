using System.Diagnostics.CodeAnalysis;
using CookAlong.Web.Data.Backups;
using CookAlong.Web.Data.Postgres;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Data;

/// <summary>Brings the database up to date before anything else happens; a household's only copy is backed up first. From then on the data folder is in use.</summary>
sealed class Upgrade(HouseSettings settings, IDbContextFactory<CookAlongDb> databases, Backup backup, ILogger<Upgrade> log) : IDisposable
{
    static readonly TimeSpan Patience = TimeSpan.FromMinutes(10);

    IDisposable? inUse;

    public void Dispose() => inUse?.Dispose();

    /// <summary>Names of the steps taken; empty when the database was up to date.</summary>
    /// <exception cref="UpgradeException">The message names the backup. Not to be tried in a loop.</exception>
    public async Task<IReadOnlyList<string>> RunAsync(CancellationToken stop)
    {
        DataFolder.Open(settings);
        if (inUse is null && !DataFolder.TryShare(settings, out inUse, out var refusal))
        {
            throw new UpgradeException(refusal);
        }

        if (settings.Postgres is { } address)
        {
            return await PostgresUpgrade.RunAsync(address, log, stop);
        }

        await using var alone = await LockAsync(stop);
        var isNew = !File.Exists(settings.Database);
        if (isNew && File.Exists(settings.Restoring))
        {
            throw new UpgradeException($"A restore was cut off: {settings.Database} is missing and {settings.Restoring} was on its way into its place. Run 'restore' once more.");
        }

        await using var database = HouseholdData.Connection(settings.Database);
        var pending = Tables.Steps.Except(await TakenAsync(database, stop)).ToArray();
        if (isNew)
        {
            await ChangeAsync(() => Tables.MakeAsync(database, stop), pending, copy: null);
        }
        else if (pending.Length > 0)
        {
            var copy = Copy(pending[0]);
            await using var db = await databases.CreateDbContextAsync(stop);
            await ClearStaleLockAsync(db, stop);
            await ChangeAsync(() => db.Database.MigrateAsync(stop), pending, copy);
        }

        // Kept in the file; a file that came from elsewhere may not have it.
        await using var mode = database.CreateCommand();
        mode.CommandText = "PRAGMA journal_mode=WAL";
        await mode.ExecuteNonQueryAsync(stop);
        return pending;
    }

    /// <summary>A file that cannot be used is named. A crash here would be tried again by whatever restarts the server, in a loop.</summary>
    async Task<IReadOnlyList<string>> TakenAsync(SqliteConnection database, CancellationToken stop)
    {
        try
        {
            await database.OpenAsync(stop);
            var taken = await Tables.TakenAsync(database, stop);
            return taken.Count > 0 && Schema.Fault(taken) is { } fault
                ? throw new UpgradeException($"{settings.Database} {fault} The backups are in {settings.Backups}. Nothing was changed.")
                : taken;
        }
        catch (SqliteException failure)
        {
            throw new UpgradeException($"{settings.Database} cannot be opened ({failure.Message}). If it is damaged, restore a backup from {settings.Backups} with 'restore'. Nothing was changed.", failure);
        }
    }

    async Task ChangeAsync(Func<Task> change, string[] pending, string? copy)
    {
        try
        {
            await change();
        }
        catch (Exception failure) when (failure is SqliteException or DbUpdateException or InvalidOperationException)
        {
            throw new UpgradeException(
                $"The database could not be brought up to date ({failure.Message}). The server does not start with it. "
                + (copy is null ? $"It was new: remove {settings.Database} and start again." : $"A copy from before the attempt is {copy}."),
                failure);
        }

        log.LogInformation("The database was brought up to date ({Steps} steps).", pending.Length);
    }

    string Copy(string next)
    {
        var copy = backup.NextFile($"before-{next}");
        try
        {
            backup.To(copy);
            return copy;
        }
        catch (BackupException failure)
        {
            throw new UpgradeException($"The database needs bringing up to date, but no backup could be made first: {failure.Message} Nothing was changed.", failure);
        }
    }

    /// <summary>
    /// A process killed while migrating leaves its row in EF's lock table, and every later start waits for it for ever.
    /// The process lock is ours, so such a row is stale.
    /// </summary>
    static async Task ClearStaleLockAsync(CookAlongDb db, CancellationToken stop)
    {
        var hasTable = await db.Database
            .SqlQuery<int>($"SELECT count(*) AS Value FROM sqlite_master WHERE type = 'table' AND name = '__EFMigrationsLock'")
            .SingleAsync(stop);
        if (hasTable > 0)
        {
            await db.Database.ExecuteSqlAsync($"DELETE FROM __EFMigrationsLock", stop);
        }
    }

    /// <summary>The operating system lets go of it when a process dies, however it dies.</summary>
    async Task<FileStream> LockAsync(CancellationToken stop)
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(stop);
        patience.CancelAfter(Patience);
        while (true)
        {
            if (TryLock(out var held))
            {
                return held;
            }

            log.LogInformation("Another process is bringing the database up to date; waiting for it.");
            await Task.Delay(TimeSpan.FromSeconds(1), patience.Token);
        }
    }

    bool TryLock([NotNullWhen(true)] out FileStream? held)
    {
        try
        {
            held = new FileStream(settings.UpgradeLock, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            return true;
        }
        catch (IOException) when (File.Exists(settings.UpgradeLock))
        {
            held = null;
            return false;
        }
    }
}

/// <summary>The message says what state the database is in and names the backup.</summary>
public sealed class UpgradeException(string message, Exception? inner = null) : Exception(message, inner);
