using Microsoft.Data.Sqlite;

namespace CookAlong.Web.Data;

/// <summary>Copies the database with SQLite's own backup, safe while the household cooks: a copy of the live file would not be.</summary>
sealed class Backup(HouseSettings settings, TimeProvider time)
{
    /// <summary>A new file among the backups of the data folder, named by the time.</summary>
    public string NextFile(string why) =>
        Path.Combine(settings.Backups, $"cookalong-{time.GetUtcNow():yyyyMMdd'T'HHmmss'Z'}-{why}.db");

    /// <summary>Writes a copy that has passed SQLite's integrity check. Nothing stands under <paramref name="file"/> until it has.</summary>
    /// <exception cref="BackupException">The copy did not pass.</exception>
    public void To(string file)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(file))!);
        var part = file + ".part";
        File.Delete(part);

        // Without pooling the files are let go at once, so that the copy can be renamed everywhere.
        using (var from = Open(settings.Database, SqliteOpenMode.ReadOnly))
        using (var to = Open(part, SqliteOpenMode.ReadWriteCreate))
        {
            from.BackupDatabase(to);
            if (Soundness.BrokenPage(to) is { } broken)
            {
                throw new BackupException($"The copy in {part} is not sound: {broken}. The disk may be failing; nothing was replaced.");
            }
        }

        File.Move(part, file, overwrite: true);
    }

    static SqliteConnection Open(string file, SqliteOpenMode mode)
    {
        var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = file, Mode = mode, Pooling = false }.ToString());
        connection.Open();
        return connection;
    }
}

/// <summary>The message names the file and what to do.</summary>
public sealed class BackupException(string message) : Exception(message);
