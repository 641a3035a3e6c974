using Microsoft.Data.Sqlite;

namespace CookAlong.Web.Data.Backups;

/// <summary>Copies the database with SQLite's own backup, safe while the household cooks: a copy of the live file would not be.</summary>
sealed class Backup(HouseSettings settings, TimeProvider time)
{
    /// <summary>A new file among the backups, named by the time.</summary>
    /// <param name="why">One word, or words with hyphens: what it was made for.</param>
    public string NextFile(string why) => KeptBackup.FileOf(settings.Backups, time.GetUtcNow(), why);

    /// <summary>Writes a copy that has passed SQLite's integrity check, and its manifest. Nothing stands under <paramref name="file"/> until it has.</summary>
    /// <exception cref="BackupException">There is no copy.</exception>
    public void To(string file)
    {
        var part = file + ".part";
        try
        {
            MakeFolder(Path.GetDirectoryName(Path.GetFullPath(file))!);
            File.Delete(part);
            MakeClosed(part);
            Copy(part);
            BackupManifest.Of(part, settings.Keys, time.GetUtcNow()).Write(file);
            File.Move(part, file, overwrite: true);
        }
        catch (Exception failure) when (failure is SqliteException or IOException or UnauthorizedAccessException)
        {
            throw new BackupException($"No backup could be written to {file}: {failure.Message} Look at the disk's space and at the folder's permissions.", failure);
        }
    }

    /// <summary>It holds password hashes, and may lie outside the data folder, which others cannot look into.</summary>
    internal static void MakeClosed(string file)
    {
        var how = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
        {
            how.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        }

        new FileStream(file, how).Dispose();
    }

    void Copy(string part)
    {
        // Without pooling the files are let go at once, so that the copy can be renamed everywhere.
        using var from = Open(settings.Database, SqliteOpenMode.ReadOnly);
        using var to = Open(part, SqliteOpenMode.ReadWriteCreate);
        from.BackupDatabase(to);
        if (Soundness.BrokenPage(to) is { } broken)
        {
            throw new BackupException($"The copy in {part} is not sound: {broken}. The disk may be failing; nothing was replaced.");
        }
    }

    /// <summary>Another disk's folder is not made: where the disk is not there, the copy would go beside the database and nobody would know.</summary>
    void MakeFolder(string folder)
    {
        if (folder == settings.Backups && !settings.KeepsBackupsWithin && !Directory.Exists(folder))
        {
            throw new BackupException($"The folder for backups, {folder}, is not there. Make it, or see that its disk is mounted.");
        }

        Directory.CreateDirectory(folder);
    }

    static SqliteConnection Open(string file, SqliteOpenMode mode)
    {
        var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = file, Mode = mode, Pooling = false }.ToString());
        connection.Open();
        return connection;
    }
}

/// <summary>The message names the file and what to do.</summary>
public sealed class BackupException(string message, Exception? inner = null) : Exception(message, inner);
