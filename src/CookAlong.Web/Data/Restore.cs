using CookAlong.Web.Data.Backups;

namespace CookAlong.Web.Data;

/// <summary>Puts a backup in the place of the database. The caller holds the data folder alone.</summary>
sealed class Restore(HouseSettings settings, TimeProvider time)
{
    const string Replaced = "cookalong-replaced-";

    // Beside a database that was not closed properly; what they hold belongs to that file and no other.
    static readonly string[] Companions = ["-wal", "-shm"];

    /// <returns>What became of what was there.</returns>
    /// <exception cref="RestoreException">The file is not a sound database of this program. Nothing was changed.</exception>
    public async Task<Restored> FromAsync(string file, CancellationToken stop)
    {
        Remove(settings.Restoring);
        try
        {
            File.Copy(file, settings.Restoring);
            if (File.Exists(file + "-wal"))
            {
                File.Copy(file + "-wal", settings.Restoring + "-wal");
            }

            CheckHash(file);
            await CheckAsync(file, stop);
        }
        catch
        {
            Remove(settings.Restoring);
            throw;
        }

        // On the disk before the old one leaves its place.
        await using (var copy = new FileStream(settings.Restoring, FileMode.Open, FileAccess.ReadWrite))
        {
            copy.Flush(flushToDisk: true);
        }

        var kept = SetAside();
        File.Move(settings.Restoring, settings.Database);
        return new Restored(kept, KeysFit(file));
    }

    void CheckHash(string file)
    {
        if (BackupManifest.Read(file) is { } manifest && BackupManifest.HashOf(settings.Restoring) != manifest.Sha256)
        {
            throw new RestoreException($"{file} is not what was backed up: {BackupManifest.FileOf(file)} has another SHA-256. It was damaged or changed since. Take another backup. Nothing was changed.");
        }
    }

    bool? KeysFit(string file) => BackupManifest.Read(file)?.Keys.All(BackupManifest.KeysIn(settings.Keys).Contains);

    /// <summary>The copy is looked at, not the file: opening a database may write to it, and a backup may lie on a disk that cannot be written.</summary>
    async Task CheckAsync(string file, CancellationToken stop)
    {
        if (await Schema.FaultAsync(settings.Restoring, stop) is { } fault)
        {
            throw new RestoreException($"{file} {fault} Nothing was changed.");
        }

        await using var copy = HouseholdData.Connection(settings.Restoring, pooling: false);
        await copy.OpenAsync(stop);
        if ((Soundness.BrokenPage(copy) ?? Soundness.LostRow(copy)) is { } broken)
        {
            throw new RestoreException($"{file} is not sound: {broken}. Take an older backup. Nothing was changed.");
        }

        // One file, without companions, is what is renamed; the next start turns WAL on again.
        await using var whole = copy.CreateCommand();
        whole.CommandText = "PRAGMA journal_mode=DELETE";
        await whole.ExecuteScalarAsync(stop);
    }

    /// <summary>
    /// The database first: while it is missing no server starts, and a restore that was cut off here goes on here. Its log
    /// must follow it, for it must never meet the other database.
    /// </summary>
    string? SetAside()
    {
        var kept = Path.Combine(settings.Data, $"{Replaced}{time.GetUtcNow():yyyyMMdd'T'HHmmss'Z'}.db");
        if (File.Exists(settings.Database))
        {
            File.Move(settings.Database, kept);
        }
        else
        {
            kept = Directory.EnumerateFiles(settings.Data, $"{Replaced}*.db").Max(StringComparer.Ordinal) ?? kept;
        }

        foreach (var companion in Companions.Where(companion => File.Exists(settings.Database + companion)))
        {
            File.Move(settings.Database + companion, kept + companion);
        }

        return File.Exists(kept) ? kept : null;
    }

    static void Remove(string database)
    {
        foreach (var part in Companions.Append("").Append("-journal"))
        {
            File.Delete(database + part);
        }
    }
}

/// <param name="Kept">Where the database that was there is kept; null when there was none.</param>
/// <param name="KeysFit">Whether the data folder has the keys of the time of the backup; null = not known.</param>
sealed record Restored(string? Kept, bool? KeysFit);

/// <summary>The message names the file and what to do.</summary>
public sealed class RestoreException(string message) : Exception(message);
